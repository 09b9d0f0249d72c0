import { type Axis, type Length, type Rect, ticks } from '@trimwell/geometry';

/** A rectangle to snap to or to move; of a tilted one only the centre is a line that a ruler could lie along. */
export interface SnapRect extends Rect {
  readonly tilted?: boolean;
  /** What it is called, for those who hear what something lines up with. The card has no name. */
  readonly name?: string;
}

/**
 * What to draw for one snap. `edge` and `centre` are lines at `at` on `axis`, drawn from `from` to `to` on the other
 * axis. A `reveal` is a dimension along `axis` from `from` to `to`, drawn at `at` on the other axis, and `length` is its
 * figure; a `gap` is drawn alike, between two pieces of a row. Coming to a mark of the ruler draws nothing. All in ticks
 * of the card face; a centre may lie on half a tick.
 */
export interface SnapMark {
  readonly axis: Axis;
  readonly at: number;
  readonly from: number;
  readonly to: number;
  readonly kind: 'edge' | 'centre' | 'reveal' | 'gap';
  readonly length?: Length;
  /** The piece that it is about; left out for the card. */
  readonly piece?: string;
}

export const SIZE = { x: 'width', y: 'height' } as const;
export const ACROSS = { x: 'y', y: 'x' } as const;

/** Where a rectangle ends along `axis`. */
export function end(rect: Rect, axis: Axis): number {
  return rect[axis] + rect[SIZE[axis]];
}

/** The middle of a rectangle along `axis`. */
export function middle(rect: Rect, axis: Axis): number {
  return rect[axis] + rect[SIZE[axis]] / 2;
}

function about({ name }: SnapRect): { readonly piece?: string } {
  return name === undefined ? {} : { piece: name };
}

/** A line across both rectangles at `at`. */
export function lineMark(axis: Axis, kind: 'edge' | 'centre', at: number, placed: Rect, other: SnapRect): SnapMark {
  const across = ACROSS[axis];
  const from = Math.min(placed[across], other[across]);
  const to = Math.max(end(placed, across), end(other, across));
  return { axis, at, from, to, kind, ...about(other) };
}

function dimension(kind: 'reveal' | 'gap', axis: Axis, from: number, to: number, at: number): SnapMark {
  return { axis, at, from, to, kind, length: ticks(Math.abs(to - from)) };
}

/** The gaps between `inner` and `outer` along `axis`. */
export function gaps(inner: Rect, outer: Rect, axis: Axis): readonly [number, number] {
  return [inner[axis] - outer[axis], end(outer, axis) - end(inner, axis)];
}

/** Both reveals along `axis` of `placed` within `outer`, to be drawn when one of them is why it snapped. */
export function revealPair(placed: Rect, outer: SnapRect, axis: Axis): readonly [SnapMark, SnapMark] {
  const at = middle(placed, ACROSS[axis]);
  return [
    { ...dimension('reveal', axis, outer[axis], placed[axis], at), ...about(outer) },
    { ...dimension('reveal', axis, end(placed, axis), end(outer, axis), at), ...about(outer) },
  ];
}

/** The gap along `axis` from the end of `before` to the start of `after`, drawn in the middle of what they share. */
export function gapMark(axis: Axis, before: SnapRect, after: SnapRect): SnapMark {
  const across = ACROSS[axis];
  const from = Math.max(before[across], after[across]);
  const to = Math.min(end(before, across), end(after, across));
  return { ...dimension('gap', axis, end(before, axis), after[axis], (from + to) / 2), ...about(before) };
}
