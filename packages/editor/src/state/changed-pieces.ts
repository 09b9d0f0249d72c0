import type { Piece, Sketch } from '@trimwell/sketch';

/** What a piece must have kept so that nothing but itself looks otherwise: its paper also says which one others get. */
function keepsOthers(before: Piece, after: Piece): boolean {
  return (
    before.id === after.id && before.face === after.face && before.from === after.from && before.hidden === after.hidden
  );
}

/**
 * The pieces of `after` that differ from those of `before`, when nothing else does: the same pieces in the same order, on
 * the same card, from the same papers. Null when more has changed. What did not change is the same object, so this costs
 * one comparison a piece.
 */
export function changedPieces(before: Sketch, after: Sketch): readonly Piece[] | null {
  const same =
    before.card === after.card &&
    before.papers === after.papers &&
    before.mixes === after.mixes &&
    before.punches === after.punches &&
    before.unit === after.unit &&
    before.title === after.title &&
    before.pieces.length === after.pieces.length;
  if (!same) return null;
  const changed: Piece[] = [];
  for (const [index, piece] of after.pieces.entries()) {
    const old = before.pieces[index];
    if (piece === old) continue;
    if (!old || !keepsOthers(old, piece)) return null;
    changed.push(piece);
  }
  return changed;
}

/** True when `after` differs from `before` in nothing but where pieces lie on the card. */
export function onlyPlacesChanged(before: Sketch, after: Sketch): boolean {
  if (before.batch !== after.batch) return false;
  const changed = changedPieces(before, after);
  return (
    changed?.every((piece) => {
      const old = before.pieces.find(({ id }) => id === piece.id);
      const keys = Object.keys(piece) as (keyof Piece)[];
      return (
        old !== undefined &&
        keys.length === Object.keys(old).length &&
        keys.every((key) => key === 'x' || key === 'y' || piece[key] === old[key])
      );
    }) ?? false
  );
}
