import * as commands from '../state/commands.js';
import type { Command } from '../state/state.js';

/** What the session does itself, since it is no transaction. */
export type SessionAct = 'undo' | 'redo';

/** What the keys are about, in the order of the list of keys. */
export const KEY_GROUPS = [
  'Taking pieces',
  'Moving',
  'Size',
  'Tilt',
  'Lining up',
  'Gluing order',
  'Pieces',
  'The table',
] as const;
export type KeyGroup = (typeof KEY_GROUPS)[number];

/** One row: the keys that do it, what it does, and what the help says. */
export interface KeyBinding {
  /** As `keyName` writes them; `Mod` is Control, or Command on a Mac. */
  readonly keys: readonly string[];
  readonly command: Command | SessionAct;
  readonly label: string;
  readonly group: KeyGroup;
  /** Holding the key down makes one step of the history. */
  readonly held?: boolean;
  /** What the rows of one kind do together: the list of keys tells them in one line. */
  readonly together?: string;
}

/** Steps of one long move: 1/4 in (four steps of 1/16 in) or 5 mm (five of 1 mm). */
const LONG = { in: 4, mm: 5 } as const;

function long(make: (steps: number) => Command): Command {
  return (state, dispatch, at) => make(LONG[state.sketch.unit])(state, dispatch, at);
}

type Row = Omit<KeyBinding, 'group'>;

function row(keys: string, command: Command | SessionAct, label: string): Row {
  return { keys: keys.split(' '), command, label };
}

function held(keys: string, command: Command, label: string): Row {
  return { ...row(keys, command, label), held: true };
}

function group(name: KeyGroup, rows: readonly Row[]): readonly KeyBinding[] {
  return rows.map((one) => ({ ...one, group: name }));
}

/** Rows that the list of keys tells together. */
function together(words: string, rows: readonly Row[]): readonly Row[] {
  return rows.map((one) => ({ ...one, together: words }));
}

/** A move or a size by one mark, and by a long step with Shift, in each of four directions. */
function arrows(
  mod: string,
  all: string,
  make: (x: number, y: number) => Command,
  words: readonly string[],
): readonly Row[] {
  const ways = [
    ['ArrowLeft', -1, 0],
    ['ArrowRight', 1, 0],
    ['ArrowUp', 0, -1],
    ['ArrowDown', 0, 1],
  ] as const;
  const near = ways.map(([key, x, y], way) =>
    held(`${mod}${key}`, make(x, y), `${words[way]} by one mark of the ruler`),
  );
  const far = ways.map(([key, x, y], way) =>
    held(
      `${mod}Shift+${key}`,
      long((n) => make(x * n, y * n)),
      `${words[way]} by 1⁄4 in or 5 mm`,
    ),
  );
  return [...together(`${all} by one mark of the ruler`, near), ...together(`${all} by 1⁄4 in or 5 mm`, far)];
}

/** Every key of the card face, for the keys themselves and for the list of keys. Copying is the page's own, see `MORE_KEYS`. */
export const KEYMAP: readonly KeyBinding[] = [
  ...group('Taking pieces', [
    ...together('Take the next piece up or down the stack', [
      row('.', commands.selectNext, 'Take the next piece up the stack'),
      row(',', commands.selectPrevious, 'Take the next piece down the stack'),
    ]),
    // What Shift makes of the two keys, here and on other keyboards.
    ...together('Take the next piece up or down as well', [
      row('> :', commands.selectNextToo, 'Take the next piece up as well'),
      row('< ;', commands.selectPreviousToo, 'Take the next piece down as well'),
    ]),
    row('Mod+a', commands.selectAll, 'Take all pieces of this face'),
    row('Escape', commands.clearSelection, 'Let go of all'),
  ]),
  ...group('Moving', arrows('', 'Move', commands.nudge, ['Move left', 'Move right', 'Move up', 'Move down'])),
  ...group('Size', [
    ...arrows('Mod+', 'Narrower, wider, lower, higher', commands.grow, [
      'Make narrower',
      'Make wider',
      'Make lower',
      'Make higher',
    ]),
    row('Shift+w', commands.sameSize('x'), 'As wide as the one taken last'),
    row('Shift+h', commands.sameSize('y'), 'As high as the one taken last'),
  ]),
  ...group('Tilt', [
    ...together('Tilt to the left or right by one degree', [
      held('[', commands.tilt(-1), 'Tilt to the left by one degree'),
      held(']', commands.tilt(1), 'Tilt to the right by one degree'),
    ]),
    ...together('Tilt by fifteen degrees', [
      held('{', commands.tilt(-15), 'Tilt to the left by fifteen degrees'),
      held('}', commands.tilt(15), 'Tilt to the right by fifteen degrees'),
    ]),
  ]),
  ...group('Lining up', [
    row('Shift+l', commands.align('x', 'near'), 'Line up the left edges; a single piece with the card'),
    row('Shift+c', commands.align('x', 'middle'), 'Line up the middles from left to right'),
    row('Shift+r', commands.align('x', 'far'), 'Line up the right edges'),
    row('Shift+t', commands.align('y', 'near'), 'Line up the top edges'),
    row('Shift+m', commands.align('y', 'middle'), 'Line up the middles from top to bottom'),
    row('Shift+b', commands.align('y', 'far'), 'Line up the bottom edges'),
    row('Shift+a', commands.spaceEvenly('x'), 'Equal gaps from left to right'),
    row('Shift+d', commands.spaceEvenly('y'), 'Equal gaps from top to bottom'),
  ]),
  ...group('Gluing order', [
    row('PageUp', commands.raiseOrder, 'Glue one place later, over the next piece'),
    row('PageDown', commands.lowerOrder, 'Glue one place earlier, under the next piece'),
    row('Shift+PageUp', commands.toTop, 'Glue last, on top of all'),
    row('Shift+PageDown', commands.toBottom, 'Glue first, right on the card'),
  ]),
  ...group('Pieces', [
    row('Mod+d', commands.duplicate, 'Cut the same piece again'),
    row('m', commands.matPiece(), 'Put a mat behind the piece'),
    row('l', commands.toggleLocked, 'Lock in place, or unlock'),
    row('h', commands.toggleHidden, 'Hide on the table, or show'),
    row('s', commands.showAll, 'Show all that is hidden'),
    row('Delete Backspace', commands.remove, 'Take away'),
  ]),
  ...group('The table', [
    row('t', commands.turnOver, 'Turn to the other face of the card'),
    row('Mod+z', 'undo', 'Undo'),
    row('Mod+y Mod+Shift+z', 'redo', 'Redo'),
  ]),
];

/** Keys that are not in the table: the focus names the piece that is taken, and copying is the page's own. */
export const MORE_KEYS: readonly {
  readonly group: KeyGroup;
  readonly keys: readonly string[];
  readonly label: string;
}[] = [
  { group: 'Taking pieces', keys: ['Enter'], label: 'Take the piece that has the focus; with Shift, as well' },
  { group: 'Pieces', keys: ['Mod+c', 'Mod+x', 'Mod+v'], label: 'Copy, cut or paste pieces, also in another tab' },
];

/** What a mouse and a finger do. */
export const POINTING: readonly { readonly how: string; readonly label: string }[] = [
  { how: 'Press a piece', label: 'Take it; with Shift, or after “Select more” on the ticket, one more' },
  { how: 'Drag a piece', label: 'Move all that is taken; a finger does it too' },
  { how: 'Drag beside the pieces', label: 'Take all that lies in the frame; with Shift, as well' },
  { how: 'Pull a corner or an edge', label: 'Change the size; with Shift, keep the proportion' },
  { how: 'Pull the pin', label: 'Tilt; with Shift, by fifteen degrees' },
  { how: 'Shift while dragging', label: 'Keep to one direction' },
  { how: 'Alt while dragging', label: 'Leave the ruler and line up with nothing' },
  { how: 'Escape while dragging', label: 'Put it back' },
  { how: 'Drag a sheet to the card', label: 'Cut a piece from it; “Cut a piece” does the same' },
];

const MODIFIERS: ReadonlySet<string> = new Set(['Shift', 'Control', 'Alt', 'AltGraph', 'Meta']);

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
  getModifierState?(modifier: string): boolean;
}

/**
 * True for a character that is no letter and was typed with the third level of a keyboard: brackets are, where that level is
 * AltGr. Some systems tell AltGr as Control and Alt.
 */
function byThirdLevel(pressed: Pressed): boolean {
  const { key, ctrlKey, altKey } = pressed;
  const sign = key.length === 1 && key.toLowerCase() === key.toUpperCase();
  return sign && (pressed.getModifierState?.('AltGraph') === true || (ctrlKey && altKey));
}

/** The name of a pressed key with its modifiers, as the table writes it; empty for a modifier alone. */
export function keyName(pressed: Pressed): string {
  const { key, ctrlKey, metaKey, altKey, shiftKey } = pressed;
  if (MODIFIERS.has(key)) return '';
  // Such a character names itself, as one does that needs Shift.
  if (byThirdLevel(pressed)) return key;
  const letter = key.length === 1;
  // A character that needs Shift to be typed names itself; letters are told apart by the Shift that is named.
  const shift = shiftKey && (!letter || key.toLowerCase() !== key.toUpperCase()) ? 'Shift+' : '';
  return `${ctrlKey || metaKey ? 'Mod+' : ''}${altKey ? 'Alt+' : ''}${shift}${letter ? key.toLowerCase() : key}`;
}

const BY_KEY: ReadonlyMap<string, KeyBinding> = new Map(
  KEYMAP.flatMap((binding) => binding.keys.map((key) => [key, binding])),
);

/** The row of the pressed key, or null. */
export function bindingOf(pressed: Pressed): KeyBinding | null {
  return BY_KEY.get(keyName(pressed)) ?? null;
}
