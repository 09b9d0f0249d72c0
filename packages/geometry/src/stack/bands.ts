import type { Boundary, BoundaryEdge } from './placed-piece.js';

/** From `left` to `right`, in whole ticks; never empty. */
export interface Interval {
  readonly left: number;
  readonly right: number;
}

/** Bands that a height is divided into where some boundary is curved or tilted. */
const BANDS = 96;
/** Ends of straight edges up to which a band begins at each of them; a punched edge may have more. */
const MOST_ENDS = 24;
/** What is no further from a whole tick is that tick: the error of turning a point, far below anything that is cut. */
const ROUNDING = 1e-6;

/**
 * Where bands begin and end, in whole ticks from 0 to `height`: where straight edges end, and evenly spread as well where
 * a boundary is not plain.
 */
export function bandCuts(height: number, boundaries: readonly Boundary[]): readonly number[] {
  const cuts = new Set([0, height]);
  for (const { ends } of boundaries) {
    if (ends.length > MOST_ENDS) continue;
    for (const y of ends) {
      const nearest = Math.round(y);
      if (Math.abs(y - nearest) < ROUNDING) cuts.add(nearest);
      else cuts.add(Math.floor(y)).add(Math.ceil(y));
    }
  }
  if (boundaries.some(({ plain }) => !plain))
    for (let band = 1; band < BANDS; band += 1) cuts.add(Math.round((height * band) / BANDS));
  return [...cuts].filter((y) => y >= 0 && y <= height).sort((a, b) => a - b);
}

/** The part of `edge` with y from `top` to `bottom`, as the range of its x; null when it only touches that. */
function rangeWithin({ from, to, error }: BoundaryEdge, top: number, bottom: number): Interval | null {
  const high = from.y <= to.y ? from : to;
  const low = high === from ? to : from;
  const above = top - error;
  const below = bottom + error;
  if (low.y <= above + ROUNDING || high.y >= below - ROUNDING) return null;
  let first = low.x;
  let last = high.x;
  if (low.y !== high.y) {
    const across = low.x - high.x;
    const down = low.y - high.y;
    first = high.x + (across * (Math.max(above, high.y) - high.y)) / down;
    last = high.x + (across * (Math.min(below, low.y) - high.y)) / down;
  }
  return { left: Math.min(first, last) - error, right: Math.max(first, last) + error };
}

/** Adds what lies between, in whole ticks. */
function addWholeTicks(inside: Interval[], from: number, to: number): void {
  const left = Math.ceil(from - ROUNDING);
  const right = Math.floor(to + ROUNDING);
  if (left < right) inside.push({ left, right });
}

/**
 * For each band, the intervals of x at which a boundary holds the band from top to bottom: a point of its middle line is
 * inside (even and odd crossings), and no edge touches the upright through it within the band. Exact for upright and
 * level edges on whole ticks when bands begin where they end; for others never too much: edges count as thick as their
 * error, and ends are rounded inwards.
 */
export function bandsOf({ edges }: Boundary, cuts: readonly number[]): readonly (readonly Interval[])[] {
  // This runs for every edge in every band that it crosses: it makes as little as it can.
  const bands = cuts.slice(1).map(() => ({ crossings: [] as number[], touched: [] as Interval[] }));
  for (const edge of edges) {
    const { from, to, error } = edge;
    const lowest = Math.max(from.y, to.y) + error;
    for (let at = bandAt(cuts, Math.min(from.y, to.y) - error); at < bands.length; at += 1) {
      const top = cuts[at] ?? 0;
      const bottom = cuts[at + 1] ?? 0;
      const band = bands[at];
      if (top >= lowest || !band) break;
      const range = rangeWithin(edge, top, bottom);
      if (!range) continue;
      band.touched.push(range);
      const middle = (top + bottom) / 2;
      if (from.y <= middle !== to.y <= middle)
        band.crossings.push(from.x + ((to.x - from.x) * (middle - from.y)) / (to.y - from.y));
    }
  }
  return bands.map(({ crossings, touched }) => insideOf(crossings, touched));
}

/** The band in which `y` lies, the first one for what is above all. */
function bandAt(cuts: readonly number[], y: number): number {
  let [low, high] = [0, cuts.length - 1];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((cuts[middle + 1] ?? Infinity) > y) high = middle;
    else low = middle + 1;
  }
  return low;
}

const NOTHING: readonly Interval[] = [];

/** What lies between the crossings of a middle line by pairs, less what an edge touches. */
function insideOf(crossings: number[], touched: Interval[]): readonly Interval[] {
  if (crossings.length === 0) return NOTHING;
  crossings.sort((a, b) => a - b);
  touched.sort((a, b) => a.left - b.left);
  const inside: Interval[] = [];
  for (let at = 0; at + 1 < crossings.length; at += 2) {
    let left = crossings[at] ?? 0;
    const right = crossings[at + 1] ?? 0;
    for (const range of touched) {
      if (range.right < left || range.left > right) continue;
      addWholeTicks(inside, left, range.left);
      left = Math.max(left, range.right);
    }
    addWholeTicks(inside, left, right);
  }
  return inside;
}

/** The intervals as one set: those that overlap or touch become one. */
export function joined(intervals: readonly Interval[]): readonly Interval[] {
  const found: Interval[] = [];
  for (const { left, right } of [...intervals].sort((a, b) => a.left - b.left)) {
    const last = found.at(-1);
    if (last && left <= last.right) found[found.length - 1] = { left: last.left, right: Math.max(last.right, right) };
    else found.push({ left, right });
  }
  return found;
}

/** What two sets of intervals, each in order and apart, have in common, in order. */
export function common(one: readonly Interval[], other: readonly Interval[]): readonly Interval[] {
  const found: Interval[] = [];
  let [a, b] = [0, 0];
  for (let [left, right] = [one[a], other[b]]; left && right; left = one[a], right = other[b]) {
    const shared = { left: Math.max(left.left, right.left), right: Math.min(left.right, right.right) };
    if (shared.left < shared.right) found.push(shared);
    if (left.right <= right.right) a += 1;
    else b += 1;
  }
  return found;
}

/** True when each of `inner` lies within one of `outer`. */
export function isWithin(inner: readonly Interval[], outer: readonly Interval[]): boolean {
  return inner.every(({ left, right }) => outer.some((each) => each.left <= left && right <= each.right));
}
