import type { Length } from '../length/length.js';
import { type Rect, rect } from '../rect/rect.js';
import { bandCuts, bandsOf, common, type Interval, isWithin, joined } from './bands.js';
import { type Boundary, boundaryIn, farApart, type PlacedPiece } from './placed-piece.js';

export interface HiddenCentreOptions {
  /** What has to stay of the piece around its centre, so that it holds together and can be glued. */
  readonly overlap: Length;
  /** The centre begins and ends on whole steps from the piece's own edges; null for any place. */
  readonly step: Length | null;
}

/** The boundaries of those `covers` that lie over `piece` at all, in its frame, with their places among the covers. */
function over(piece: PlacedPiece, covers: readonly PlacedPiece[]) {
  const { width, height } = piece.shape;
  return covers.flatMap((cover, index): readonly { readonly index: number; readonly boundary: Boundary }[] => {
    if (farApart(piece, cover)) return [];
    const boundary = boundaryIn(piece, cover);
    const { left, top, right, bottom } = boundary.box;
    return left < width && right > 0 && top < height && bottom > 0 ? [{ index, boundary }] : [];
  });
}

/** One side of a centre out of what is hidden from `start` to `end`: from mark to mark of the ruler, if there is one. */
function sideWithin(start: number, end: number, { overlap, step }: HiddenCentreOptions) {
  const [from, room] = [start + overlap, end - start - 2 * overlap];
  if (!step || room < 0) return { from, length: room };
  const mark = Math.ceil(from / step) * step;
  return { from: mark, length: Math.floor((from + room - mark) / step) * step };
}

/** For each band, which x are within the piece and below the covers taken together. */
function hiddenBands(piece: PlacedPiece, covers: readonly Boundary[]) {
  const own = boundaryIn(piece, piece);
  const cuts = bandCuts(piece.shape.height, [own, ...covers]);
  const covered = covers.map((cover) => bandsOf(cover, cuts));
  const hidden = bandsOf(own, cuts).map((inside, band) =>
    common(joined(inside), joined(covered.flatMap((bands) => bands[band] ?? []))),
  );
  return { cuts, hidden };
}

/**
 * The largest rectangle that can be cut out of `piece` without being seen or loosening anything at its edge: of all upright
 * rectangles, in the piece's own untilted frame, that lie within the piece and below the union of `covers`, the one of
 * which most area is left when `overlap` is taken off all four sides (on each a frame of the piece has to stay, be it
 * below a cover's edge or at the piece's own) and it is drawn in to whole steps. Null when nothing is left.
 * Of equal ones the topmost, then the leftmost.
 *
 * Exact for rectangles with square corners and plain edges that are not tilted, or by quarter turns. Others are counted
 * by what of them fills whole horizontal bands (96 on the piece's height, and one wherever a straight edge ends), curves as thick as
 * their distance from a chord, so that a centre is never uncovered but may be a little smaller than possible.
 */
export function hiddenCentre(
  piece: PlacedPiece,
  covers: readonly PlacedPiece[],
  options: HiddenCentreOptions,
): Rect | null {
  const { cuts, hidden } = hiddenBands(
    piece,
    over(piece, covers).map(({ boundary }) => boundary),
  );
  const bottom = cuts.at(-1) ?? 0;
  let best: Rect | null = null;
  let most = 0;
  for (let first = 0; first < hidden.length; first += 1) {
    const top = cuts[first] ?? 0;
    let reach: readonly Interval[] = hidden[first] ?? [];
    // What the band above holds as well begins there, and is no larger from here.
    if (first > 0 && isWithin(reach, hidden[first - 1] ?? [])) continue;
    for (let last = first; last < hidden.length; last += 1) {
      if (last > first) reach = common(reach, hidden[last] ?? []);
      const widest = reach.reduce((width, { left, right }) => Math.max(width, right - left), 0);
      if (widest * (bottom - top) <= most) break;
      const down = sideWithin(top, cuts[last + 1] ?? 0, options);
      if (down.length <= 0 || widest * down.length <= most) continue;
      for (const { left, right } of reach) {
        const across = sideWithin(left, right, options);
        if (across.length <= 0 || across.length * down.length <= most) continue;
        most = across.length * down.length;
        best = rect(across.from, down.from, across.length, down.length);
      }
    }
  }
  return best;
}

/**
 * Which of `covers`, in gluing order, would have nothing to be glued to once `centre` is cut out of `piece`: it reaches
 * nowhere `overlap` beyond the hole, and lies on no lower cover that is held. Places in `covers`.
 */
export function fallsThrough(
  piece: PlacedPiece,
  covers: readonly PlacedPiece[],
  centre: Rect,
  overlap: Length,
): readonly number[] {
  const above = over(piece, covers);
  const [right, bottom] = [centre.x + centre.width, centre.y + centre.height];
  const loose = above.map(({ boundary: { box } }) => {
    const beyond = Math.max(centre.x - box.left, box.right - right, centre.y - box.top, box.bottom - bottom);
    const overHole = box.left < right && box.right > centre.x && box.top < bottom && box.bottom > centre.y;
    return overHole && beyond < overlap;
  });
  if (!loose.includes(true)) return [];
  const cuts = bandCuts(
    piece.shape.height,
    above.map(({ boundary }) => boundary),
  );
  const known = new Map<Boundary, readonly (readonly Interval[])[]>();
  const bands = (boundary: Boundary): readonly (readonly Interval[])[] => {
    const found = known.get(boundary) ?? bandsOf(boundary, cuts).map(joined);
    known.set(boundary, found);
    return found;
  };
  const meet = (one: Boundary, other: Boundary): boolean =>
    one.box.left < other.box.right &&
    one.box.right > other.box.left &&
    one.box.top < other.box.bottom &&
    one.box.bottom > other.box.top &&
    bands(one).some((band, at) => common(band, bands(other)[at] ?? []).length > 0);
  const held: Boundary[] = [];
  return above.flatMap(({ index, boundary }, at) => {
    if (loose[at] && !held.some((lower) => meet(boundary, lower))) return [index];
    held.push(boundary);
    return [];
  });
}
