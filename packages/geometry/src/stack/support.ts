import { convexHull } from '../outline/convex-hull.js';
import { flattenOutline } from '../outline/flatten.js';
import { pieceOutline } from '../outline/shapes.js';
import type { PlacedPiece } from './placed-piece.js';

/**
 * How far a piece reaches from its middle along a direction of the face, given as a unit vector, in floating ticks: the support
 * function of its convex hull about its middle.
 */
export type Support = (x: number, y: number) => number;

/** Straight parts of each curve of other outlines: they leave the true edge by less than 1/10000 of its radius. */
const PARTS = 64;

/** In the piece's own untilted frame. */
function ownSupport({ shape }: PlacedPiece): Support {
  const [halfWidth, halfHeight] = [shape.width / 2, shape.height / 2];
  const punched = Object.values(shape.punched).some((punch) => punch !== undefined);
  // Of an ellipse with half axes a and b it is hypot(a x, b y).
  if (shape.shape === 'ellipse') return (x, y) => Math.hypot(halfWidth * x, halfHeight * y);
  const { tl, tr, br, bl } = shape.corners;
  const fits = Math.max(tl, tr, br, bl) * 2 <= Math.min(shape.width, shape.height);
  if (shape.shape === 'rectangle' && !punched && fits)
    // The corner on that side, its arc about its own middle.
    return (x, y) => {
      const radius = x < 0 ? (y < 0 ? tl : bl) : y < 0 ? tr : br;
      return (halfWidth - radius) * Math.abs(x) + (halfHeight - radius) * Math.abs(y) + radius;
    };
  const corners = convexHull(flattenOutline(pieceOutline(shape).outline, PARTS));
  return (x, y) => {
    let most = -Infinity;
    for (const corner of corners) most = Math.max(most, (corner.x - halfWidth) * x + (corner.y - halfHeight) * y);
    return most;
  };
}

const known = new WeakMap<PlacedPiece, Support>();

/** The support function of `piece`: exact for ovals and rectangles, else within 1/10000 of the radius of a curve. */
export function supportOf(piece: PlacedPiece): Support {
  const found = known.get(piece);
  if (found) return found;
  const angle = (piece.tilt * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const own = ownSupport(piece);
  const support: Support = (x, y) => own(x * cos + y * sin, y * cos - x * sin);
  known.set(piece, support);
  return support;
}
