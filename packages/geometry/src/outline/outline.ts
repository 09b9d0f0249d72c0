import type { Point } from '../rect/rect.js';

/**
 * One step of an outline, from the current point to `to`; coordinates in floating ticks, y down.
 * An arc is circular or elliptic with axes along x and y; `clockwise` as seen on the screen; never more than a half turn.
 */
export type OutlineStep =
  | { readonly kind: 'line'; readonly to: Point }
  | {
      readonly kind: 'arc';
      readonly to: Point;
      readonly radiusX: number;
      readonly radiusY: number;
      readonly clockwise: boolean;
    }
  | { readonly kind: 'curve'; readonly control1: Point; readonly control2: Point; readonly to: Point };

/** A closed outline, walked clockwise on the screen from `start`; the last step ends at `start`. */
export interface Outline {
  readonly start: Point;
  readonly steps: readonly OutlineStep[];
}
