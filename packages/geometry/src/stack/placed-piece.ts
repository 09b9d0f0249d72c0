import { type Length, ticks } from '../length/length.js';
import { flattenOutline } from '../outline/flatten.js';
import type { Outline, OutlineStep } from '../outline/outline.js';
import { type PieceShape, pieceOutline } from '../outline/shapes.js';
import type { Point } from '../rect/rect.js';

/** A piece where it lies on its face: its untilted top left corner, and its tilt in degrees, clockwise about its middle. */
export interface PlacedPiece {
  readonly shape: PieceShape;
  readonly x: Length;
  readonly y: Length;
  readonly tilt: number;
}

const NOUGHT = ticks(0);

/** A frame at the corner of the face: what lies in it lies where it is. */
export const FACE: PlacedPiece = {
  shape: {
    shape: 'rectangle',
    width: NOUGHT,
    height: NOUGHT,
    corners: { tl: NOUGHT, tr: NOUGHT, br: NOUGHT, bl: NOUGHT },
    punched: {},
  },
  x: NOUGHT,
  y: NOUGHT,
  tilt: 0,
};

/** A straight part of a boundary. The true edge is nowhere further from it than `error` ticks: 0 for a straight edge. */
export interface BoundaryEdge {
  readonly from: Point;
  readonly to: Point;
  readonly error: number;
}

/** The boundary of a piece, its holes included, in floating ticks. */
export interface Boundary {
  readonly edges: readonly BoundaryEdge[];
  /** Heights at which a straight edge along an axis ends, in ascending order: there what is covered changes at once. */
  readonly ends: readonly number[];
  readonly box: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  /** True when all of it is straight and along the axes. */
  readonly plain: boolean;
}

/** Straight parts that an arc or a curve may have; the fewest that are near enough, or else the most. */
const PARTS = [4, 8, 16, 24] as const;
/** How far from its chords a curve may be, in ticks: 1/400 in, far less than the height of a band. */
const NEAR_ENOUGH = 40;

/** How far a step of an outline is from `parts` chords at most. */
function chordError(from: Point, step: OutlineStep, parts: number): number {
  if (step.kind === 'line') return 0;
  if (step.kind === 'arc') {
    // The sagitta of a chord of the unit circle, stretched by the larger radius.
    const half = Math.min(1, Math.hypot((step.to.x - from.x) / step.radiusX, (step.to.y - from.y) / step.radiusY) / 2);
    return Math.max(step.radiusX, step.radiusY) * (1 - Math.cos(Math.asin(half) / parts));
  }
  // A chord over 1/n of a parameter is within max |B''| / (8 n n); a cubic's B'' lies between those of its two ends.
  const { control1: a, control2: b, to } = step;
  const bend = (p: Point, q: Point, r: Point): number => 6 * Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  return Math.max(bend(from, a, b), bend(a, b, to)) / (8 * parts * parts);
}

/** Cosine and sine of whole degrees, exact at quarter turns. */
function turnBy(degrees: number): readonly [number, number] {
  const quarters = degrees / 90;
  if (Number.isInteger(quarters)) {
    const quarter = ((quarters % 4) + 4) % 4;
    return [[1, 0, -1, 0][quarter] ?? 1, [0, 1, 0, -1][quarter] ?? 0];
  }
  return [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
}

/** Where a point of `piece`, from its own top left corner, lies in the untilted frame of `frame`. */
export function intoFrame(frame: PlacedPiece, piece: PlacedPiece): (point: Point) => Point {
  const [own, other] = [frame.shape, piece.shape];
  const [cos, sin] = turnBy(-frame.tilt);
  const [acrossX, acrossY] = [
    piece.x + other.width / 2 - frame.x - own.width / 2,
    piece.y + other.height / 2 - frame.y - own.height / 2,
  ];
  const middle = {
    x: own.width / 2 + acrossX * cos - acrossY * sin,
    y: own.height / 2 + acrossX * sin + acrossY * cos,
  };
  const [c, s] = turnBy(piece.tilt - frame.tilt);
  return ({ x, y }) => {
    const [dx, dy] = [x - other.width / 2, y - other.height / 2];
    return { x: middle.x + dx * c - dy * s, y: middle.y + dx * s + dy * c };
  };
}

/** The edges of a shape in its own frame; shapes are never changed, so each is flattened once. */
const flattened = new WeakMap<PieceShape, readonly BoundaryEdge[]>();

function ownEdges(shape: PieceShape): readonly BoundaryEdge[] {
  const known = flattened.get(shape);
  if (known) return known;
  const { outline, holes } = pieceOutline(shape);
  const edges = [outline, ...holes].flatMap(edgesOf);
  flattened.set(shape, edges);
  return edges;
}

function edgesOf(outline: Outline): readonly BoundaryEdge[] {
  let from = outline.start;
  return outline.steps.flatMap((step) => {
    const start = from;
    const parts = PARTS.find((each) => chordError(start, step, each) <= NEAR_ENOUGH) ?? 24;
    const error = chordError(start, step, parts);
    const points = flattenOutline({ start, steps: [step] }, parts);
    from = step.to;
    return points.slice(1).map((to, index) => ({ from: points[index] as Point, to, error }));
  });
}

/** True when the boxes around both pieces, however they are tilted, are apart: their middles are further than both reach. */
export function farApart(one: PlacedPiece, other: PlacedPiece): boolean {
  const reach = ({ shape }: PlacedPiece): number => Math.hypot(shape.width, shape.height) / 2;
  const dx = one.x + one.shape.width / 2 - other.x - other.shape.width / 2;
  const dy = one.y + one.shape.height / 2 - other.y - other.shape.height / 2;
  return Math.hypot(dx, dy) > reach(one) + reach(other);
}

/** Boundaries by frame and piece: neither is ever changed, and the same two are asked of again and again. */
const bounded = new WeakMap<PlacedPiece, WeakMap<PlacedPiece, Boundary>>();

/** The boundary of `piece` in the untilted frame of `frame`. */
export function boundaryIn(frame: PlacedPiece, piece: PlacedPiece): Boundary {
  const inFrame = bounded.get(frame) ?? new WeakMap<PlacedPiece, Boundary>();
  const known = inFrame.get(piece);
  if (known) return known;
  const found = findBoundary(frame, piece);
  bounded.set(frame, inFrame.set(piece, found));
  return found;
}

function findBoundary(frame: PlacedPiece, piece: PlacedPiece): Boundary {
  const place = intoFrame(frame, piece);
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  const ends = new Set<number>();
  let plain = true;
  const edges = ownEdges(piece.shape).map((own) => {
    const [from, to] = [place(own.from), place(own.to)];
    const { error } = own;
    box.left = Math.min(box.left, to.x - error);
    box.right = Math.max(box.right, to.x + error);
    box.top = Math.min(box.top, to.y - error);
    box.bottom = Math.max(box.bottom, to.y + error);
    if (error === 0 && (from.x === to.x || from.y === to.y)) {
      ends.add(from.y);
      ends.add(to.y);
    } else plain = false;
    return { from, to, error };
  });
  return { edges, ends: [...ends].sort((a, b) => a - b), box, plain };
}
