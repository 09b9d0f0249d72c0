export { fallsThrough, type HiddenCentreOptions, hiddenCentre } from './hidden-centre.js';
export type { PlacedPiece } from './placed-piece.js';
