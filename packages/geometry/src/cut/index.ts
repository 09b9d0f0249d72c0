export { CutJobError, checkJob, type JobProblem, MOST_COPIES } from './check-job.js';
export { checkPlan, type PlanProblem } from './check-plan.js';
export * from './cut-tree.js';
export * from './job.js';
export * from './plan.js';
