import { escapeXml } from './escape.js';

/** One SVG element as data, from which the live view and the text are both made. */
export interface Mark {
  readonly tag: 'g' | 'path' | 'line' | 'text' | 'image' | 'pattern' | 'rect' | 'circle' | 'title';
  /** Stable among its siblings in time; empty for marks that never change. */
  readonly key: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly text?: string;
  readonly children?: readonly Mark[];
}

/** A mark as SVG text, attributes in the order they stand. */
export function markText({ tag, attributes, text, children }: Mark): string {
  const words = Object.entries(attributes).map(([name, value]) => ` ${name}="${escapeXml(value)}"`);
  const inner = `${text === undefined ? '' : escapeXml(text)}${(children ?? []).map(markText).join('')}`;
  return inner === '' ? `<${tag}${words.join('')}/>` : `<${tag}${words.join('')}>${inner}</${tag}>`;
}
