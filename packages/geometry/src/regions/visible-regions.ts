import type { PlacedPiece } from '../stack/placed-piece.js';
import { NOTHING, type Region, regionOf, share, unite, without } from './region.js';

/** A piece of a stack, and whether something below it is hidden by it. */
export interface StackedPiece {
  readonly placed: PlacedPiece;
  /** False for vellum, which is seen through. */
  readonly opaque: boolean;
}

/** What shows of a piece, and what is hidden by those above it. Together they are all of it. */
export interface Showing {
  readonly whole: Region;
  readonly visible: Region;
  readonly hidden: Region;
}

/**
 * What shows and what is hidden of each piece of a face, in the order of `stack`, lowest first. Only opaque pieces hide. Pieces
 * are not cut off at the edge of the card. Cost: for each piece, from the top down, one union and two cuts with all above it.
 */
export function visibleRegions(stack: readonly StackedPiece[]): readonly Showing[] {
  const found: Showing[] = [];
  let covers = NOTHING;
  for (const { placed, opaque } of [...stack].reverse()) {
    const whole = regionOf(placed);
    found.unshift({ whole, visible: without(whole, covers), hidden: share(whole, covers) });
    if (opaque) covers = unite([covers, whole]);
  }
  return found;
}
