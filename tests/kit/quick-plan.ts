import { planCuts } from '@trimwell/geometry';
import { type BatchPlan, batchRecipe, planBatch, type Sketch } from '@trimwell/sketch';

/** A plan of a sketch's own batch for tests that need some plan and no good one, so that little work is enough. */
export function quickPlan(sketch: Sketch, cards = Number(sketch.batch.cards)): BatchPlan {
  return planBatch(batchRecipe(sketch), cards, (job) => planCuts(job, { work: 1_000 }));
}
