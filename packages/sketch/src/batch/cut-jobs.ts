import { dealtJobs, type PaperJob } from './dealt-jobs.js';
import { mixPlan } from './mix-plan.js';
import type { BatchRecipe } from './recipe.js';

export type { PaperJob };

/** One cut job per paper that `cards` cards need; what a mix's papers give is what the mix plan deals (see `dealtJobs`). */
export function cutJobs(recipe: BatchRecipe, cards: number): readonly PaperJob[] {
  return dealtJobs(recipe, cards, mixPlan(recipe, cards).roles);
}
