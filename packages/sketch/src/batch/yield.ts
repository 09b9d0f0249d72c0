import { leastSheets } from '@trimwell/geometry';
import { type BatchPlan, type PlanOne, planBatch } from './batch-plan.js';
import { cutJobs } from './cut-jobs.js';
import type { BatchRecipe } from './recipe.js';

/** Most cards that a batch is ever counted up to. */
export const MOST_CARDS = 500;

/** The most cards that the sheets at hand give. */
export interface BatchYield {
  readonly cards: number;
  /** True when it is proven that no plan makes one card more. */
  readonly proven: boolean;
  /** The papers of which there is not enough for one card more, in the order of the papers. */
  readonly runsOut: readonly string[];
  readonly plan: BatchPlan;
}

/** True when some paper that the cards need is limited, so that "as many as possible" has an answer. */
export function isLimited(recipe: BatchRecipe): boolean {
  const used = new Set(recipe.parts.flatMap((part) => part.papers));
  return recipe.papers.some((paper) => paper.sheets !== null && used.has(paper.id));
}

/** True when the sheets at hand cannot give `cards` cards, whatever the plan: a lower bound needs more than there are. */
function provenShort(recipe: BatchRecipe, cards: number): boolean {
  return cutJobs(recipe, cards).some(({ job }) => leastSheets(job).value === Number.POSITIVE_INFINITY);
}

/**
 * The most cards that the sheets at hand give, found by doubling and halving; null when no paper that the cards need is
 * limited. `proven` when a lower bound for one card more needs more sheets than there are. What the planner only failed
 * to find within its work does not count as proven.
 */
export function batchYield(recipe: BatchRecipe, planOne?: PlanOne): BatchYield | null {
  if (!isLimited(recipe)) return null;
  const plans = new Map<number, BatchPlan>();
  const planned = (cards: number): BatchPlan => {
    const known = plans.get(cards) ?? planBatch(recipe, cards, planOne);
    plans.set(cards, known);
    return known;
  };
  const possible = (cards: number): boolean => !provenShort(recipe, cards) && planned(cards).complete;
  let made = 0;
  let failed = 1;
  while (failed <= MOST_CARDS && possible(failed)) {
    made = failed;
    failed *= 2;
  }
  failed = Math.min(failed, MOST_CARDS + 1);
  while (failed - made > 1) {
    const middle = Math.floor((made + failed) / 2);
    if (possible(middle)) made = middle;
    else failed = middle;
  }
  const runsOut = planned(made + 1).papers.filter(({ plan }) => !plan.complete);
  const proven = provenShort(recipe, made + 1);
  return { cards: made, proven, runsOut: runsOut.map(({ paper }) => paper), plan: planned(made) };
}

/** Sheets that `cards` cards need, regardless of the sheets at hand. */
export function sheetsFor(recipe: BatchRecipe, cards: number, planOne?: PlanOne): number {
  const unlimited: BatchRecipe = { ...recipe, papers: recipe.papers.map((paper) => ({ ...paper, sheets: null })) };
  return planBatch(unlimited, cards, planOne).sheets;
}
