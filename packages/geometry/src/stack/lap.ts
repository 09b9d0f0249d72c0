import type { Point } from '../rect/rect.js';
import { crossingsOf, meetOnLine } from './lines.js';
import { boxesMeet, placedBounds } from './placed-bounds.js';
import { boundaryIn, type PlacedPiece } from './placed-piece.js';
import { supportOf } from './support.js';

/** How two pieces lap over each other along a direction. */
export interface Lap {
  /** The unit vector, from the middle of the first piece towards that of the second. */
  readonly along: Point;
  /** How far they lap over each other along it, in floating ticks; below 0 the width of the gap between them. */
  readonly depth: number;
}

/** The middle of the second piece from that of the first. */
function between(one: PlacedPiece, other: PlacedPiece): Point {
  return {
    x: other.x + other.shape.width / 2 - one.x - one.shape.width / 2,
    y: other.y + other.shape.height / 2 - one.y - one.shape.height / 2,
  };
}

/** The directions of the sides of a piece. */
function sides({ tilt }: PlacedPiece): readonly Point[] {
  // A piece that lies straight has exact sides.
  if (tilt % 90 === 0)
    return [
      { x: 1, y: 0 },
      { x: 0, y: 1 },
    ];
  const angle = (tilt * Math.PI) / 180;
  return [
    { x: Math.cos(angle), y: Math.sin(angle) },
    { x: -Math.sin(angle), y: Math.cos(angle) },
  ];
}

/**
 * How two pieces lap along `direction`, turned towards the second one. Their convex hulls are apart where the depth is not
 * above 0 (a separating line).
 */
export function lapAlong(one: PlacedPiece, other: PlacedPiece, direction: Point): Lap {
  const offset = between(one, other);
  const way = direction.x * offset.x + direction.y * offset.y < 0 ? -1 : 1;
  // Adding 0 makes a 0 of a -0.
  const along = { x: way * direction.x + 0, y: way * direction.y + 0 };
  const reach = supportOf(one)(along.x, along.y) + supportOf(other)(-along.x, -along.y);
  return { along, depth: reach - along.x * offset.x - along.y * offset.y };
}

/** Directions along which two pieces are looked at: their sides, and the line through their middles. */
export function directionsOf(one: PlacedPiece, other: PlacedPiece): readonly Point[] {
  const { x, y } = between(one, other);
  const apart = Math.hypot(x, y);
  const through = apart > 0 ? [{ x: x / apart, y: y / apart }] : [];
  return [...sides(one), ...sides(other), ...through];
}

/** Laps that are no deeper than this, in ticks, only touch: places are whole ticks, and what is tilted lies beside them. */
function touching(one: PlacedPiece, other: PlacedPiece): number {
  return one.tilt % 90 === 0 && other.tilt % 90 === 0 ? 1 / 2 : 1;
}

/** Lines across a piece on which it is looked whether another one lies over it. */
const LINES = 256;

/** How wide `piece` is along a direction, given as a unit vector, in floating ticks. */
export function widthAlong(piece: PlacedPiece, { x, y }: Point): number {
  const support = supportOf(piece);
  return support(x, y) + support(-x, -y);
}

/** True when the outlines themselves, with round corners and punched edges, share some of the lines across `one`. */
function outlinesMeet(one: PlacedPiece, other: PlacedPiece): boolean {
  const lines = Array.from({ length: LINES }, (_, line) => (one.shape.height * (line + 0.5)) / LINES);
  const own = crossingsOf(boundaryIn(one, one), lines);
  const over = crossingsOf(boundaryIn(one, other), lines);
  return own.some((row, line) => meetOnLine(row, over[line] ?? []));
}

/** True when two pieces lie over each other, as far as lines across the first one tell; false where they are apart or only touch. */
export function meetOnLines(one: PlacedPiece, other: PlacedPiece): boolean {
  if (!boxesMeet(placedBounds(one), placedBounds(other))) return false;
  const least = touching(one, other);
  const apart = [...sides(one), ...sides(other)].some((side) => lapAlong(one, other, side).depth <= least);
  return !apart && outlinesMeet(one, other);
}

/**
 * How little two pieces lap over each other along one of their sides, where that is less than `most` ticks. Null when they are apart or
 * only touch, and when along every side one holds the other. Depths are those of their convex hulls: a punched edge counts as filled
 * where it does meet the other.
 */
export function leastLap(one: PlacedPiece, other: PlacedPiece, most = Infinity): Lap | null {
  if (!boxesMeet(placedBounds(one), placedBounds(other))) return null;
  const least = touching(one, other);
  let best: Lap | null = null;
  for (const direction of [...sides(one), ...sides(other)]) {
    const lap = lapAlong(one, other, direction);
    if (lap.depth <= least) return null;
    const held = Math.min(widthAlong(one, lap.along), widthAlong(other, lap.along)) - least;
    if (lap.depth < held && (!best || lap.depth < best.depth)) best = lap;
  }
  // Outlines are dear to look at: deeper laps, which are most, are told by their depth.
  return best && best.depth < most && outlinesMeet(one, other) ? best : null;
}
