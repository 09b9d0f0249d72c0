import type { CutJob } from '@trimwell/geometry';
import { withoutCentres } from './centre-papers.js';
import type { PaperJob } from './dealt-jobs.js';
import type { PlanOne } from './plan-job.js';
import type { BatchRecipe } from './recipe.js';

/** Most cards that a batch is ever counted up to. */
export const MOST_CARDS = 500;

/** The jobs of a number of cards. */
export type JobsOf = (recipe: BatchRecipe, cards: number) => readonly PaperJob[];

/** True when some paper that the cards need is limited, so that "as many as possible" has an answer. */
export function isLimited(recipe: BatchRecipe): boolean {
  const used = new Set(recipe.parts.flatMap((part) => part.papers));
  return recipe.papers.some((paper) => paper.sheets !== null && used.has(paper.id));
}

/** The job to ask for when only completeness counts: of unlimited sheets one copy of each blank tells it all. */
export function sample(job: CutJob): CutJob {
  if (job.papers.some((paper) => paper.sheets !== null)) return job;
  return { ...job, blanks: job.blanks.map((blank) => ({ ...blank, quantity: Math.min(1, blank.quantity) })) };
}

/** True when `planOne` makes all of `job`; centres are tried where it cannot be done without them. */
export function makesAll(job: CutJob, planOne: PlanOne): boolean {
  const plain = withoutCentres(job);
  return planOne(sample(plain)).complete || (plain !== job && planOne(job).complete);
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

/** True when `planOne` makes all blanks of `cards` cards; the first paper that fails ends the asking. */
export function makesCards(recipe: BatchRecipe, cards: number, planOne: PlanOne, jobsOf: JobsOf): boolean {
  return jobsOf(recipe, cards).every(({ job }) => makesAll(job, planOne));
}

export interface MostCardsOptions {
  readonly planOne: PlanOne;
  /** The jobs of a number of cards: `cutJobs`, or without mixes `dealtJobs` of no roles. */
  readonly jobsOf: JobsOf;
  /** A number of cards to begin with. The answer does not depend on it. */
  readonly guess: number;
  /** The largest answer wanted. */
  readonly upTo: number;
}

/** The most cards, up to `upTo`, of which `planOne` makes all blanks; 0 when it does not make a single one. */
export function mostCards(recipe: BatchRecipe, { planOne, jobsOf, guess, upTo }: MostCardsOptions): number {
  const start = Math.min(Math.max(1, guess), upTo);
  let most = largestPossible(start, upTo, (n) => makesCards(recipe, n, planOne, jobsOf));
  // Dealt anew, a mix can suit a few cards more although it did not suit one more.
  const turns = Math.max(...recipe.parts.map(({ papers }) => papers.length), 1);
  for (let more = 1; more < turns && most + more <= upTo; more += 1) {
    if (!makesCards(recipe, most + more, planOne, jobsOf)) continue;
    most += more;
    more = 0;
  }
  return most;
}
