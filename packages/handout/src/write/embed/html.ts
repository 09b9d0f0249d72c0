import { escapeXml } from '../escape.js';

/** Elements without an end tag (HTML standard, section 13.1.2, void elements), of those that are written here. */
const VOID: ReadonlySet<string> = new Set(['br', 'img', 'hr']);

/** `text` for the content or a quoted attribute of HTML; a carriage return is named, since a reader of HTML makes it a line feed. */
export function escapeHtml(text: string): string {
  return escapeXml(text).replaceAll('\r', '&#13;');
}

/** An element as HTML text. Attributes are escaped here; `inside` is markup that was made so already. */
export function htmlElement(
  tag: string,
  attributes: Readonly<Record<string, string>> = {},
  ...inside: readonly string[]
): string {
  const words = Object.entries(attributes).map(([name, value]) =>
    value === '' ? ` ${name}` : ` ${name}="${escapeHtml(value)}"`,
  );
  const start = `<${tag}${words.join('')}>`;
  return VOID.has(tag) ? start : `${start}${inside.join('')}</${tag}>`;
}

/** Text of a sketch beside words of the page: set apart, so that its writing direction turns nothing around it. */
export function apart(text: string): string {
  return htmlElement('bdi', {}, escapeHtml(text));
}
