import type { Boundary, BoundaryEdge } from './placed-piece.js';

/** From `left` to `right`, in whole ticks; never empty. */
export interface Interval {
  readonly left: number;
  readonly right: number;
}

/** Bands that a height is divided into where some boundary is curved or tilted. */
const BANDS = 96;
/** Steps of an outline up to which a band begins at every one of them; a punched edge has more. */
const MOST_CORNERS = 24;
/** What is no further from a whole tick is that tick: the error of turning a point, far below anything that is cut. */
const ROUNDING = 1e-6;

/**
 * Where bands begin and end, in whole ticks from 0 to `height`: at every corner, and evenly spread as well where a
 * boundary is not plain.
 */
export function bandCuts(height: number, boundaries: readonly Boundary[]): readonly number[] {
  const cuts = new Set([0, height]);
  for (const { corners } of boundaries) {
    if (corners.length > MOST_CORNERS) continue;
    for (const { y } of corners) {
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
  const [high, low] = from.y <= to.y ? [from, to] : [to, from];
  const [above, below] = [top - error, bottom + error];
  if (low.y <= above + ROUNDING || high.y >= below - ROUNDING) return null;
  const at = (y: number): number =>
    low.y === high.y ? high.x : high.x + ((low.x - high.x) * (y - high.y)) / (low.y - high.y);
  const ends = low.y === high.y ? [low.x, high.x] : [at(Math.max(above, high.y)), at(Math.min(below, low.y))];
  return { left: Math.min(...ends) - error, right: Math.max(...ends) + error };
}

function wholeTicks(left: number, right: number): readonly Interval[] {
  const inner = { left: Math.ceil(left - ROUNDING), right: Math.floor(right + ROUNDING) };
  return inner.left < inner.right ? [inner] : [];
}

/**
 * For each band, the intervals of x at which a boundary holds the band from top to bottom: a point of its middle line is
 * inside (even and odd crossings), and no edge touches the upright through it within the band. Exact for upright and
 * level edges on whole ticks when bands begin at its corners; for others never too much: edges count as thick as their
 * error, and ends are rounded inwards.
 */
export function bandsOf({ edges }: Boundary, cuts: readonly number[]): readonly (readonly Interval[])[] {
  return cuts.slice(1).map((bottom, index) => {
    const top = cuts[index] ?? 0;
    const middle = (top + bottom) / 2;
    const crossings: number[] = [];
    const touched: Interval[] = [];
    for (const edge of edges) {
      const range = rangeWithin(edge, top, bottom);
      if (!range) continue;
      touched.push(range);
      const { from, to } = edge;
      if (from.y <= middle !== to.y <= middle)
        crossings.push(from.x + ((to.x - from.x) * (middle - from.y)) / (to.y - from.y));
    }
    crossings.sort((a, b) => a - b);
    touched.sort((a, b) => a.left - b.left);
    const inside: Interval[] = [];
    for (let at = 0; at + 1 < crossings.length; at += 2) {
      let left = crossings[at] ?? 0;
      const right = crossings[at + 1] ?? 0;
      for (const range of touched) {
        if (range.right < left || range.left > right) continue;
        inside.push(...wholeTicks(left, range.left));
        left = Math.max(left, range.right);
      }
      inside.push(...wholeTicks(left, right));
    }
    return inside;
  });
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

/** What two sets of intervals, each in order and apart, have in common. */
export function common(one: readonly Interval[], other: readonly Interval[]): readonly Interval[] {
  return one.flatMap((a) =>
    other.flatMap((b) => {
      const shared = { left: Math.max(a.left, b.left), right: Math.min(a.right, b.right) };
      return shared.left < shared.right ? [shared] : [];
    }),
  );
}
