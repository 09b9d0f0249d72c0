import { type CutJob, type CutPlan, DEFAULT_WORK, leastSheets, planCuts, QUICK_WORK } from '@trimwell/geometry';
import { isCentre, realSheets } from './centre-papers.js';
import type { PlanOne } from './plan-job.js';

/** `plan` of `job`, with the better proof where a bound that the quick planner does not look for has one. */
function proven(job: CutJob, plan: CutPlan): CutPlan | null {
  const { value, by } = leastSheets(job);
  // Not even the best planner makes what a bound forbids.
  if (value === Number.POSITIVE_INFINITY) return plan;
  // The bound is in sheets when nothing has a price, and when sheets cost 1 and centres nothing.
  const centres = job.papers.some(({ id }) => isCentre(id));
  const counted = job.papers.every(({ id, price }) => price === (centres ? (isCentre(id) ? 0 : 1) : null));
  if (!counted || !plan.complete || value < realSheets(plan)) return null;
  return { ...plan, proof: { ...plan.proof, lowerBound: value, fewestSheets: true, by } };
}

/**
 * A planner for those who only count sheets: a quick plan that is proven to need the fewest is as good as any, whatever
 * its layouts and settings are; only where a sheet might be saved is all the `work` spent (see `planCuts`).
 */
export function planForSheets(work: number = DEFAULT_WORK): PlanOne {
  return (job) => {
    const quick = planCuts(job, { work: Math.min(work, QUICK_WORK) });
    if (work <= QUICK_WORK || quick.proof.fewestSheets) return quick;
    return proven(job, quick) ?? planCuts(job, { work });
  };
}
