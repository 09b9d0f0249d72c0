import { byPair } from './by-pair.js';
import { type Lap, lapAlong, sidesOf, widthAlong } from './lap-along.js';
import { meetOnLines } from './meet.js';
import { boxesMeet, placedBounds } from './placed-bounds.js';
import type { PlacedPiece } from './placed-piece.js';

/** Laps that are no deeper than this, in ticks, only touch: places are whole ticks, and what is tilted lies beside them. */
function touching(one: PlacedPiece, other: PlacedPiece): number {
  return one.tilt % 90 === 0 && other.tilt % 90 === 0 ? 1 / 2 : 1;
}

/** The least lap of the convex hulls of two pieces. */
const hullLap = byPair((one, other): Lap | null => {
  const least = touching(one, other);
  let best: Lap | null = null;
  for (const direction of [...sidesOf(one), ...sidesOf(other)]) {
    const lap = lapAlong(one, other, direction);
    if (lap.depth <= least) return null;
    const held = Math.min(widthAlong(one, lap.along), widthAlong(other, lap.along)) - least;
    if (lap.depth < held && (!best || lap.depth < best.depth)) best = lap;
  }
  return best;
});

/**
 * How little two pieces lap over each other along one of their sides, where that is less than `most` ticks. Null when they are apart or
 * only touch, and when along every side one holds the other. Depths are those of their convex hulls: a punched edge counts as filled
 * where it does meet the other.
 */
export function leastLap(one: PlacedPiece, other: PlacedPiece, most = Infinity): Lap | null {
  if (!boxesMeet(placedBounds(one), placedBounds(other))) return null;
  const lap = hullLap(one, other);
  // Outlines are dear to look at: deeper laps, which are most, are told by their depth.
  return lap && lap.depth < most && meetOnLines(one, other) ? lap : null;
}
