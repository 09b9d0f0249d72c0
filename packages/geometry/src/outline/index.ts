export * from './blank.js';
export * from './outline.js';
