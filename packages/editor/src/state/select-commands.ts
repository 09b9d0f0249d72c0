import type { Piece, Sketch } from '@trimwell/sketch';
import { type Box, boxAround } from './group.js';
import { HANDLES, handlePoint } from './resize.js';
import type { Command, EditorState } from './state.js';

/** Pieces of the face that is shown, base first, hidden ones too. */
export function facePieces(state: { readonly sketch: Sketch; readonly face: Piece['face'] }): readonly Piece[] {
  return state.sketch.pieces.filter((piece) => piece.face === state.face);
}

/** Pieces that are to be seen on the face that is shown, base first. */
export function seenPieces(state: { readonly sketch: Sketch; readonly face: Piece['face'] }): readonly Piece[] {
  return facePieces(state).filter((piece) => !piece.hidden);
}

function sameList(one: readonly string[], other: readonly string[]): boolean {
  return one.length === other.length && one.every((id, index) => id === other[index]);
}

/** Selects the pieces `ids`, in that order; all of one face. Does not apply to what is selected already, or not there. */
export function selectThese(ids: readonly string[]): Command {
  return (state, dispatch, at = 0) => {
    if (sameList(ids, state.selection)) return false;
    const found = ids.map((id) => state.sketch.pieces.find((piece) => piece.id === id));
    const face = found[0]?.face ?? state.face;
    if (found.some((piece) => piece?.face !== face)) return false;
    const turn = face === state.face ? {} : { face };
    dispatch?.({ event: 'piece.select', edits: [], selection: ids, ...turn, at });
    return true;
  };
}

/** Selects `piece` alone, or nothing. Does not apply to a piece that is not there, or that alone is selected already. */
export function select(piece: string | null): Command {
  return selectThese(piece === null ? [] : [piece]);
}

/** Selects nothing. */
export const clearSelection: Command = select(null);

/** Adds `piece` to what is selected, or takes it out again. A piece of the other face is selected alone. */
export function toggleSelect(piece: string): Command {
  return (state, dispatch, at) => {
    const found = state.sketch.pieces.find(({ id }) => id === piece);
    if (found?.face !== state.face) return select(piece)(state, dispatch, at);
    const others = state.selection.filter((id) => id !== piece);
    const next = others.length < state.selection.length ? others : [...others, piece];
    return selectThese(next)(state, dispatch, at);
  };
}

/** Selects every piece that is to be seen on this face. */
export const selectAll: Command = (state, dispatch, at) =>
  selectThese(seenPieces(state).map(({ id }) => id))(state, dispatch, at);

/** The box on the card that a piece takes up, tilted as it is (floating ticks where it is tilted). */
export function extentOf(piece: Piece): Box {
  const corners = HANDLES.map((handle) => ({ ...handlePoint(piece, piece.tilt, handle), width: 0, height: 0 }));
  return piece.tilt === 0 ? piece : (boxAround(corners) ?? piece);
}

/** The seen pieces that lie wholly in `frame` (floating ticks), lowest first. */
export function piecesWithin(state: EditorState, frame: Box): readonly string[] {
  return seenPieces(state)
    .filter((piece) => {
      const { x, y, width, height } = extentOf(piece);
      return x >= frame.x && y >= frame.y && x + width <= frame.x + frame.width && y + height <= frame.y + frame.height;
    })
    .map(({ id }) => id);
}

/** The next seen piece up or down the stack from the one taken last; `among` narrows the choice. */
function nextAlong(state: EditorState, by: 1 | -1, among: (piece: Piece) => boolean): Piece | null {
  const pieces = seenPieces(state);
  const from = pieces.findIndex((piece) => piece.id === state.selection.at(-1));
  const start = from < 0 && by < 0 ? 0 : from;
  for (let steps = 1; steps <= pieces.length; steps += 1) {
    const next = pieces[(start + by * steps + 2 * pieces.length) % pieces.length];
    if (next && among(next)) return next;
  }
  return null;
}

function selectAlong(by: 1 | -1): Command {
  return (state, dispatch, at) => {
    const next = nextAlong(state, by, () => true);
    return next ? select(next.id)(state, dispatch, at) : false;
  };
}

/** Selects the next piece upwards in the stack; after the topmost comes the lowest. */
export const selectNext: Command = selectAlong(1);
/** Selects the next piece downwards in the stack; after the lowest comes the topmost. */
export const selectPrevious: Command = selectAlong(-1);

function selectMore(by: 1 | -1): Command {
  return (state, dispatch, at) => {
    const next = nextAlong(state, by, ({ id }) => !state.selection.includes(id));
    return next ? selectThese([...state.selection, next.id])(state, dispatch, at) : false;
  };
}

/** Takes the next piece upwards in the stack as well, past those that are taken. Does not apply when all are. */
export const selectNextToo: Command = selectMore(1);
/** Takes the next piece downwards in the stack as well. */
export const selectPreviousToo: Command = selectMore(-1);

/** Shows the other side of the card's front leaf. Does not apply to a card without a fold that has nothing inside. */
export const turnOver: Command = ({ sketch, face }, dispatch, at = 0) => {
  const bare =
    sketch.card.fold === 'none' && face === 'front' && !sketch.pieces.some((piece) => piece.face === 'inside');
  if (bare) return false;
  dispatch?.({ event: 'card.turn', edits: [], selection: [], face: face === 'front' ? 'inside' : 'front', at });
  return true;
};
