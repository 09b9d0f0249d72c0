import type { Point } from '../rect/rect.js';
import { bandCuts } from './bands.js';
import { crossingsOf, uncovered } from './lines.js';
import { boundaryIn, farApart, type PlacedPiece } from './placed-piece.js';
import { holdsPoint } from './point-in-piece.js';
import { coveredByOne, fewThatMayCover, shownPoint, toFace } from './quick-cover.js';

/** Where the middle line of a band of `piece` first reaches out from below the union of `covers`, on the face; null when none does. */
function shownOnLines(piece: PlacedPiece, covers: readonly PlacedPiece[]): Point | null {
  const own = boundaryIn(piece, piece);
  const over = covers.map((cover) => boundaryIn(piece, cover));
  const cuts = bandCuts(piece.shape.height, [own, ...over]);
  const lines = cuts.slice(1).map((bottom, band) => ((cuts[band] ?? 0) + bottom) / 2);
  const covered = over.map((cover) => crossingsOf(cover, lines));
  for (const [line, inside] of crossingsOf(own, lines).entries()) {
    const x = uncovered(
      inside,
      covered.map((crossings) => crossings[line] ?? []),
    );
    if (x !== null) return toFace(piece)({ x, y: lines[line] ?? 0 });
  }
  return null;
}

/** What hides a piece, or where it shows. */
export type Covering =
  | { readonly is: 'hidden'; readonly by: readonly PlacedPiece[] }
  | { readonly is: 'shown'; readonly at: Point };

/**
 * Whether anything of `piece` shows below the union of `covers`: some of them that hide it, few where few are found, or a point of
 * the face where it shows. Exact for rectangles with square corners and plain edges that are not tilted against each other; of others
 * what none of 96 lines across the piece meets, or what lies between a curve and its chord, is left out. So what is told to show does
 * show, and a piece under its like is covered. A point that shows or a cover that holds every corner decides nearly always;
 * else a few covers are looked at, and each time one more that holds what still shows.
 */
export function coveringOf(piece: PlacedPiece, covers: readonly PlacedPiece[]): Covering {
  const near = covers.filter((cover) => !farApart(piece, cover));
  const shown = shownPoint(piece, near);
  if (shown) return { is: 'shown', at: shown };
  const one = coveredByOne(piece, near);
  if (one) return { is: 'hidden', by: [one] };
  const few = [...fewThatMayCover(piece, near)];
  for (;;) {
    const at = shownOnLines(piece, few);
    if (at === null) return { is: 'hidden', by: few };
    const missing = near.find((cover) => !few.includes(cover) && holdsPoint(cover, at));
    if (!missing) return { is: 'shown', at };
    few.push(missing);
  }
}

/** True when nothing of `piece` shows below the union of `covers`; as exact as `coveringOf`. */
export function isCovered(piece: PlacedPiece, covers: readonly PlacedPiece[]): boolean {
  return coveringOf(piece, covers).is === 'hidden';
}
