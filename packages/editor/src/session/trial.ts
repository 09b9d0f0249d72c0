import { ticks } from '@trimwell/geometry';
import type { BatchPlan, Edit, NearMiss, NearMisses, Sketch } from '@trimwell/sketch';

/** Near misses, the sketch that they were found in, and the plan that they are held against. */
export interface Offer {
  readonly found: NearMisses;
  readonly sketch: Sketch;
  readonly batch: BatchPlan | null;
}

/** A near miss that is tried on, and the sketch before and after it. */
export interface Trial {
  readonly miss: NearMiss;
  readonly offer: Offer;
  readonly before: Sketch;
  readonly after: Sketch;
}

/**
 * The edit of `miss`, which was found in `from`, where its piece lies in `now`: moving a piece changes no plan, so near
 * misses outlive it.
 */
export function tryOnEdit({ edit, piece }: NearMiss, from: Sketch, now: Sketch): Edit {
  const found = from.pieces.find(({ id }) => id === piece);
  const here = now.pieces.find(({ id }) => id === piece);
  if (!found || !here) return edit;
  return { ...edit, x: ticks(here.x + edit.x - found.x), y: ticks(here.y + edit.y - found.y) };
}
