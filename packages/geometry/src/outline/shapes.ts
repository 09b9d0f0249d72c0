import type { Point, Size } from '../rect/rect.js';
import { type CornerJoint, joinCorner } from './corner-joint.js';
import { drawnRadii } from './corners.js';
import type { Outline, OutlineStep } from './outline.js';
import { ellipse, type PieceOutline, type PieceShape, polygon } from './plain-shapes.js';

export type { PieceShape } from './plain-shapes.js';

import { punchDepth, punchEyelets, punchedEdge } from './punch.js';
import type { EdgePoint, EdgeStep, PunchProfile } from './punch-profile.js';

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

/** An edge of a rectangle, walked clockwise, with the punch that shapes it and the radius of the corner at its end. */
interface RectangleEdge {
  readonly frame: EdgeFrame;
  readonly punch: PunchProfile | undefined;
  readonly radius: number;
}

/** Share of a side that the punches of its two ends may take together; the outline of deeper ones would cross itself. */
const DEEPEST = 0.9;

/** The punches of two opposite edges as they can be drawn `side` apart: both made shallower by the same factor. */
function drawnPunches(
  side: number,
  one: PunchProfile | undefined,
  other: PunchProfile | undefined,
): readonly [PunchProfile | undefined, PunchProfile | undefined] {
  const factor = Math.min(1, (DEEPEST * side) / Math.max(1, (one?.depth ?? 0) + (other?.depth ?? 0)));
  if (factor === 1) return [one, other];
  const shallower = (punch: PunchProfile | undefined): PunchProfile | undefined =>
    punch && { ...punch, depth: (punch.depth * factor) as PunchProfile['depth'] };
  return [shallower(one), shallower(other)];
}

function depthOf({ frame, punch }: RectangleEdge, along: number): number {
  return punch ? punchDepth(frame.length, along, punch) : 0;
}

function cornerOf(before: RectangleEdge, after: RectangleEdge, radius: number): CornerJoint {
  return joinCorner(
    { most: before.punch?.depth ?? 0, depth: (away) => depthOf(before, before.frame.length - away) },
    { most: after.punch?.depth ?? 0, depth: (away) => depthOf(after, away) },
    radius,
  );
}

function walkEdges(edges: readonly RectangleEdge[], joints: readonly CornerJoint[]): Outline {
  const begin = (index: number): Point => {
    const edge = edges[index % edges.length] as RectangleEdge;
    const along = joints.at((index % edges.length) - 1)?.enter ?? 0;
    return edge.frame.place({ along, in: depthOf(edge, along) });
  };
  const steps = edges.flatMap((edge, index): OutlineStep[] => {
    const { frame, punch, radius } = edge;
    const joint = joints[index] as CornerJoint;
    const [from, to] = [joints.at(index - 1)?.enter ?? 0, frame.length - joint.leave];
    const plain: readonly EdgeStep[] = to > from ? [{ kind: 'line', to: { along: to, in: 0 } }] : [];
    const edgeSteps = (punch ? punchedEdge(frame.length, from, to, punch) : plain).map((step) => onPiece(step, frame));
    const next = begin(index + 1);
    const last = edgeSteps.at(-1)?.to ?? begin(index);
    if (Math.hypot(next.x - last.x, next.y - last.y) < 1e-3) return edgeSteps;
    return joint.arc
      ? [...edgeSteps, { kind: 'arc', to: next, radiusX: radius, radiusY: radius, clockwise: true }]
      : [...edgeSteps, { kind: 'line', to: next }];
  });
  return { start: begin(0), steps };
}

/** Room that is left around an eyelet at least, as a share of its radius; nearer to another cut none is drawn. */
const EYELET_ROOM = 1.3;

/**
 * The eyelets of all punched edges, from the top clockwise; `across` is how far each edge is from the one opposite. One
 * that would reach into another edge's profile, a rounded corner or an eyelet before it is left out, as the paper there is gone.
 */
function eyelets(
  edges: readonly RectangleEdge[],
  joints: readonly CornerJoint[],
  across: readonly number[],
): readonly Outline[] {
  const placed: { readonly x: number; readonly y: number; readonly radius: number }[] = [];
  edges.forEach(({ frame, punch }, index) => {
    if (!punch) return;
    const [before, opposite, after] = [3, 2, 1].map((by) => edges[(index + by) % 4] as RectangleEdge);
    const from = Math.max(joints.at(index - 1)?.enter ?? 0, before?.punch?.depth ?? 0);
    const to = frame.length - Math.max(joints[index]?.leave ?? 0, after?.punch?.depth ?? 0);
    for (const { middle, radius } of punchEyelets(frame.length, from, to, punch)) {
      if (middle.in + EYELET_ROOM * radius > (across[index] ?? 0) - (opposite?.punch?.depth ?? 0)) continue;
      const at = { ...frame.place(middle), radius };
      const near = (other: typeof at): boolean =>
        Math.hypot(other.x - at.x, other.y - at.y) < EYELET_ROOM * (other.radius + radius);
      if (!placed.some(near)) placed.push(at);
    }
  });
  return placed.map(({ x, y, radius }) => ellipse(x - radius, y - radius, 2 * radius, 2 * radius));
}

/**
 * A rectangle with rounded corners and punched edges: what the corner rounder and every punch leave of it, so that a
 * profile runs on into a rounded corner until it meets the arc, and two profiles end where they cross. What cannot be
 * cut is drawn as near as can be, and is a finding: radii and depths too large for a side are drawn smaller by one factor,
 * and where an arc and a profile leave nothing of an edge, corners are drawn square.
 */
function roundedRectangle({ width, height, corners, punched }: PieceShape): PieceOutline {
  const radii = drawnRadii({ width, height }, corners);
  const [top, bottom] = drawnPunches(height, punched.top, punched.bottom);
  const [left, right] = drawnPunches(width, punched.left, punched.right);
  const edges: readonly RectangleEdge[] = [
    { frame: { length: width, level: true, place: (p) => ({ x: p.along, y: p.in }) }, punch: top, radius: radii.tr },
    {
      frame: { length: height, level: false, place: (p) => ({ x: width - p.in, y: p.along }) },
      punch: right,
      radius: radii.br,
    },
    {
      frame: { length: width, level: true, place: (p) => ({ x: width - p.along, y: height - p.in }) },
      punch: bottom,
      radius: radii.bl,
    },
    {
      frame: { length: height, level: false, place: (p) => ({ x: p.in, y: height - p.along }) },
      punch: left,
      radius: radii.tl,
    },
  ];
  const join = (square: boolean): readonly CornerJoint[] =>
    edges.map((edge, index) => cornerOf(edge, edges[(index + 1) % 4] as RectangleEdge, square ? 0 : edge.radius));
  const joints = join(false);
  const leavesEveryEdge = edges.every(
    ({ frame }, index) => (joints.at(index - 1)?.enter ?? 0) <= frame.length - (joints[index]?.leave ?? 0) + 1e-6,
  );
  const used = leavesEveryEdge ? joints : join(true);
  const outline = walkEdges(edges, used);
  return { outline, holes: eyelets(edges, used, [height, width, height, width]) };
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

/** By shape: shapes are never changed, and several ask for the outline of the same one. */
const known = new WeakMap<PieceShape, PieceOutline>();

/** The edge of a piece and its holes, clockwise, within (0, 0) to (width, height). */
export function pieceOutline(piece: PieceShape): PieceOutline {
  const found = known.get(piece) ?? drawn(piece);
  known.set(piece, found);
  return found;
}

function drawn(piece: PieceShape): PieceOutline {
  switch (piece.shape) {
    case 'rectangle':
      return roundedRectangle(piece);
    case 'ellipse':
      return { outline: ellipse(0, 0, piece.width, piece.height), holes: [] };
    case 'banner':
      return { outline: banner(piece), holes: [] };
    case 'tag':
      return tag(piece);
  }
}
