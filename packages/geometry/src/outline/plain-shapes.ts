import type { Point, Size } from '../rect/rect.js';
import type { CornerRadii } from './corners.js';
import type { Outline, OutlineStep } from './outline.js';
import type { PunchProfile } from './punch-profile.js';

/** Everything that the edge of a piece depends on. Corners and punches are for rectangles only. */
export interface PieceShape extends Size {
  readonly shape: 'rectangle' | 'ellipse' | 'banner' | 'tag';
  readonly corners: CornerRadii;
  readonly punched: { readonly [edge in 'top' | 'right' | 'bottom' | 'left']?: PunchProfile | undefined };
}

/** The edge of a piece and the holes in it, from its own untilted top left corner. */
export interface PieceOutline {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
}

/** A straight step to (x, y). */
export function line(x: number, y: number): OutlineStep {
  return { kind: 'line', to: { x, y } };
}

/** A closed outline through `points`. */
export function polygon(points: readonly Point[]): Outline {
  const [start, ...others] = points;
  if (!start) throw new RangeError('A polygon needs a point.');
  return { start, steps: [...others, start].map(({ x, y }) => line(x, y)) };
}

/** An ellipse in the rectangle from (x, y), as four quarters from its top. */
export function ellipse(x: number, y: number, width: number, height: number): Outline {
  const [radiusX, radiusY] = [width / 2, height / 2];
  const quarter = (toX: number, toY: number): OutlineStep => ({
    kind: 'arc',
    to: { x: toX, y: toY },
    radiusX,
    radiusY,
    clockwise: true,
  });
  const [middleX, middleY] = [x + radiusX, y + radiusY];
  return {
    start: { x: middleX, y },
    steps: [quarter(x + width, middleY), quarter(middleX, y + height), quarter(x, middleY), quarter(middleX, y)],
  };
}

/** A plain rectangle from (x, y). */
export function rectangle(x: number, y: number, width: number, height: number): Outline {
  return polygon([
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ]);
}

/**
 * `piece` as it is before it is rounded, punched or cut to a banner or a tag: an ellipse, or a plain rectangle. For a
 * first look, and where the true edge would be too much to draw.
 */
export function plainOutline({ shape, width, height }: PieceShape): PieceOutline {
  return { outline: (shape === 'ellipse' ? ellipse : rectangle)(0, 0, width, height), holes: [] };
}
