import { type CutJob, type CutPlan, planCuts } from '@trimwell/geometry';
import { isDealt } from './blank-id.js';
import { realSheets } from './centre-papers.js';
import { cutJobs, type PaperJob } from './cut-jobs.js';
import { type PlanOne, planJob } from './plan-job.js';
import type { BatchRecipe } from './recipe.js';

export type { PlanOne };

/** The plan of one paper's sheets, and the job it answers. */
export interface PaperPlan {
  readonly paper: string;
  readonly job: CutJob;
  readonly plan: CutPlan;
}

/** The plan of a whole batch: one plan per paper that is used, in the order of the papers. */
export interface BatchPlan {
  /** How many cards this plan makes all blanks of; what is missing stands in each plan's `unmade`. */
  readonly cards: number;
  readonly papers: readonly PaperPlan[];
  readonly complete: boolean;
  /** Sheets of paper; centres cut out of pieces are none. */
  readonly sheets: number;
  /** Fewest sheets that any plan needs, as far as proven. */
  readonly lowerBound: number;
  /** True only when every paper's plan is proven to need the fewest sheets. */
  readonly fewestSheets: boolean;
  /** True when papers of a mix are among them: then what is proven is proven for this deal of the mix. */
  readonly mixed: boolean;
  readonly work: number;
}

/** The batch plan of plans that are there already. */
export function gatherPlans(cards: number, papers: readonly PaperPlan[]): BatchPlan {
  const sum = (of: (plan: CutPlan) => number): number => papers.reduce((total, { plan }) => total + of(plan), 0);
  return {
    cards,
    papers,
    complete: papers.every(({ plan }) => plan.complete),
    sheets: sum(realSheets),
    lowerBound: sum((plan) => plan.proof.lowerBound),
    fewestSheets: papers.every(({ plan }) => plan.proof.fewestSheets),
    mixed: papers.some(({ job }) => job.blanks.some(({ id }) => isDealt(id))),
    work: sum((plan) => plan.work),
  };
}

/** The plans of jobs, each by `planOne`. */
export function planPapers(jobs: readonly PaperJob[], planOne: PlanOne): readonly PaperPlan[] {
  return jobs.map(({ paper, job }) => ({ paper, job, plan: planJob(job, planOne) }));
}

/** Plans `cards` cards of `recipe`, paper by paper, each with `work` steps at most (see `planCuts`). */
export function planBatch(recipe: BatchRecipe, cards: number, planOne: PlanOne = planCuts): BatchPlan {
  return gatherPlans(cards, planPapers(cutJobs(recipe, cards), planOne));
}
