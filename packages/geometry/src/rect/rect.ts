import { type Length, ticks } from '../length/length.js';

/** Axis across which something is measured or moved: x to the right, y down. */
export type Axis = 'x' | 'y';

/** Width and height, in ticks. */
export interface Size {
  readonly width: Length;
  readonly height: Length;
}

/** A rectangle in ticks, y down. Edges are half-open: it holds x <= px < x + width, so neighbours never overlap. */
export interface Rect extends Size {
  readonly x: Length;
  readonly y: Length;
}

/** A point; floating ticks are allowed, since points draw and never decide a cut. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A rectangle from four whole numbers of ticks. @throws RangeError when one is not. */
export function rect(x: number, y: number, width: number, height: number): Rect {
  return { x: ticks(x), y: ticks(y), width: ticks(width), height: ticks(height) };
}

/** True when the two rectangles share some area; touching edges do not count. */
export function overlaps(a: Rect, b: Rect): boolean {
  return a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;
}

/** True when `inner` lies wholly within `outer`; shared edges are within. */
export function contains(outer: Rect, inner: Rect): boolean {
  return (
    inner.x >= outer.x &&
    inner.y >= outer.y &&
    inner.x + inner.width <= outer.x + outer.width &&
    inner.y + inner.height <= outer.y + outer.height
  );
}

/** `size` after a quarter turn: width and height exchanged. */
export function quarterTurn(size: Size): Size {
  return { width: size.height, height: size.width };
}

/**
 * Cuts `box` in two, `at` ticks from its left ("x") or top ("y") edge; the blade eats `kerf` ticks. Both parts and the
 * kerf strip tile `box` exactly: no tick is lost or shared. The far part has no width when the blade eats all of it.
 * @throws RangeError when the near part would be empty or the far part less than that.
 */
export function splitRect(box: Rect, axis: Axis, at: Length, kerf: Length): readonly [Rect, Rect] {
  const side = axis === 'x' ? 'width' : 'height';
  const rest = box[side] - at - kerf;
  if (at <= 0 || rest < 0 || (rest === 0 && kerf === 0)) {
    throw new RangeError(`A cut at ${at} (kerf ${kerf}) leaves nothing of a part ${box[side]} long.`);
  }
  return [
    { ...box, [side]: at },
    { ...box, [axis]: ticks(box[axis] + at + kerf), [side]: ticks(rest) },
  ];
}
