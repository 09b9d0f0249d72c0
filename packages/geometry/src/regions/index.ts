export { inset, largestDisc } from './inset.js';
export { lieOver, piecesUnder } from './lies-over.js';
export { type Overlap, overlapsOf } from './overlaps.js';
export * from './region.js';
export * from './side-profile.js';
export * from './stack-heights.js';
export * from './visible-regions.js';
