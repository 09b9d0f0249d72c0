import { outlineSupport } from '../outline/outline-support.js';
import type { PieceShape } from '../outline/plain-shapes.js';
import { cornersFit, isPunched } from '../outline/punched-shape.js';
import { pieceOutline } from '../outline/shapes.js';
import type { PlacedPiece } from './placed-piece.js';

/**
 * How far a piece reaches from its middle along a direction of the face, given as a unit vector, in floating ticks: the support
 * function of its convex hull about its middle.
 */
export type Support = (x: number, y: number) => number;

/** By shape: shapes are never changed, and a piece that is moved keeps its own. */
const own = new WeakMap<PieceShape, Support>();

/** In the piece's own untilted frame. */
function ownSupport(shape: PieceShape): Support {
  const support = own.get(shape) ?? findSupport(shape);
  own.set(shape, support);
  return support;
}

function findSupport(shape: PieceShape): Support {
  const [halfWidth, halfHeight] = [shape.width / 2, shape.height / 2];
  // Of an ellipse with half axes a and b it is hypot(a x, b y).
  if (shape.shape === 'ellipse') return (x, y) => Math.hypot(halfWidth * x, halfHeight * y);
  const { tl, tr, br, bl } = shape.corners;
  if (shape.shape === 'rectangle' && !isPunched(shape) && cornersFit(shape))
    // The corner on that side, its arc about its own middle.
    return (x, y) => {
      const radius = x < 0 ? (y < 0 ? tl : bl) : y < 0 ? tr : br;
      return (halfWidth - radius) * Math.abs(x) + (halfHeight - radius) * Math.abs(y) + radius;
    };
  let reach: Support | null = null;
  return (x, y) => {
    // Every outline reaches to the sides of its box; of what is never turned no more is asked.
    if (y === 0) return halfWidth * Math.abs(x);
    if (x === 0) return halfHeight * Math.abs(y);
    reach ??= outlineSupport(pieceOutline(shape).outline);
    return reach(x, y) - halfWidth * x - halfHeight * y;
  };
}

const known = new WeakMap<PlacedPiece, Support>();

/** The support function of `piece`: exact for lines, ovals and arcs, else within 1/10000 of the size of a curve. */
export function supportOf(piece: PlacedPiece): Support {
  const found = known.get(piece);
  if (found) return found;
  const angle = (piece.tilt * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const untilted = ownSupport(piece.shape);
  const support: Support = (x, y) => untilted(x * cos + y * sin, y * cos - x * sin);
  known.set(piece, support);
  return support;
}
