import { type Length, ticks } from '@trimwell/geometry';
import { caliperOf } from '../check/caliper-of.js';
import type { Sketch } from '../model/sketch.js';
import type { FaceStack } from './face-stack.js';

/** How thick a closed card is at its thickest spot, and what that is made of. */
export interface CardThickness {
  readonly height: Length;
  readonly base: Length;
  readonly front: Length;
  readonly inside: Length;
  /** True when some caliper in it is an estimate. */
  readonly estimated: boolean;
}

/**
 * The closed card: its leaves (two where it is folded), the highest spot inside and the highest in front. The front leaf stays flat
 * and rests on what is highest inside, as every piece does (see `stackHeights`), so the two add up wherever they are.
 */
export function cardThickness(sketch: Sketch, front: FaceStack, inside: FaceStack): CardThickness {
  const base = caliperOf(sketch, sketch.card.base);
  const leaves = sketch.card.fold === 'none' ? 1 : 2;
  const [above, within] = [front.heights.height, inside.heights.height];
  return {
    height: ticks(leaves * base.caliper + above + within),
    base: ticks(leaves * base.caliper),
    front: above,
    inside: within,
    estimated: base.estimated || front.estimated || inside.estimated,
  };
}
