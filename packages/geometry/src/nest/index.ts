export { checkNest } from './check-nest.js';
export { checkNestJob } from './check-nest-job.js';
export * from './nest-job.js';
export { type NestOptions, nestParts } from './nest-parts.js';
