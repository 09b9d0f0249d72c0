import type { Point, Size } from '../rect/rect.js';
import { type CornerRadii, drawnRadii } from './corners.js';
import type { Outline, OutlineStep } from './outline.js';
import { type EdgePoint, type EdgeStep, type PunchProfile, punchedEdge } from './punch.js';

/** Everything that the edge of a piece depends on. Corners and punches are for rectangles only. */
export interface PieceShape extends Size {
  readonly shape: 'rectangle' | 'ellipse' | 'banner' | 'tag';
  readonly corners: CornerRadii;
  readonly punched: { readonly [edge in 'top' | 'right' | 'bottom' | 'left']?: PunchProfile | undefined };
}

/** The edge of a piece and the holes in it, from its own untilted top left corner. */
export interface PieceOutline {
  readonly outline: Outline;
  readonly holes: readonly Outline[];
}

function line(x: number, y: number): OutlineStep {
  return { kind: 'line', to: { x, y } };
}

/** A closed outline through `points`. */
export function polygon(points: readonly Point[]): Outline {
  const [start, ...others] = points;
  if (!start) throw new RangeError('A polygon needs a point.');
  return { start, steps: [...others, start].map(({ x, y }) => line(x, y)) };
}

/** An ellipse in the rectangle from (x, y), as four quarters from its top. */
export function ellipse(x: number, y: number, width: number, height: number): Outline {
  const [radiusX, radiusY] = [width / 2, height / 2];
  const quarter = (toX: number, toY: number): OutlineStep => ({
    kind: 'arc',
    to: { x: toX, y: toY },
    radiusX,
    radiusY,
    clockwise: true,
  });
  const [middleX, middleY] = [x + radiusX, y + radiusY];
  return {
    start: { x: middleX, y },
    steps: [quarter(x + width, middleY), quarter(middleX, y + height), quarter(x, middleY), quarter(middleX, y)],
  };
}

/** A plain rectangle from (x, y). */
export function rectangle(x: number, y: number, width: number, height: number): Outline {
  return polygon([
    { x, y },
    { x: x + width, y },
    { x: x + width, y: y + height },
    { x, y: y + height },
  ]);
}

/** How the edge's own directions lie on the piece; edges are walked clockwise, so inward is always to the right of the walk. */
interface EdgeFrame {
  readonly length: number;
  readonly place: (point: EdgePoint) => Point;
  /** True when `along` runs along x, so that an arc's radius along the edge is its x radius. */
  readonly level: boolean;
}

function onPiece(step: EdgeStep, { place, level }: EdgeFrame): OutlineStep {
  if (step.kind === 'line') return { kind: 'line', to: place(step.to) };
  if (step.kind === 'curve')
    return { kind: 'curve', control1: place(step.control1), control2: place(step.control2), to: place(step.to) };
  const [radiusX, radiusY] = level ? [step.radiusAlong, step.radiusIn] : [step.radiusIn, step.radiusAlong];
  return { kind: 'arc', to: place(step.to), radiusX, radiusY, clockwise: step.outward };
}

/**
 * A rectangle with rounded corners and punched edges. A punched edge is punched along what its corners leave straight; a
 * corner next to it keeps its radius, and meets the profile at the finished edge.
 */
function roundedRectangle({ width, height, corners, punched }: PieceShape): Outline {
  const { tl, tr, br, bl } = drawnRadii({ width, height }, corners);
  const frames: readonly (readonly [EdgeFrame, PunchProfile | undefined, number, number])[] = [
    [{ length: width, level: true, place: (p) => ({ x: p.along, y: p.in }) }, punched.top, tl, tr],
    [{ length: height, level: false, place: (p) => ({ x: width - p.in, y: p.along }) }, punched.right, tr, br],
    [{ length: width, level: true, place: (p) => ({ x: width - p.along, y: height - p.in }) }, punched.bottom, br, bl],
    [{ length: height, level: false, place: (p) => ({ x: p.in, y: height - p.along }) }, punched.left, bl, tl],
  ];
  const ends: readonly Point[] = [
    { x: width, y: tr },
    { x: width - br, y: height },
    { x: 0, y: height - bl },
    { x: tl, y: 0 },
  ];
  const steps = frames.flatMap(([frame, punch, before, after], index): OutlineStep[] => {
    const [from, to] = [before, frame.length - after];
    const plain: readonly EdgeStep[] = to > from ? [{ kind: 'line', to: { along: to, in: 0 } }] : [];
    const edge = punch && to > from ? punchedEdge(frame.length, from, to, punch) : plain;
    const corner = ends[index];
    const round: OutlineStep[] =
      after > 0 && corner ? [{ kind: 'arc', to: corner, radiusX: after, radiusY: after, clockwise: true }] : [];
    return [...edge.map((step) => onPiece(step, frame)), ...round];
  });
  return { start: { x: tl, y: 0 }, steps };
}

/** A strip whose far end (the right, or the bottom of a tall one) is cut in like a swallow's tail, at 45 degrees or flatter. */
function banner({ width, height }: Size): Outline {
  if (width >= height) {
    const notch = Math.min(height / 2, width / 3);
    return polygon([
      { x: 0, y: 0 },
      { x: width, y: 0 },
      { x: width - notch, y: height / 2 },
      { x: width, y: height },
      { x: 0, y: height },
    ]);
  }
  const notch = Math.min(width / 2, height / 3);
  return polygon([
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: width / 2, y: height - notch },
    { x: 0, y: height },
  ]);
}

/** A tag: the two corners of its near short end cut off at 45 degrees by a quarter of it, and a hole there. */
function tag({ width, height }: Size): PieceOutline {
  const tall = height >= width;
  const short = Math.min(width, height);
  const clip = short / 4;
  const hole = short / 7;
  const middle = short / 2;
  const outline = tall
    ? polygon([
        { x: clip, y: 0 },
        { x: width - clip, y: 0 },
        { x: width, y: clip },
        { x: width, y: height },
        { x: 0, y: height },
        { x: 0, y: clip },
      ])
    : polygon([
        { x: clip, y: 0 },
        { x: width, y: 0 },
        { x: width, y: height },
        { x: clip, y: height },
        { x: 0, y: height - clip },
        { x: 0, y: clip },
      ]);
  const [x, y] = tall ? [middle, clip * 1.1] : [clip * 1.1, middle];
  return { outline, holes: [ellipse(x - hole / 2, y - hole / 2, hole, hole)] };
}

/** The edge of a piece and its holes, clockwise, within (0, 0) to (width, height). */
export function pieceOutline(piece: PieceShape): PieceOutline {
  switch (piece.shape) {
    case 'rectangle':
      return { outline: roundedRectangle(piece), holes: [] };
    case 'ellipse':
      return { outline: ellipse(0, 0, piece.width, piece.height), holes: [] };
    case 'banner':
      return { outline: banner(piece), holes: [] };
    case 'tag':
      return tag(piece);
  }
}
