import { AS_MANY_AS_POSSIBLE, type Sketch } from '../model/sketch.js';
import { type PaperPlan, planBatch } from './batch-plan.js';
import { realSheets } from './centre-papers.js';
import { cutJobs } from './cut-jobs.js';
import { isLimited, MOST_CARDS, makesAll, makesCards, mostCards } from './most-cards.js';
import { type PlanOne, planJob } from './plan-job.js';
import type { BatchRecipe } from './recipe.js';
import type { PaperSheets } from './yield-curve.js';

/** The sketch as it is, in figures. */
export interface Baseline {
  readonly cards: number;
  /** More cards than this are not wanted; null when the wanted number is made, so that only sheets can be saved. */
  readonly upTo: number | null;
  /** Whether fewer sheets for these cards are worth anything: not while more cards are wanted than they are. */
  readonly saving: boolean;
  readonly plans: ReadonlyMap<string, PaperPlan>;
  /** The jobs that fail at one card more, as text. */
  readonly short: ReadonlySet<string>;
  readonly planOne: PlanOne;
}

/** `recipe` as it is, at `wanted` cards or the most below; null when there is no end to the cards that it gives. */
export function baselineOf(recipe: BatchRecipe, wanted: Sketch['batch']['cards'], planOne: PlanOne): Baseline | null {
  const plans = (cards: number): Baseline['plans'] =>
    new Map(planBatch(recipe, cards, planOne).papers.map((plan) => [plan.paper, plan]));
  if (typeof wanted === 'number' && makesCards(recipe, wanted, planOne, cutJobs))
    return { cards: wanted, upTo: null, saving: true, plans: plans(wanted), short: new Set(), planOne };
  const upTo = typeof wanted === 'number' ? wanted : isLimited(recipe) ? MOST_CARDS : null;
  if (upTo === null) return null;
  const cards = mostCards(recipe, { planOne, jobsOf: cutJobs, guess: 1, upTo });
  const short = cutJobs(recipe, cards + 1).filter(({ job }) => !makesAll(job, planOne));
  return {
    cards,
    upTo,
    saving: wanted === AS_MANY_AS_POSSIBLE,
    plans: plans(cards),
    short: new Set(short.map(({ job }) => JSON.stringify(job))),
    planOne,
  };
}

/** What a change brings: cards or sheets, never both. */
export interface Gain {
  /** Cards more from the sheets at hand. */
  readonly adds: number;
  /** Sheets fewer at the same cards, by paper; empty where cards are added. */
  readonly saves: readonly PaperSheets[];
}

/** The size of a gain, in cards or sheets. */
export const worth = ({ adds, saves }: Gain): number => saves.reduce((total, { sheets }) => total + sheets, adds);

/** The paper jobs of `recipe` that differ from those in `base`, with the sheets they needed there. */
function changedJobs(recipe: BatchRecipe, base: Baseline) {
  return cutJobs(recipe, base.cards).flatMap(({ paper, job }) => {
    const before = base.plans.get(paper);
    if (!before || JSON.stringify(before.job) === JSON.stringify(job)) return [];
    return [{ paper, job, sheets: realSheets(before.plan) }];
  });
}

/** The most sheets that any plan of `recipe` could save, as far as the planner proves. */
function mostSaved(recipe: BatchRecipe, base: Baseline): number {
  if (!base.saving) return 0;
  const saved = changedJobs(recipe, base).map(({ job, sheets }) => {
    const { complete, proof } = planJob(job, base.planOne);
    return complete ? Math.max(0, sheets - proof.lowerBound) : 0;
  });
  return saved.reduce((total, sheets) => total + sheets, 0);
}

/** True when `recipe` gives a card more than `base`; papers that fail already and are cut as before are not planned. */
function adds(recipe: BatchRecipe, base: Baseline): boolean {
  const { upTo, cards, short, planOne } = base;
  if (upTo === null || cards >= upTo) return false;
  const fails = cutJobs(recipe, cards + 1).some(({ job }) => short.has(JSON.stringify(job)));
  return !fails && makesCards(recipe, cards + 1, planOne, cutJobs);
}

function addedCards(recipe: BatchRecipe, base: Baseline): number {
  const { upTo, cards, planOne } = base;
  if (upTo === null || !adds(recipe, base)) return 0;
  return mostCards(recipe, { planOne, jobsOf: cutJobs, guess: cards + 1, upTo }) - cards;
}

/** Sheets saved by real plans; none where any paper would need more than before, or something stays unmade. */
function savedSheets(recipe: BatchRecipe, base: Baseline): readonly PaperSheets[] {
  const saves: PaperSheets[] = [];
  for (const { paper, job, sheets } of changedJobs(recipe, base)) {
    const plan = planJob(job, base.planOne);
    const saved = sheets - realSheets(plan);
    if (!plan.complete || saved < 0) return [];
    if (saved > 0) saves.push({ paper, sheets: saved });
  }
  return saves;
}

/** The gain of `recipe` over `base` when it is above `least`; else null. */
export function gainOf(recipe: BatchRecipe, base: Baseline, least: number): Gain | null {
  const added = addedCards(recipe, base);
  const gain: Gain =
    added > 0 || mostSaved(recipe, base) <= least
      ? { adds: added, saves: [] }
      : { adds: 0, saves: savedSheets(recipe, base) };
  return worth(gain) > least ? gain : null;
}

/**
 * True when nothing is to be hoped for from `recipe`, which has a piece at its smallest, nor from any size between: no
 * card more is found, and no sheet can be saved by what is proven.
 */
export function hopeless(recipe: BatchRecipe, base: Baseline): boolean {
  return !adds(recipe, base) && mostSaved(recipe, base) === 0;
}
