import { bandCuts, bandsOf, isWithin, joined } from './bands.js';
import { boundaryIn, farApart, type PlacedPiece } from './placed-piece.js';

/**
 * True when nothing of `piece` shows below the union of `covers`. Exact for rectangles with square corners and plain edges
 * that are not tilted against each other; of others the slivers that do not fill a whole band (1/96 of the piece's height)
 * or lie between a curve and its chord are left out on both sides, so that a piece under its like is covered.
 */
export function isCovered(piece: PlacedPiece, covers: readonly PlacedPiece[]): boolean {
  const own = boundaryIn(piece, piece);
  const over = covers
    .filter((cover) => !farApart(piece, cover))
    .map((cover) => boundaryIn(piece, cover))
    .filter(
      ({ box }) =>
        box.left < own.box.right && box.right > own.box.left && box.top < own.box.bottom && box.bottom > own.box.top,
    );
  if (over.length === 0) return false;
  const cuts = bandCuts(piece.shape.height, [own, ...over]);
  const covered = over.map((cover) => bandsOf(cover, cuts));
  return bandsOf(own, cuts).every((inside, band) =>
    isWithin(joined(inside), joined(covered.flatMap((bands) => bands[band] ?? []))),
  );
}
