import type { KeyBinding } from '../keymap.js';

/** What arrow keys and the like are called on the list of keys. */
const NAMES: Readonly<Record<string, string>> = {
  ArrowLeft: '←',
  ArrowRight: '→',
  ArrowUp: '↑',
  ArrowDown: '↓',
  PageUp: 'Page up',
  PageDown: 'Page down',
  Escape: 'Esc',
  // Typed with Shift on most keyboards; told by the key that is pressed.
  '>': 'Shift .',
  '<': 'Shift ,',
  '{': 'Shift [',
  '}': 'Shift ]',
};

/** Second names of a key, for other keyboards, that the list need not tell. */
const UNTOLD: ReadonlySet<string> = new Set([':', ';']);

/** `Mod+Shift+ArrowLeft` as people write it: `Ctrl Shift ←`, or with the Command key on a Mac; empty when untold. */
export function keyText(key: string, mac: boolean): string {
  if (UNTOLD.has(key)) return '';
  const [last = '', ...modifiers] = key.split('+').toReversed();
  const named = NAMES[last] ?? (last.length === 1 ? last.toUpperCase() : last);
  const held = modifiers.toReversed().map((name) => (name === 'Mod' ? (mac ? '⌘' : 'Ctrl') : name));
  return [...held, named].join(' ');
}

/** All keys of a row, each once: `Del or Backspace`. */
export function keysText(keys: readonly string[], mac: boolean): string {
  return [...new Set(keys.map((key) => keyText(key, mac)))].filter((text) => text !== '').join(' or ');
}

/** One line of the list of keys. */
export interface KeyLine {
  readonly how: string;
  readonly label: string;
}

/** The lines of `rows`, those that are told together in one: `Shift ← → ↑ ↓`. */
export function keyLines(rows: readonly KeyBinding[], mac: boolean): readonly KeyLine[] {
  const lines = new Map<string, KeyLine>();
  for (const { keys, label, together } of rows) {
    const name = together ?? label;
    const [how, before] = [keysText(keys, mac), lines.get(name)?.how];
    lines.set(name, { how: before === undefined ? how : joined(before, how), label: name });
  }
  return [...lines.values()];
}

/** `Shift ←` and `Shift →` as `Shift ← →`: modifiers are told once. */
function joined(before: string, how: string): string {
  const modifiers = how.slice(0, how.lastIndexOf(' ') + 1);
  return `${before}   ${before.startsWith(modifiers) ? how.slice(modifiers.length) : how}`;
}
