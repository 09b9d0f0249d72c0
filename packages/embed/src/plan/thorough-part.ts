/** The whole planner; loaded while the first plan is already looked at. */
export { DEFAULT_WORK, improvePlan, planCuts, QUICK_WORK } from '@trimwell/geometry';
export { sparingCentres, withoutCentres } from '@trimwell/sketch';
