export { CutJobError, checkJob, type JobProblem, MOST_COPIES } from './check-job.js';
export { checkPlan, type PlanProblem } from './check-plan.js';
export * from './cut-tree.js';
export * from './job.js';
export { mostSets } from './most-sets.js';
export * from './plan.js';
export { DEFAULT_WORK, improvePlan, leastSheets, type PlanOptions, planCuts, QUICK_WORK } from './plan-cuts.js';
export { type CutStep, countSettings, cutSteps, planSteps } from './steps.js';
