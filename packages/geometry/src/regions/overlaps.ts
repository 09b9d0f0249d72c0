import { isPlainRectangle } from '../outline/punched-shape.js';
import { boxesMeet, type PlacedBounds, placedBounds } from '../stack/placed-bounds.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { type Region, regionArea, regionOf, regionPerimeter, share } from './region.js';

/** Two pieces that lie over each other, by their places in the stack, and where. */
export interface Overlap {
  readonly lower: number;
  readonly upper: number;
  readonly region: Region;
  /** In square ticks. */
  readonly area: number;
}

/**
 * Mean depth up to which two pieces only touch, in ticks. Places are whole ticks, so that edges which are tilted alike and meet
 * may lie up to a tick over each other.
 */
const TOUCHING = 1;

/** An upright rectangle with square corners and plain edges: its box is all of it. */
function isBox({ shape, tilt }: PlacedPiece): boolean {
  return tilt % 180 === 0 && isPlainRectangle(shape);
}

/** Where two pieces lie over each other; null where they are apart or only touch. Exact for upright plain rectangles. */
export function overlapOf(one: PlacedPiece, other: PlacedPiece): Pick<Overlap, 'region' | 'area'> | null {
  const region = share(regionOf(one), regionOf(other));
  const area = regionArea(region);
  if (isBox(one) && isBox(other)) return area > 0 ? { region, area } : null;
  return area > (TOUCHING * regionPerimeter(region)) / 2 ? { region, area } : null;
}

/** All overlaps of `stack`, lowest first; by the lower piece, then by the upper. */
export function overlapsOf(stack: readonly PlacedPiece[]): readonly Overlap[] {
  const boxes = stack.map(placedBounds);
  return stack.flatMap((piece, lower) =>
    stack.slice(lower + 1).flatMap((other, after): readonly Overlap[] => {
      const upper = lower + 1 + after;
      if (!boxesMeet(boxes[lower] as PlacedBounds, boxes[upper] as PlacedBounds)) return [];
      const found = overlapOf(piece, other);
      return found ? [{ lower, upper, ...found }] : [];
    }),
  );
}
