export * from './cut-tree.js';
export * from './job.js';
export * from './plan.js';
