export { type Covering, coveringOf, isCovered } from './covered.js';
export { fallsThrough, type HiddenCentreOptions, hiddenCentre } from './hidden-centre.js';
export { type Lap, leastLap, meetOnLines, widthAlong } from './lap.js';
export { boxesMeet, type PlacedBounds, placedBounds } from './placed-bounds.js';
export type { PlacedPiece } from './placed-piece.js';
export { holdsPoint } from './point-in-piece.js';
export { holdsPiece } from './quick-cover.js';
export { type Span, sectionSpans } from './section-spans.js';
