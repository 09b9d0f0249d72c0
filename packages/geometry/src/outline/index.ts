export * from './blank.js';
export { convexHull } from './convex-hull.js';
export * from './corners.js';
export * from './flatten.js';
export * from './outline.js';
export * from './outline-area.js';
export {
  ellipse,
  type PieceOutline,
  type PieceShape,
  plainOutline,
  polygon,
  rectangle,
} from './plain-shapes.js';
export { eyeletOf, punchReach } from './profile-shapes.js';
export * from './punch.js';
export * from './punch-profile.js';
export { isPunched, punchedDepths } from './punched-shape.js';
export { pieceOutline } from './shapes.js';
