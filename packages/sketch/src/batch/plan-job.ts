import type { CutJob, CutPlan } from '@trimwell/geometry';
import { realSheets, withoutCentres } from './centre-papers.js';

/** Plans one job; the planner itself, or one that remembers. */
export type PlanOne = (job: CutJob) => CutPlan;

/**
 * The plan to follow of two for one job: `plan`, which may use centres, and `plain`, which does not. A plan that leaves
 * out a piece has not all the centres it counts on, so it must be complete; and centres cost knife work, so they must
 * save a sheet. What `plan` proves holds for every plan of the job, so `plain` carries that proof where it is taken.
 */
export function sparingCentres(plan: CutPlan, plain: CutPlan): CutPlan {
  if (!plan.complete) return plain;
  const sheets = realSheets(plain);
  if (!plain.complete || realSheets(plan) < sheets) return plan;
  const lowerBound = Math.min(plan.proof.lowerBound, sheets);
  return { ...plain, proof: { ...plan.proof, lowerBound, fewestSheets: lowerBound >= sheets } };
}

/** The plan of `job` by `planOne`; centres, where the job has some, are used only where they save a sheet. */
export function planJob(job: CutJob, planOne: PlanOne): CutPlan {
  const plain = withoutCentres(job);
  return plain === job ? planOne(job) : sparingCentres(planOne(job), planOne(plain));
}
