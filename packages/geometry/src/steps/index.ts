export { type FewestSettings, fewestSettings, leastSettings } from './fewest-settings.js';
export { performSteps, type StepProblem } from './perform-steps.js';
export { type StepOptions, stepList } from './step-list.js';
export { type CutStep, countSettings, cutSteps, planSteps } from './steps.js';
export * from './trim-step.js';
