import type { CutJob } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { improveWith, type PlanOptions } from './improve-with.js';

/**
 * A first good plan, and a bound that holds, by placing and filling alone: what is there before the rest of the planner is
 * loaded. It may need more sheets than `planCuts`. @throws CutJobError for a job that cannot be planned.
 */
export function firstPlan(job: CutJob, options: PlanOptions = {}): CutPlan {
  const slices = improveWith(null, job, options);
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  return slice.value;
}
