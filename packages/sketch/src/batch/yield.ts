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

export interface YieldOptions {
  /** Plans one job; default the planner with its usual work. */
  readonly planOne?: PlanOne;
  /** A number of cards to begin with, such as the last answer. The answer does not depend on it. Default 1. */
  readonly guess?: number;
  /** Whether to look for a proof that one card more is impossible. Default true. */
  readonly prove?: boolean;
}

/** The largest number up to `most` that is possible, going out from `guess` in growing steps, then halving; 0 for none. */
function largestPossible(guess: number, most: number, possible: (n: number) => boolean): number {
  let made = 0;
  let failed = most + 1;
  let step = 1;
  if (possible(guess)) {
    made = guess;
    while (made + step <= most && possible(made + step)) {
      made += step;
      step *= 2;
    }
    failed = Math.min(made + step, most + 1);
  } else {
    failed = guess;
    while (failed - step >= 1 && !possible(failed - step)) {
      failed -= step;
      step *= 2;
    }
    made = Math.max(0, failed - step);
  }
  while (failed - made > 1) {
    const middle = Math.floor((made + failed) / 2);
    if (possible(middle)) made = middle;
    else failed = middle;
  }
  return made;
}

/**
 * The most cards that the sheets at hand give, and the plan for them; null when no paper that the cards need is limited.
 * `proven` when a lower bound for one card more needs more sheets than there are. What the planner only failed to find
 * within its work does not count as proven.
 */
export function batchYield(recipe: BatchRecipe, options: YieldOptions = {}): BatchYield | null {
  if (!isLimited(recipe)) return null;
  const { planOne, guess = 1, prove = true } = options;
  const plans = new Map<number, BatchPlan>();
  const planned = (cards: number): BatchPlan => {
    const known = plans.get(cards) ?? planBatch(recipe, cards, planOne);
    plans.set(cards, known);
    return known;
  };
  const start = Math.min(Math.max(1, guess), MOST_CARDS);
  const cards = largestPossible(start, MOST_CARDS, (n) => planned(n).complete);
  const runsOut = planned(cards + 1).papers.filter(({ plan }) => !plan.complete);
  const proven = prove && provenShort(recipe, cards + 1);
  return { cards, proven, runsOut: runsOut.map(({ paper }) => paper), plan: planned(cards) };
}

/** Sheets that `cards` cards need, regardless of the sheets at hand. */
export function sheetsFor(recipe: BatchRecipe, cards: number, planOne?: PlanOne): number {
  const unlimited: BatchRecipe = { ...recipe, papers: recipe.papers.map((paper) => ({ ...paper, sheets: null })) };
  return planBatch(unlimited, cards, planOne).sheets;
}
