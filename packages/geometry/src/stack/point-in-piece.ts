import { ticks } from '../length/length.js';
import { flattenOutline } from '../outline/flatten.js';
import type { PieceShape } from '../outline/plain-shapes.js';
import { cornersFit, isPunched, punchedDepths } from '../outline/punched-shape.js';
import { pieceOutline } from '../outline/shapes.js';
import type { Point } from '../rect/rect.js';
import type { PlacedPiece } from './placed-piece.js';

/** What is asked of a piece again and again, worked out once. */
interface Test {
  readonly middleX: number;
  readonly middleY: number;
  readonly cos: number;
  readonly sin: number;
  /** Whether a point from the piece's middle, in its untilted frame, lies `margin` or more within it. */
  readonly holds: (x: number, y: number, margin: number) => boolean;
}

/** True in a rectangle of those half sides with rounded corners: within each corner's box its arc decides. */
function inRounded(shape: PieceShape): Test['holds'] {
  const [halfWidth, halfHeight] = [shape.width / 2, shape.height / 2];
  const { tl, tr, br, bl } = shape.corners;
  return (x, y, margin) => {
    const [dx, dy] = [halfWidth - Math.abs(x), halfHeight - Math.abs(y)];
    if (dx < margin || dy < margin) return false;
    const radius = x < 0 ? (y < 0 ? tl : bl) : y < 0 ? tr : br;
    if (dx >= radius || dy >= radius) return true;
    const [inX, inY, reach] = [radius - dx, radius - dy, radius - margin];
    return reach >= 0 && inX * inX + inY * inY <= reach * reach;
  };
}

/**
 * True in an ellipse shrunk about its middle by as much as its shorter half side is by the margin: it lies at least so far within, since
 * what is left of both half sides is a like ellipse that holds a disc of the margin. One with half sides less the margin would be nearer.
 */
function inEllipse(shape: PieceShape): Test['holds'] {
  const [halfWidth, halfHeight] = [shape.width / 2, shape.height / 2];
  return (x, y, margin) => {
    const share = 1 - margin / Math.min(halfWidth, halfHeight);
    return share > 0 && (x / halfWidth) ** 2 + (y / halfHeight) ** 2 <= share * share;
  };
}

/** Numbers of an edge in a row of them: where it begins and ends. */
const EDGE = 4;

/** The edges of a shape about its middle, four numbers each: this is asked for every edge, again and again. */
function edgesAbout(shape: PieceShape): Float64Array {
  const { outline, holes } = pieceOutline(shape);
  const edges: number[] = [];
  for (const ring of [outline, ...holes].map((each) => flattenOutline(each, 8)))
    for (let at = 1; at < ring.length; at += 1) {
      const [a, b] = [ring[at - 1] as Point, ring[at] as Point];
      edges.push(a.x - shape.width / 2, a.y - shape.height / 2, b.x - shape.width / 2, b.y - shape.height / 2);
    }
  return Float64Array.from(edges);
}

/** True when the edge at `at` is nearer to a point than `margin`. */
function isNear(edges: Float64Array, at: number, x: number, y: number, margin: number): boolean {
  const [fromX, fromY] = [edges[at] as number, edges[at + 1] as number];
  const [toX, toY] = [edges[at + 2] as number, edges[at + 3] as number];
  // Most edges are told to be far by one side of their box.
  if ((fromX > x + margin && toX > x + margin) || (fromX < x - margin && toX < x - margin)) return false;
  if ((fromY > y + margin && toY > y + margin) || (fromY < y - margin && toY < y - margin)) return false;
  const [dx, dy] = [toX - fromX, toY - fromY];
  const along = Math.max(0, Math.min(1, ((x - fromX) * dx + (y - fromY) * dy) / (dx * dx + dy * dy || 1)));
  const [offX, offY] = [x - fromX - along * dx, y - fromY - along * dy];
  return offX * offX + offY * offY < margin * margin;
}

/** Crossings to the right of a point, then its distance from every edge; for shapes that are neither round nor rectangles. */
function inPolygons(shape: PieceShape): Test['holds'] {
  const { width, height } = shape;
  let known: Float64Array | null = null;
  return (x, y, margin) => {
    if (Math.abs(x) > width / 2 - margin || Math.abs(y) > height / 2 - margin) return false;
    known ??= edgesAbout(shape);
    const edges = known;
    let inside = false;
    for (let at = 0; at < edges.length; at += EDGE) {
      const [fromY, toY] = [edges[at + 1] as number, edges[at + 3] as number];
      if (fromY > y === toY > y) continue;
      const [fromX, toX] = [edges[at] as number, edges[at + 2] as number];
      if (x < fromX + ((toX - fromX) * (y - fromY)) / (toY - fromY)) inside = !inside;
    }
    if (!inside || margin === 0) return inside;
    for (let at = 0; at < edges.length; at += EDGE) if (isNear(edges, at, x, y, margin)) return false;
    return true;
  };
}

/**
 * What is well within a punched rectangle is told by what its punches leave of it; only nearer to its edges the outline is asked. A round
 * corner of what is left lies within that of the whole.
 */
function inPunched(shape: PieceShape): Test['holds'] {
  const { left, top, right, bottom } = punchedDepths(shape);
  const [width, height] = [shape.width - left - right, shape.height - top - bottom];
  const near = inPolygons(shape);
  if (width <= 0 || height <= 0) return near;
  const core = { ...shape, width: ticks(width), height: ticks(height), punched: {} };
  if (!cornersFit(core)) return near;
  const well = inRounded(core);
  const [offX, offY] = [(left - right) / 2, (top - bottom) / 2];
  return (x, y, margin) => well(x - offX, y - offY, margin) || near(x, y, margin);
}

/** By shape: shapes are never changed, and a piece that is moved keeps its own. */
const within = new WeakMap<PieceShape, Test['holds']>();

function findHolds(shape: PieceShape): Test['holds'] {
  if (shape.shape === 'ellipse') return inEllipse(shape);
  if (shape.shape !== 'rectangle') return inPolygons(shape);
  if (isPunched(shape)) return inPunched(shape);
  // Radii that are drawn smaller than they are stated are left to the outline.
  return cornersFit(shape) ? inRounded(shape) : inPolygons(shape);
}

function holdsOf(shape: PieceShape): Test['holds'] {
  const found = within.get(shape) ?? findHolds(shape);
  within.set(shape, found);
  return found;
}

const known = new WeakMap<PlacedPiece, Test>();

function testOf(piece: PlacedPiece): Test {
  const found = known.get(piece);
  if (found) return found;
  const { shape, x, y, tilt } = piece;
  const angle = (-tilt * Math.PI) / 180;
  const test: Test = {
    middleX: x + shape.width / 2,
    middleY: y + shape.height / 2,
    cos: Math.cos(angle),
    sin: Math.sin(angle),
    holds: holdsOf(shape),
  };
  known.set(piece, test);
  return test;
}

/** Tells of a point of the face whether it lies within `piece`, and no nearer than `margin` ticks to its edge where one is stated. */
export function pointTest(piece: PlacedPiece): (x: number, y: number, margin?: number) => boolean {
  const { middleX, middleY, cos, sin, holds } = testOf(piece);
  return (x, y, margin = 0) => {
    const [dx, dy] = [x - middleX, y - middleY];
    return holds(dx * cos - dy * sin, dx * sin + dy * cos, margin);
  };
}

/** True when `point` of the face lies within `piece`. Whoever asks for many points takes `pointTest`. */
export function holdsPoint(piece: PlacedPiece, { x, y }: Point): boolean {
  return pointTest(piece)(x, y);
}

/** True for an unpunched rectangle and an ellipse: what has all its corners within it lies within it. */
export function isConvex({ shape }: PlacedPiece): boolean {
  if (shape.shape === 'ellipse') return true;
  return shape.shape === 'rectangle' && !isPunched(shape);
}
