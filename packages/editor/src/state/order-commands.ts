import type { Edit, Piece, Sketch } from '@trimwell/sketch';
import { chainEdits } from './on-selected.js';
import { facePieces } from './select-commands.js';
import type { Command } from './state.js';

/** The edit that puts `piece` over or under its neighbours of the same face. */
function moveInOrder(piece: Piece, sketch: Sketch, to: (place: number) => number): readonly Edit[] {
  const mine = facePieces({ sketch, face: piece.face });
  const goal = mine[to(mine.indexOf(piece))];
  return !goal || goal === piece ? [] : [{ do: 'order', piece: piece.id, to: sketch.pieces.indexOf(goal) }];
}

/**
 * Puts the selected pieces elsewhere in the order of gluing. They keep their order among each other: those that go first
 * are moved first, and none passes another of them. Locked pieces keep their place.
 */
function reorder(event: string, up: boolean, far: boolean): Command {
  return (state, dispatch, at = 0) => {
    const { sketch, selection } = state;
    const chosen = sketch.pieces.filter((piece) => selection.includes(piece.id) && !piece.locked).map(({ id }) => id);
    // One step moves the foremost first, so that the others can follow; all the way moves it last, so that it stays foremost.
    const turns = up === far ? chosen : chosen.toReversed();
    const edits = chainEdits(sketch, turns, (piece, now) => {
      const mine = facePieces({ sketch: now, face: piece.face });
      const passed = (place: number): number => {
        if (far) return up ? mine.length - 1 : 0;
        const next = mine[place + (up ? 1 : -1)];
        return next && chosen.includes(next.id) ? place : place + (up ? 1 : -1);
      };
      return moveInOrder(piece, now, passed);
    });
    const changed = edits.length > 0 && edits.some((edit) => edit.do === 'order');
    if (!changed || !differs(sketch, edits)) return false;
    dispatch?.({ event, edits, at });
    return true;
  };
}

/** Moving all of several to the top moves them past each other even when they lie there already, in that order. */
function differs(sketch: Sketch, edits: readonly Edit[]): boolean {
  const order = sketch.pieces.map(({ id }) => id);
  const after = [...order];
  for (const edit of edits) {
    if (edit.do !== 'order') continue;
    after.splice(after.indexOf(edit.piece), 1);
    after.splice(edit.to, 0, edit.piece);
  }
  return after.some((id, index) => id !== order[index]);
}

/** Glues what is selected one place later: over the piece that lay over it. Does not apply to the topmost. */
export const raiseOrder: Command = reorder('order.raise', true, false);
/** Glues what is selected one place earlier. Does not apply to the lowest. */
export const lowerOrder: Command = reorder('order.lower', false, false);
/** Glues what is selected last. */
export const toTop: Command = reorder('order.top', true, true);
/** Glues what is selected first, right on the card. */
export const toBottom: Command = reorder('order.bottom', false, true);
