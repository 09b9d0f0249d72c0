import type { CutJob } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { type Task, taskOf } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import type { Bound } from './bound.js';
import { lowerBound } from './bounds.js';
import { canonicalJob } from './canonical.js';
import { generateColumns } from './column-generation.js';
import { DEFAULT_WORK, improveWith, type PlanOptions, requireJob } from './improve-with.js';
import { narrow } from './narrow.js';
import { components, cuttable, partOf, roomy } from './parts.js';
import { runToEnd } from './run-to-end.js';

export { DEFAULT_WORK, type PlanOptions, QUICK_WORK } from './improve-with.js';

/** `improveWith` all that narrows. @throws CutJobError for a job that cannot be planned. */
export function improvePlan(job: CutJob, options: PlanOptions = {}): Generator<CutPlan, CutPlan> {
  return improveWith(narrow, job, options);
}

/** `improvePlan` to its end. @throws CutJobError for a job that cannot be planned. */
export function planCuts(job: CutJob, options: PlanOptions = {}): CutPlan {
  return runToEnd(improvePlan(job, options));
}

/** The best bound for `task` that so much work gives. */
function provenLeast(task: Task, work: number): Bound {
  const quick = lowerBound(task, Number.POSITIVE_INFINITY);
  if (quick.value === Number.POSITIVE_INFINITY) return quick;
  const pricing = generateColumns(task, [], Number.POSITIVE_INFINITY, quick.value, 'exact', new Meter(work));
  const { bound } = runToEnd(pricing);
  return bound && bound.value > quick.value ? bound : quick;
}

/**
 * The least sheets (or money) that any plan for all of `job` needs, and by which argument; Infinity when the sheets at
 * hand cannot do. @throws CutJobError for a job that cannot be planned.
 */
export function leastSheets(job: CutJob, sets = 1, work = DEFAULT_WORK): Bound {
  requireJob(job, sets);
  const task = taskOf(canonicalJob(job).job, sets);
  const all = task.kinds.map((_, index) => index);
  // With a kerf, and with cuts that may stop, not every way to cut a blank is tried; then no way found proves nothing.
  const certain = job.trimmer.kerf === 0 && !job.trimmer.stoppedCuts;
  if (all.some((index) => !roomy(task, index) || (certain && !cuttable(task, index))))
    return { value: Number.POSITIVE_INFINITY, by: 'a blank that cannot be cut' };
  const bounds = components(task, all).map((kinds) => provenLeast(partOf(task, kinds), work));
  return {
    value: bounds.reduce((sum, bound) => sum + bound.value, 0),
    by: [...new Set(bounds.map(({ by }) => by))].join(', '),
  };
}
