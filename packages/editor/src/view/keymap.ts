import * as commands from '../state/commands.js';
import type { Command } from '../state/state.js';

/** What the session does itself, since it is no transaction. */
export type SessionAct = 'undo' | 'redo';

/** One row: the keys that do it, what it does, and what the help says. */
export interface KeyBinding {
  /** As `keyName` writes them; `Mod` is Control, or Command on a Mac. */
  readonly keys: readonly string[];
  readonly command: Command | SessionAct;
  readonly label: string;
  /** Holding the key down makes one step of the history. */
  readonly held?: boolean;
}

/** Steps of one long move: 1/4 in (four steps of 1/16 in) or 5 mm (five of 1 mm). */
const LONG = { in: 4, mm: 5 } as const;

function long(make: (steps: number) => Command): Command {
  return (state, dispatch, at) => make(LONG[state.sketch.unit])(state, dispatch, at);
}

function row(keys: string, command: Command | SessionAct, label: string): KeyBinding {
  return { keys: keys.split(' '), command, label };
}

function held(keys: string, command: Command, label: string): KeyBinding {
  return { ...row(keys, command, label), held: true };
}

/** Every key of the card face, for the keys themselves and for the help. */
export const KEYMAP: readonly KeyBinding[] = [
  held('ArrowLeft', commands.nudge(-1, 0), 'Move left by one mark of the ruler'),
  held('ArrowRight', commands.nudge(1, 0), 'Move right by one mark'),
  held('ArrowUp', commands.nudge(0, -1), 'Move up by one mark'),
  held('ArrowDown', commands.nudge(0, 1), 'Move down by one mark'),
  held(
    'Shift+ArrowLeft',
    long((n) => commands.nudge(-n, 0)),
    'Move left by 1⁄4 in or 5 mm',
  ),
  held(
    'Shift+ArrowRight',
    long((n) => commands.nudge(n, 0)),
    'Move right by 1⁄4 in or 5 mm',
  ),
  held(
    'Shift+ArrowUp',
    long((n) => commands.nudge(0, -n)),
    'Move up by 1⁄4 in or 5 mm',
  ),
  held(
    'Shift+ArrowDown',
    long((n) => commands.nudge(0, n)),
    'Move down by 1⁄4 in or 5 mm',
  ),
  held('Mod+ArrowLeft', commands.grow(-1, 0), 'Make narrower by one mark'),
  held('Mod+ArrowRight', commands.grow(1, 0), 'Make wider by one mark'),
  held('Mod+ArrowUp', commands.grow(0, -1), 'Make lower by one mark'),
  held('Mod+ArrowDown', commands.grow(0, 1), 'Make higher by one mark'),
  held(
    'Mod+Shift+ArrowLeft',
    long((n) => commands.grow(-n, 0)),
    'Make narrower by 1⁄4 in or 5 mm',
  ),
  held(
    'Mod+Shift+ArrowRight',
    long((n) => commands.grow(n, 0)),
    'Make wider by 1⁄4 in or 5 mm',
  ),
  held(
    'Mod+Shift+ArrowUp',
    long((n) => commands.grow(0, -n)),
    'Make lower by 1⁄4 in or 5 mm',
  ),
  held(
    'Mod+Shift+ArrowDown',
    long((n) => commands.grow(0, n)),
    'Make higher by 1⁄4 in or 5 mm',
  ),
  held('[', commands.tilt(-1), 'Tilt to the left by one degree'),
  held(']', commands.tilt(1), 'Tilt to the right by one degree'),
  held('{ Shift+[', commands.tilt(-15), 'Tilt to the left by fifteen degrees'),
  held('} Shift+]', commands.tilt(15), 'Tilt to the right by fifteen degrees'),
  row('.', commands.selectNext, 'Select the next piece up the stack'),
  row(',', commands.selectPrevious, 'Select the next piece down the stack'),
  row('PageUp', commands.raiseOrder, 'Glue one place later, over the next piece'),
  row('PageDown', commands.lowerOrder, 'Glue one place earlier, under the next piece'),
  row('Shift+PageUp', commands.toTop, 'Glue last, on top of all'),
  row('Shift+PageDown', commands.toBottom, 'Glue first, right on the card'),
  row('Mod+d', commands.duplicate, 'Cut the same piece again'),
  row('m', commands.matPiece(), 'Put a mat behind the piece'),
  row('Delete Backspace', commands.remove, 'Take the piece away'),
  row('Escape', commands.clearSelection, 'Let go of the piece'),
  row('t', commands.turnOver, 'Turn to the other face of the card'),
  row('Mod+z', 'undo', 'Undo'),
  row('Mod+y Mod+Shift+z', 'redo', 'Redo'),
];

const MODIFIERS: ReadonlySet<string> = new Set(['Shift', 'Control', 'Alt', 'Meta']);

interface Pressed {
  readonly key: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** The name of a pressed key with its modifiers, as the table writes it; empty for a modifier alone. */
export function keyName({ key, ctrlKey, metaKey, altKey, shiftKey }: Pressed): string {
  if (MODIFIERS.has(key)) return '';
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
