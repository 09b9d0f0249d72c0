import type { Point } from '../rect/rect.js';
import type { PlacedPiece } from './placed-piece.js';
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
export function sidesOf({ tilt }: PlacedPiece): readonly Point[] {
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

/** The direction from the middle of one piece to that of another; null where they are one. */
export function throughMiddles(one: PlacedPiece, other: PlacedPiece): Point | null {
  const { x, y } = between(one, other);
  const apart = Math.hypot(x, y);
  return apart > 0 ? { x: x / apart, y: y / apart } : null;
}

/** How wide `piece` is along a direction, given as a unit vector, in floating ticks. */
export function widthAlong(piece: PlacedPiece, { x, y }: Point): number {
  const support = supportOf(piece);
  return support(x, y) + support(-x, -y);
}
