import type { Point } from '../rect/rect.js';

/** Twice the area of a triangle, above 0 when its corners run counterclockwise. */
function turn(a: Point, b: Point, c: Point): number {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/** One side of the hull of points that are in order. */
function chain(points: readonly Point[]): readonly Point[] {
  const found: Point[] = [];
  for (const point of points) {
    while (found.length > 1 && turn(found.at(-2) as Point, found.at(-1) as Point, point) <= 0) found.pop();
    found.push(point);
  }
  return found;
}

/** The corners of the smallest convex shape around `points`, the first one again at the end (monotone chain, A. M. Andrew 1979). */
export function convexHull(points: readonly Point[]): readonly Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  return [...chain(sorted), ...chain([...sorted].reverse()).slice(1)];
}
