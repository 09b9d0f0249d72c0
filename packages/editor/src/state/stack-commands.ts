import type { Edit, Piece, Sketch } from '@trimwell/sketch';
import type { Command } from './state.js';

/** The ids of `sketch` in gluing order with `moved` right over the piece `over`, or first on their face. */
function stackedOver(
  sketch: Sketch,
  moved: readonly Piece[],
  over: string | null,
  face: Piece['face'],
): readonly string[] {
  const rest = sketch.pieces.filter((piece) => !moved.includes(piece));
  const first = rest.findIndex((piece) => piece.face === face);
  const at = over === null ? Math.max(0, first) : rest.findIndex(({ id }) => id === over) + 1;
  return [...rest.slice(0, at), ...moved, ...rest.slice(at)].map(({ id }) => id);
}

/** The edits that bring `moved` to their places in `order`, one for each that is not there yet. */
function orderEdits(sketch: Sketch, moved: readonly Piece[], order: readonly string[]): readonly Edit[] {
  let ids = sketch.pieces.map(({ id }) => id);
  const before = (id: string): string | undefined => order[order.indexOf(id) - 1];
  return moved.flatMap(({ id }): readonly Edit[] => {
    const others = ids.filter((other) => other !== id);
    const under = before(id);
    const to = under === undefined ? 0 : others.indexOf(under) + 1;
    if (ids[to] === id) return [];
    ids = [...others.slice(0, to), id, ...others.slice(to)];
    return [{ do: 'order', piece: id, to }];
  });
}

/**
 * Glues the pieces `ids` right over the piece `over`, or first on the face when it is null; they keep their order among each
 * other. Does not apply when they lie there already, when one of them is locked or is `over` itself, or when they lie on
 * two faces. Their face is shown.
 */
export function glueOver(ids: readonly string[], over: string | null): Command {
  return (state, dispatch, at = 0) => {
    const { sketch } = state;
    const moved = sketch.pieces.filter(({ id }) => ids.includes(id));
    const face = moved[0]?.face;
    const under = sketch.pieces.find(({ id }) => id === over);
    const sound = over === null || (under?.face === face && !ids.includes(over));
    if (face === undefined || !sound || moved.some((piece) => piece.locked || piece.face !== face)) return false;
    const edits = orderEdits(sketch, moved, stackedOver(sketch, moved, over, face));
    const [first] = edits;
    if (first?.do !== 'order') return false;
    const from = sketch.pieces.findIndex(({ id }) => id === first.piece);
    const event = first.to > from ? 'order.raise' : 'order.lower';
    const turn = face === state.face ? {} : { face };
    dispatch?.({ event, edits, selection: moved.map(({ id }) => id), ...turn, at });
    return true;
  };
}

/** Locks one piece in its place or frees it, or hides or shows it; the selection stays. */
export function markPiece(piece: string, mark: 'locked' | 'hidden', on: boolean): Command {
  return ({ sketch }, dispatch, at = 0) => {
    const found = sketch.pieces.find(({ id }) => id === piece);
    if (!found || (found[mark] ?? false) === on) return false;
    const event = mark === 'locked' ? (on ? 'piece.lock' : 'piece.unlock') : on ? 'piece.hide' : 'piece.show';
    dispatch?.({ event, edits: [{ do: 'alter-piece', piece, [mark]: on }], at });
    return true;
  };
}
