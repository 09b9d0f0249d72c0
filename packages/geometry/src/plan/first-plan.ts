import type { CutJob } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { improveWith, type PlanOptions } from './improve-with.js';
import { runToEnd } from './run-to-end.js';

/**
 * A first good plan, and a bound that holds, by placing and filling alone: what is there before the rest of the planner is
 * loaded. It may need more sheets than `planCuts`. @throws CutJobError for a job that cannot be planned.
 */
export function firstPlan(job: CutJob, options: PlanOptions = {}): CutPlan {
  return runToEnd(improveWith(null, job, options));
}
