import { type Point, TICKS_PER_INCH } from '@trimwell/geometry';
import type { GroupItem } from '../../drawing/drawing.js';

/** An affine map as in ISO 32000-2, 8.3.3: x' = a x + c y + e, y' = b x + d y + f. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** Points in a tick. */
export const POINTS_PER_TICK = 72 / TICKS_PER_INCH;

/** First `inner`, then `outer`. */
export function combine(outer: Matrix, inner: Matrix): Matrix {
  const [a, b, c, d, e, f] = outer;
  const [g, h, i, j, k, l] = inner;
  return [a * g + c * h, b * g + d * h, a * i + c * j, b * i + d * j, a * k + c * l + e, b * k + d * l + f];
}

/** Where `matrix` puts a point. */
export function place([a, b, c, d, e, f]: Matrix, { x, y }: Point): Point {
  return { x: a * x + c * y + e, y: b * x + d * y + f };
}

/** Moves by `x`, `y`. */
export function shift(x: number, y: number): Matrix {
  return [1, 0, 0, 1, x, y];
}

/** Stretches by `x` and `y`. */
export function stretch(x: number, y: number): Matrix {
  return [x, 0, 0, y, 0, 0];
}

/** Turns by degrees, clockwise where y points down. */
export function turn(degrees: number): Matrix {
  const angle = (degrees * Math.PI) / 180;
  const [cos, sin] = degrees % 90 === 0 ? quarter(degrees) : [Math.cos(angle), Math.sin(angle)];
  return [cos, sin, -sin, cos, 0, 0];
}

/** Quarter turns without the noise of sines, so that what is upright stays upright. */
function quarter(degrees: number): readonly [cos: number, sin: number] {
  const quarters = (((degrees / 90) % 4) + 4) % 4;
  return quarters === 0 ? [1, 0] : quarters === 1 ? [0, 1] : quarters === 2 ? [-1, 0] : [0, -1];
}

/** From ticks with y down to points with y up, on a page of that height in ticks. */
export function pageMatrix(height: number): Matrix {
  return [POINTS_PER_TICK, 0, 0, -POINTS_PER_TICK, 0, height * POINTS_PER_TICK];
}

/** From a group's own coordinates to those that it stands in. */
export function groupMatrix({ origin, move, turn: degrees }: Pick<GroupItem, 'origin' | 'move' | 'turn'>): Matrix {
  return combine(combine(shift(move.x, move.y), turn(degrees)), shift(-origin.x, -origin.y));
}
