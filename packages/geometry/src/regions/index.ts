export * from './overlaps.js';
export * from './region.js';
export * from './stack-heights.js';
export * from './visible-regions.js';
