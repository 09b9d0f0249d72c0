import { type Piece, rulerStep } from '@trimwell/sketch';
import { leadBody, selectedBodies } from '../../state/group.js';
import { snapMove } from '../../state/snap.js';
import { groupRect, snapFieldOf } from '../../state/snap-field.js';
import { type EditorState, selectedPieces, type Transaction } from '../../state/state.js';
import { faceMessages } from './face-messages.js';
import { snapWords } from './snap-words.js';

/** What moves pieces or changes their size, so that it is worth saying what they lie along now. */
const PLACING: ReadonlySet<string> = new Set(['piece.move', 'piece.resize', 'arrange.align']);

/** What the selection lies along exactly where it is, in words. */
export function restingWords(state: EditorState): string {
  const { sketch, selection } = state;
  const bodies = selectedBodies(state);
  const lead = leadBody(bodies, selection) ?? bodies[0];
  if (!lead) return '';
  const field = { ...snapFieldOf(sketch, lead.handle, bodies, 1), tolerance: 0 };
  const box = groupRect(bodies, lead);
  const ruled = { x: lead.handle.x - box.x, y: lead.handle.y - box.y };
  const { rect, marks } = snapMove(box, field, ruled);
  return snapWords(
    marks.filter(({ axis }) => rect[axis] === box[axis]),
    sketch.unit,
  );
}

/** The locked pieces that hold something of the selection in its place. */
function holding(state: EditorState): readonly string[] {
  return [...new Set(selectedBodies(state).flatMap(({ locked }) => (locked ? [locked.name] : [])))];
}

/** Why a command on the selection did nothing, when that is because all of it is locked; else null. */
export function refusal(state: EditorState): string | null {
  const names = holding(state);
  return names.length > 0 ? faceMessages.locked(names) : null;
}

/** What locked pieces do not take part in. */
function moves(event: string): boolean {
  return /^(order|arrange)\./.test(event) || /^piece\.(move|resize|tilt|shape|face|remove)$/.test(event);
}

/** What is worth saying of pieces that were pasted: their sizes were measured with another ruler. */
function pastedWords({ sketch }: EditorState, pieces: readonly Piece[]): string {
  const step = rulerStep(sketch.unit);
  const off = pieces.filter(({ width, height }) => width % step !== 0 || height % step !== 0);
  return off.length === 0 ? '' : faceMessages.offTheRuler(off.length, pieces.length, sketch.unit);
}

/** What was done, as a transaction tells it. */
export type Done = Pick<Transaction, 'event' | 'off'>;

/** What is announced of what was `done`, now that it is; null when there is nothing to say. */
export function announcement({ event, off }: Done, state: EditorState): string | null {
  const { sketch, selection } = state;
  const pieces = selectedPieces(state);
  const last = pieces.find(({ id }) => id === selection.at(-1)) ?? null;
  const words = faceMessages.after(event, sketch, pieces, last);
  if (words === null) return null;
  const stays = moves(event) ? holding(state) : [];
  return [
    words,
    off ? faceMessages.nearestMark(off, sketch.unit) : PLACING.has(event) ? restingWords(state) : '',
    event === 'piece.paste' ? pastedWords(state, pieces) : '',
    stays.length > 0 ? faceMessages.locked(stays) : '',
  ]
    .filter((part) => part !== '')
    .join('; ');
}
