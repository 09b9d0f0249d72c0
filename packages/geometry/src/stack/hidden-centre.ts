import { type Length, ticks } from '../length/length.js';
import type { Rect } from '../rect/rect.js';
import { bandCuts, bandsOf, common, type Interval, joined } from './bands.js';
import { type Boundary, boundaryIn, type PlacedPiece } from './placed-piece.js';

export interface HiddenCentreOptions {
  /** What has to stay of the piece around its centre, so that it holds together and can be glued. */
  readonly overlap: Length;
  /** The centre's sides are rounded down to whole steps; null for none. */
  readonly step: Length | null;
}

/** The boundaries of those `covers` that lie over `piece` at all, in its frame, with their places among the covers. */
function over(piece: PlacedPiece, covers: readonly PlacedPiece[]) {
  const { width, height } = piece.shape;
  return covers.flatMap((cover, index): readonly { readonly index: number; readonly boundary: Boundary }[] => {
    const boundary = boundaryIn(piece, cover);
    const { left, top, right, bottom } = boundary.box;
    return left < width && right > 0 && top < height && bottom > 0 ? [{ index, boundary }] : [];
  });
}

/** One side of a centre out of what is hidden from `start` to `end`: on a mark of the ruler where there is room for that. */
function sideWithin(start: number, end: number, { overlap, step }: HiddenCentreOptions) {
  const [from, room] = [start + overlap, end - start - 2 * overlap];
  if (!step || room < 0) return { from, length: room };
  const length = Math.floor(room / step) * step;
  const mark = Math.ceil(from / step) * step;
  return { from: mark + length <= from + room ? mark : from, length };
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
 * below a cover's edge or at the piece's own) and the sides are rounded down to whole steps. Null when nothing is left.
 * Of equal ones the topmost, then the leftmost.
 *
 * Exact for rectangles with square corners and plain edges that are not tilted, or by quarter turns. Others are counted
 * by what of them fills whole horizontal bands (96 on the piece's height, and one at each corner), curves as thick as
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
  let best: Rect | null = null;
  let most = 0;
  for (let first = 0; first < hidden.length; first += 1) {
    let reach: readonly Interval[] = hidden[first] ?? [];
    for (let last = first; last < hidden.length && reach.length > 0; last += 1) {
      if (last > first) reach = common(reach, hidden[last] ?? []);
      const down = sideWithin(cuts[first] ?? 0, cuts[last + 1] ?? 0, options);
      for (const { left, right } of down.length > 0 ? reach : []) {
        const across = sideWithin(left, right, options);
        if (across.length <= 0 || across.length * down.length <= most) continue;
        most = across.length * down.length;
        const [x, y, width, height] = [across.from, down.from, across.length, down.length].map(ticks) as Length[];
        if (x !== undefined && y !== undefined && width && height) best = { x, y, width, height };
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
  const cuts = bandCuts(
    piece.shape.height,
    above.map(({ boundary }) => boundary),
  );
  const [right, bottom] = [centre.x + centre.width, centre.y + centre.height];
  const held: (readonly (readonly Interval[])[])[] = [];
  return above.flatMap(({ index, boundary }) => {
    const { box } = boundary;
    const beyond = Math.max(centre.x - box.left, box.right - right, centre.y - box.top, box.bottom - bottom);
    const bands = bandsOf(boundary, cuts).map(joined);
    const rests = (lower: readonly (readonly Interval[])[]): boolean =>
      bands.some((band, at) => common(band, lower[at] ?? []).length > 0);
    const overHole = box.left < right && box.right > centre.x && box.top < bottom && box.bottom > centre.y;
    if (overHole && beyond < overlap && !held.some(rests)) return [index];
    held.push(bands);
    return [];
  });
}
