import { type Point, ticks } from '@trimwell/geometry';
import { everyPiece, freeId, MOST_PIECES, type Piece } from '@trimwell/sketch';
import type { Command, EditorState } from './state.js';
import { firstKind, placedAbout, sourceOf, usualCut, usualName } from './usual-cut.js';

function newPiece({ sketch, face }: EditorState, from: string, about?: Point): Piece | null {
  const source = sourceOf(sketch, from);
  if (!source || sketch.pieces.length >= MOST_PIECES) return null;
  const cut = usualCut(sketch, source.paper, firstKind(source.paper, face));
  if (!cut) return null;
  const { kind } = cut;
  const { card } = sketch;
  const square = ticks(0);
  return {
    id: freeId(kind.replaceAll(' ', '-'), everyPiece(sketch)),
    name: usualName(source.name, kind),
    face,
    ...cut,
    ...placedAbout(sketch, cut, about ?? { x: card.width / 2, y: card.height / 2 }),
    tilt: 0,
    corners: { tl: square, tr: square, br: square, bl: square },
    punched: {},
    from,
    raise: square,
    perCard: 1,
  };
}

/**
 * Cuts a new piece from a paper or a mix, glues it on top and selects it; its middle comes to `about` (ticks on the face
 * that is shown), or to the middle of the card. Does not apply to a paper that is not there, or when the sketch is full.
 */
export function addPiece(from: string, about?: Point): Command {
  return (state, dispatch, at = 0) => {
    const piece = newPiece(state, from, about);
    if (!piece) return false;
    dispatch?.({ event: 'piece.add', edits: [{ do: 'add-piece', piece }], selection: [piece.id], at });
    return true;
  };
}
