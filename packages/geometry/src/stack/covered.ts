import type { Point } from '../rect/rect.js';
import { bandCuts, bandsOf, type Interval, joined } from './bands.js';
import { boundaryIn, farApart, type PlacedPiece } from './placed-piece.js';
import { holdsPoint } from './point-in-piece.js';
import { coveredByOne, fewThatMayCover, shownPoint, toFace } from './quick-cover.js';

/** The first of `inner` that reaches out of `outer`, as the middle of what does; null when all lies within. */
function outside(inner: readonly Interval[], outer: readonly Interval[]): number | null {
  for (const { left, right } of inner) {
    if (outer.some((each) => each.left <= left && right <= each.right)) continue;
    const held = outer.find((each) => each.left <= left && left < each.right);
    const from = held ? held.right : left;
    const next = outer.find((each) => each.left > from);
    return (from + Math.min(right, next?.left ?? right)) / 2;
  }
  return null;
}

/** Where a band of `piece` first reaches out from below the union of `covers`, on the face; null when none does. */
function shownInBands(piece: PlacedPiece, covers: readonly PlacedPiece[]): Point | null {
  const own = boundaryIn(piece, piece);
  const over = covers.map((cover) => boundaryIn(piece, cover));
  const cuts = bandCuts(piece.shape.height, [own, ...over]);
  const covered = over.map((cover) => bandsOf(cover, cuts));
  for (const [band, inside] of bandsOf(own, cuts).entries()) {
    const x = outside(joined(inside), joined(covered.flatMap((bands) => bands[band] ?? [])));
    if (x !== null) return toFace(piece)({ x, y: ((cuts[band] ?? 0) + (cuts[band + 1] ?? 0)) / 2 });
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
 * the slivers that do not fill a whole band (1/96 of the piece's height) or lie between a curve and its chord are left out on both
 * sides, so that a piece under its like is covered. A point that shows or a cover that holds every corner decides nearly always;
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
    const at = shownInBands(piece, few);
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
