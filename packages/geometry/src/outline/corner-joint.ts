/** A place near a corner: `u` from it back along the edge that ends there, `v` from it along the edge that begins. */
interface CornerPoint {
  readonly u: number;
  readonly v: number;
}

/** An edge as its corner sees it: how far inside it runs at a distance from the corner; `most` is 0 for a plain edge. */
export interface CornerSide {
  readonly most: number;
  readonly depth: (away: number) => number;
}

/** Where two edges meet: the first is left at `leave`, the second entered at `enter`, and whether an arc lies between. */
export interface CornerJoint {
  readonly leave: number;
  readonly enter: number;
  readonly arc: boolean;
}

/** Less than this is no distance, in ticks (a nanometre is 0.64 of a thousandth of one). */
const LEAST = 1e-6;
/** Samples are this close, in ticks (0.03 mm, a fraction of the thinnest line) along the edge: what is narrower may be passed over. */
const STEP = 20;
const FEWEST = 100;
const MOST = 2000;

function samplesFor(length: number): number {
  return Math.max(FEWEST, Math.min(MOST, Math.ceil(length / STEP)));
}

/** The first place from `from` down to 0 where `outside` holds, to the last bit; null when nowhere. */
function firstOutside(from: number, samples: number, outside: (at: number) => boolean): number | null {
  if (from <= 0) return null;
  for (let n = 1; n <= samples; n += 1) {
    if (!outside((from * (samples - n)) / samples)) continue;
    let [bad, good] = [(from * (samples - n)) / samples, (from * (samples - n + 1)) / samples];
    for (let halving = 0; halving < 52; halving += 1) {
      const middle = (bad + good) / 2;
      if (outside(middle)) bad = middle;
      else good = middle;
    }
    return good;
  }
  return null;
}

/** Follows the corner's arc from `from` to where the next edge takes over. */
function alongArc({ u, v }: CornerPoint, after: CornerSide, radius: number): CornerJoint {
  const point = (angle: number): CornerPoint => ({
    u: radius - radius * Math.cos(angle),
    v: radius - radius * Math.sin(angle),
  });
  const end = firstOutside(Math.atan2(radius - v, radius - u), samplesFor(radius), (angle) => {
    const place = point(angle);
    return place.u < after.depth(place.v) - LEAST;
  });
  return { leave: u, enter: end === null ? radius : point(end).v, arc: true };
}

/**
 * How a corner of `radius` joins the edge `before` it to the edge `after` it. A piece is what every tool leaves of it:
 * the corner rounder takes off what lies outside its arc, each punch what lies outside its profile, along its whole edge.
 * The first edge is therefore followed until it leaves the arc or the other profile, whichever comes first. Found by
 * sampling: the cusp of a scallop deeper than half its repeat has no width, and may pierce the other edge unseen there.
 */
export function joinCorner(before: CornerSide, after: CornerSide, radius: number): CornerJoint {
  if (before.most === 0) {
    const taken = after.depth(0);
    if (taken >= radius) return { leave: taken, enter: 0, arc: false };
    return alongArc({ u: radius, v: 0 }, after, radius);
  }
  const crossed = ({ u, v }: CornerPoint): boolean => u < after.depth(v) - LEAST;
  const cutOff = ({ u, v }: CornerPoint): boolean =>
    u < radius && v < radius && Math.hypot(radius - u, radius - v) > radius + LEAST;
  const point = (u: number): CornerPoint => ({ u, v: before.depth(u) });
  const reach = Math.max(radius, after.most);
  const leave = firstOutside(reach, samplesFor(reach), (u) => crossed(point(u)) || cutOff(point(u)));
  if (leave === null) return { leave: 0, enter: before.depth(0), arc: false };
  const just = point(Math.max(0, leave - LEAST));
  return cutOff(just) && !crossed(just)
    ? alongArc(point(leave), after, radius)
    : { leave, enter: before.depth(leave), arc: false };
}
