import type { Length } from '../length/length.js';
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

/** A straight part of a boundary. The true edge is nowhere further from it than `error` ticks: 0 for a straight edge. */
export interface BoundaryEdge {
  readonly from: Point;
  readonly to: Point;
  readonly error: number;
}

/** The boundary of a piece, its holes included, in floating ticks. */
export interface Boundary {
  readonly edges: readonly BoundaryEdge[];
  /** Ends of the outline's own steps, where a profile begins or ends. */
  readonly corners: readonly Point[];
  readonly box: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number };
  /** True when all of it is straight and along the axes, on whole ticks. */
  readonly plain: boolean;
}

/** Straight parts of every arc and curve. */
const PARTS = 24;

/** How far a step of an outline is from its `PARTS` chords at most. */
function chordError(from: Point, step: OutlineStep): number {
  if (step.kind === 'line') return 0;
  if (step.kind === 'arc') {
    // The sagitta of a chord of the unit circle, stretched by the larger radius.
    const half = Math.min(1, Math.hypot((step.to.x - from.x) / step.radiusX, (step.to.y - from.y) / step.radiusY) / 2);
    return Math.max(step.radiusX, step.radiusY) * (1 - Math.cos(Math.asin(half) / PARTS));
  }
  // A chord over 1/n of a parameter is within max |B''| / (8 n n); a cubic's B'' lies between those of its two ends.
  const { control1: a, control2: b, to } = step;
  const bend = (p: Point, q: Point, r: Point): number => 6 * Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  return Math.max(bend(from, a, b), bend(a, b, to)) / (8 * PARTS * PARTS);
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

function edgesOf(outline: Outline, place: (point: Point) => Point): readonly BoundaryEdge[] {
  let from = outline.start;
  return outline.steps.flatMap((step) => {
    const error = chordError(from, step);
    const points = flattenOutline({ start: from, steps: [step] }, PARTS).map(place);
    from = step.to;
    return points.slice(1).map((to, index) => ({ from: points[index] as Point, to, error }));
  });
}

/** The boundary of `piece` in the untilted frame of `frame`. */
export function boundaryIn(frame: PlacedPiece, piece: PlacedPiece): Boundary {
  const place = intoFrame(frame, piece);
  const { outline, holes } = pieceOutline(piece.shape);
  const edges = [outline, ...holes].flatMap((each) => edgesOf(each, place));
  const xs = edges.flatMap(({ to, error }) => [to.x - error, to.x + error]);
  const ys = edges.flatMap(({ to, error }) => [to.y - error, to.y + error]);
  const whole = ({ x, y }: Point): boolean => Number.isInteger(x) && Number.isInteger(y);
  return {
    edges,
    corners: [outline, ...holes].flatMap(({ steps }) => steps.map(({ to }) => place(to))),
    box: { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) },
    plain: edges.every(
      ({ from, to, error }) => error === 0 && (from.x === to.x || from.y === to.y) && whole(from) && whole(to),
    ),
  };
}
