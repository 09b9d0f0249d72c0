import { type CutJob, leastSheets, planCuts, runToEnd } from '@trimwell/geometry';
import { type BatchPlan, type PlanOne, planBatch } from './batch-plan.js';
import { withoutCentres } from './centre-papers.js';
import { cutJobs } from './cut-jobs.js';
import { isLimited, MOST_CARDS, makesAll, mostCards, sample } from './most-cards.js';
import { planForSheets } from './plan-for-sheets.js';
import type { BatchRecipe } from './recipe.js';
import { rememberPlans } from './remember-plans.js';

/** What one sheet more of `paper`, and of no other, would give. */
export interface OneMore {
  readonly paper: string;
  /** The most cards then; never fewer than without the sheet. */
  readonly cards: number;
  /** True when it is proven that no plan makes one card more than that. */
  readonly proven: boolean;
}

/** The most cards that the sheets at hand give. */
export interface BatchYield {
  readonly cards: number;
  /** True when it is proven that no plan makes one card more. */
  readonly proven: boolean;
  /** The papers of which there is not enough for one card more, in the order of the papers. */
  readonly runsOut: readonly string[];
  /** For each limited paper that the cards need, in the order of the papers; empty unless asked for. */
  readonly oneMore: readonly OneMore[];
  readonly plan: BatchPlan;
}

function shortOfSheets(job: CutJob): boolean {
  const plain = withoutCentres(job);
  const short = (each: CutJob): boolean => leastSheets(each).value === Number.POSITIVE_INFINITY;
  return short(sample(plain)) && (plain === job || short(job));
}

/** Everything that `cards` cards need as one job, in which a role of a mix may come from any of its papers. */
function freeJob({ trimmer, papers, parts }: BatchRecipe, cards: number): CutJob {
  return {
    trimmer,
    papers,
    blanks: parts.map(({ blank, width, height, perCard, papers: from }) => ({
      id: blank,
      width,
      height,
      quantity: cards * perCard,
      papers: from,
      turn: true,
    })),
  };
}

/**
 * True when it is proven that the sheets at hand cannot give `cards` cards, whatever the plan and however the mixes are
 * dealt: a lower bound needs more than there are. With mixes and hidden centres nothing is proven.
 */
export function provenShort(recipe: BatchRecipe, cards: number): boolean {
  const mixed = recipe.parts.some(({ papers }) => papers.length > 1);
  if (!mixed) return cutJobs(recipe, cards).some(({ job }) => shortOfSheets(job));
  return recipe.centres.length === 0 && leastSheets(freeJob(recipe, cards)).value === Number.POSITIVE_INFINITY;
}

export interface YieldOptions {
  /** Plans one job; default the planner with its usual work. */
  readonly planOne?: PlanOne;
  /** Plans one job while the number of cards is looked for; default `planOne`, or `planForSheets()` where that is not given. */
  readonly countWith?: PlanOne;
  /** A number of cards to begin with, such as the last answer. The answer does not depend on it. Default 1. */
  readonly guess?: number;
  /** Whether to look for a proof that one card more is impossible. Default true. */
  readonly prove?: boolean;
  /** Whether to find what one more sheet of each limited paper would give. Default false. */
  readonly oneMore?: boolean;
}

/** `recipe` with one sheet more of `paper`. */
function withOneMore(recipe: BatchRecipe, paper: string): BatchRecipe {
  const more = (sheets: number | null): number | null => (sheets === null ? null : sheets + 1);
  return {
    ...recipe,
    papers: recipe.papers.map((each) => (each.id === paper ? { ...each, sheets: more(each.sheets) } : each)),
  };
}

/**
 * What one more sheet of each limited paper that the cards need would give, when `cards` can be had without it; control
 * comes back before each count and each proof.
 */
export function* oneMoreSheet(
  recipe: BatchRecipe,
  cards: number,
  { planOne, prove }: { readonly planOne: PlanOne; readonly prove: boolean },
): Generator<void, readonly OneMore[]> {
  const used = new Set(recipe.parts.flatMap((part) => part.papers));
  const oneMore: OneMore[] = [];
  for (const { id, sheets } of recipe.papers) {
    if (sheets === null || !used.has(id)) continue;
    yield;
    const richer = withOneMore(recipe, id);
    // A plan without the sheet is a plan with it as well, even where the planner missed it.
    const most = Math.max(cards, mostCards(richer, { planOne, jobsOf: cutJobs, guess: cards + 1, upTo: MOST_CARDS }));
    yield;
    oneMore.push({ paper: id, cards: most, proven: prove && provenShort(richer, most + 1) });
  }
  return oneMore;
}

/**
 * The most cards that the sheets at hand give, and the plan for them; null when no paper that the cards need is limited.
 * `proven` when a lower bound for one card more needs more sheets than there are. What the planner only failed to find
 * within its work does not count as proven.
 */
export function batchYield(recipe: BatchRecipe, options: YieldOptions = {}): BatchYield | null {
  if (!isLimited(recipe)) return null;
  const { guess = 1, prove = true } = options;
  const planOne = options.planOne ?? planCuts;
  const countWith = rememberPlans(options.countWith ?? options.planOne ?? planForSheets());
  const cards = mostCards(recipe, { planOne: countWith, jobsOf: cutJobs, guess, upTo: MOST_CARDS });
  const short = cutJobs(recipe, cards + 1).filter(({ job }) => !makesAll(job, countWith));
  const more = options.oneMore ? oneMoreSheet(recipe, cards, { planOne: countWith, prove }) : null;
  const plan = planBatch(recipe, cards, planOne);
  return {
    cards,
    proven: prove && provenShort(recipe, cards + 1),
    runsOut: short.map(({ paper }) => paper),
    oneMore: more ? runToEnd(more) : [],
    // Should the planner for the plan itself miss what counting found, what was found stands.
    plan: plan.complete ? plan : planBatch(recipe, cards, countWith),
  };
}

/** Sheets that `cards` cards need, regardless of the sheets at hand. */
export function sheetsFor(recipe: BatchRecipe, cards: number, planOne?: PlanOne): number {
  const unlimited: BatchRecipe = { ...recipe, papers: recipe.papers.map((paper) => ({ ...paper, sheets: null })) };
  return planBatch(unlimited, cards, planOne).sheets;
}
