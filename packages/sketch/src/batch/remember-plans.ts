import type { PlanOne } from './plan-job.js';

/**
 * `planOne`, asked only once for equal jobs. It forgets nothing, so make one for each question: while looking for a
 * yield or for near misses most papers have the same job again and again.
 */
export function rememberPlans(planOne: PlanOne): PlanOne {
  const known = new Map<string, ReturnType<PlanOne>>();
  return (job) => {
    const key = JSON.stringify(job);
    const plan = known.get(key) ?? planOne(job);
    known.set(key, plan);
    return plan;
  };
}
