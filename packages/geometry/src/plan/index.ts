export { firstPlan } from './first-plan.js';
export { mostSets } from './most-sets.js';
export { DEFAULT_WORK, improvePlan, leastSheets, type PlanOptions, planCuts, QUICK_WORK } from './plan-cuts.js';
export { runToEnd } from './run-to-end.js';
