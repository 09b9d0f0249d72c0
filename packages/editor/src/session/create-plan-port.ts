import type { PlanPort } from './plan-messages.js';

/** A worker that plans, one for each session. */
export function createPlanPort(): PlanPort {
  return new Worker(new URL('./plan.worker.js', import.meta.url), { type: 'module', name: 'trimwell-plan' });
}
