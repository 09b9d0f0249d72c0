import type { CutJob } from '@trimwell/geometry';
import { isCentre, realSheets } from './centre-papers.js';
import { cutJobs } from './cut-jobs.js';
import { planForSheets } from './plan-for-sheets.js';
import { type PlanOne, planJob } from './plan-job.js';
import type { BatchRecipe } from './recipe.js';

/** So many sheets of one paper. */
export interface PaperSheets {
  readonly paper: string;
  readonly sheets: number;
}

/** What one number of cards needs, were there sheets without end. */
export interface YieldPoint {
  readonly cards: number;
  /** The sheets of every paper that is needed, in the order of the papers. */
  readonly papers: readonly PaperSheets[];
  /** The sum over the papers. */
  readonly sheets: number;
  /** True only when every paper's sheets are proven to be the fewest possible. */
  readonly proven: boolean;
  /** True when the sheets at hand are enough. */
  readonly atHand: boolean;
}

export interface YieldCurveOptions {
  /** The largest number of cards. Default 36. */
  readonly upTo?: number;
  /** Plans one job; default `planForSheets()`. */
  readonly planOne?: PlanOne;
}

/** What is known of one paper at one number of cards. */
interface PaperNeed extends PaperSheets {
  readonly job: CutJob;
  /** Sheets that every plan of the job needs, as far as proven. */
  readonly least: number;
}

/** True when a plan of `job` makes everything of `less` as well. */
function covers(job: CutJob, less: CutJob): boolean {
  const made = new Map(job.blanks.map((blank) => [blank.id, blank.quantity]));
  return less.blanks.every((blank) => (made.get(blank.id) ?? 0) >= blank.quantity);
}

function sum(needs: readonly PaperSheets[]): number {
  return needs.reduce((total, { sheets }) => total + sheets, 0);
}

/** `recipe` without limits. */
function withoutLimits(recipe: BatchRecipe): BatchRecipe {
  return { ...recipe, papers: recipe.papers.map((paper) => ({ ...paper, sheets: null })) };
}

/** What one paper's job needs, no more than `more`, the need of a job that covers it; null when it cannot be made. */
function needOf(paper: string, job: CutJob, atHand: number | null, more: PaperNeed | undefined, planOne: PlanOne) {
  const plan = planJob(job, planOne);
  if (!plan.complete) return null;
  const least = plan.proof.lowerBound;
  const sheets = Math.min(realSheets(plan), more?.sheets ?? Number.POSITIVE_INFINITY);
  if (atHand === null || sheets <= atHand || least > atHand) return { paper, job, sheets, least };
  // A planner that knows it has no more sheets may look harder.
  const papers = job.papers.map((each) => (isCentre(each.id) ? each : { ...each, sheets: atHand }));
  const sparing = planJob({ ...job, papers }, planOne);
  return { paper, job, sheets: sparing.complete ? Math.min(sheets, realSheets(sparing)) : sheets, least };
}

/** The needs of `cards` cards, no paper more than it is in `above` where that covers it; null when they cannot be made. */
function needsOf(
  recipe: BatchRecipe,
  cards: number,
  above: readonly PaperNeed[],
  planOne: PlanOne,
): readonly PaperNeed[] | null {
  const needs: PaperNeed[] = [];
  for (const { paper, job } of cutJobs(withoutLimits(recipe), cards)) {
    const more = above.find((need) => need.paper === paper && covers(need.job, job));
    const need = needOf(paper, job, recipe.papers.find(({ id }) => id === paper)?.sheets ?? null, more, planOne);
    if (!need) return null;
    needs.push(need);
  }
  return needs;
}

/** `needs` with what is proven for fewer cards, which holds for more cards too. */
function provenFrom(needs: readonly PaperNeed[], below: readonly PaperNeed[]): readonly PaperNeed[] {
  return needs.map((need) => {
    const fewer = below.find(({ paper, job }) => paper === need.paper && covers(need.job, job));
    return { ...need, least: Math.max(need.least, fewer?.least ?? 0) };
  });
}

/**
 * The sheets that 1, 2, … `upTo` cards need, from a plan each: the yield curve, so that "nine or ten?" is a look. It is
 * worked out from the top, one number of cards in each slice, because a plan of more cards makes fewer as well; so the
 * curve never falls, even where the planner missed a plan. The result is in rising order, with what is proven for fewer
 * cards carried up; a yielded point is final in all but `proven`. The curve ends before the first number of cards that
 * cannot be made of any number of sheets.
 */
export function* yieldCurve(
  recipe: BatchRecipe,
  { upTo = 36, planOne = planForSheets() }: YieldCurveOptions = {},
): Generator<YieldPoint, readonly YieldPoint[]> {
  const limits = new Map(recipe.papers.map(({ id, sheets }) => [id, sheets ?? Number.POSITIVE_INFINITY]));
  const found: {
    readonly needs: readonly PaperNeed[];
    readonly own: readonly PaperNeed[];
    readonly point: YieldPoint;
  }[] = [];
  for (let cards = upTo; cards >= 1; cards -= 1) {
    const above = found.at(-1);
    const own = needsOf(recipe, cards, above?.needs ?? [], planOne);
    if (!own) continue;
    // Where papers take turns differently for one card more, its plan may still be the better one as a whole.
    const needs = above && sum(above.needs) < sum(own) ? above.needs : own;
    const enough = needs.every(({ paper, sheets }) => sheets <= (limits.get(paper) ?? 0));
    const point: YieldPoint = {
      cards,
      papers: needs.map(({ paper, sheets }) => ({ paper, sheets })),
      sheets: sum(needs),
      proven: needs.every(({ sheets, least }) => sheets === least),
      atHand: enough || above?.point.atHand === true,
    };
    found.push({ needs, own, point });
    yield point;
  }
  let below: readonly PaperNeed[] = [];
  return found.reverse().map(({ needs, own, point }) => {
    const proven = provenFrom(needs, below);
    below = provenFrom(own, below);
    return { ...point, proven: needs === own && proven.every(({ sheets, least }) => sheets <= least) };
  });
}
