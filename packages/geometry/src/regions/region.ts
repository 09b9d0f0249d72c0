import { Clipper64, ClipType, FillRule, type Path64, PathType } from 'clipper2-ts';
import { flattenOutline } from '../outline/flatten.js';
import type { Outline, OutlineStep } from '../outline/outline.js';
import { isPunched } from '../outline/punched-shape.js';
import { pieceOutline } from '../outline/shapes.js';
import type { Point } from '../rect/rect.js';
import type { PlacedBounds } from '../stack/placed-bounds.js';
import { FACE, intoFrame, type PlacedPiece } from '../stack/placed-piece.js';

/**
 * Whole units of a region's corners in one tick: 1,040,384 in an inch. A power of two, so that every tick and every half tick
 * is a corner exactly; up to 2 m from the corner of the face, products of two coordinates stay below 2^53.
 */
export const UNITS_PER_TICK = 64;

/** How far a curve may be from the chords that stand for it, in ticks: 1/80 mm, a tenth of the thinnest paper. */
export const CURVE_ERROR = 8;

/** Most chords of one arc or curve: enough for an oval of 2 m. */
const MOST_CHORDS = 512;

/**
 * A part of a face, in whole units (`UNITS_PER_TICK`): outer rings and holes, which run the other way round. Rings do not
 * cross each other or themselves. Nothing at all has no rings.
 */
export interface Region {
  readonly rings: readonly (readonly Point[])[];
}

export const NOTHING: Region = { rings: [] };

/** Chords that keep a step of an outline within `CURVE_ERROR`. */
function chordsOf(from: Point, step: OutlineStep): number {
  if (step.kind === 'line') return 1;
  if (step.kind === 'arc') {
    // The sagitta of a chord over 1/n of an angle t is r (1 - cos(t / 2n)), at most r t^2 / (8 n^2).
    const half = Math.min(1, Math.hypot((step.to.x - from.x) / step.radiusX, (step.to.y - from.y) / step.radiusY) / 2);
    const angle = 2 * Math.asin(half);
    return Math.ceil(angle * Math.sqrt(Math.max(step.radiusX, step.radiusY) / (8 * CURVE_ERROR)));
  }
  // A chord over 1/n of a parameter is within max |B''| / (8 n^2); a cubic's B'' lies between those of its two ends.
  const { control1: a, control2: b, to } = step;
  const bend = (p: Point, q: Point, r: Point): number => 6 * Math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y);
  return Math.ceil(Math.sqrt(Math.max(bend(from, a, b), bend(a, b, to)) / (8 * CURVE_ERROR)));
}

function pointsOf(outline: Outline): readonly Point[] {
  let from = outline.start;
  return outline.steps.flatMap((step) => {
    const start = from;
    from = step.to;
    const chords = Math.min(MOST_CHORDS, Math.max(1, chordsOf(start, step)));
    return flattenOutline({ start, steps: [step] }, chords).slice(1);
  });
}

function inUnits(points: readonly Point[], place: (point: Point) => Point): Path64 {
  return points.map((point) => {
    const { x, y } = place(point);
    return { x: Math.round(x * UNITS_PER_TICK), y: Math.round(y * UNITS_PER_TICK) };
  });
}

/** Places by piece: pieces are never changed, so each is made once. */
const known = new WeakMap<PlacedPiece, Region>();

/**
 * What `piece` covers of its face: its true outline, rounded, punched, tilted and oval as it is, less its holes. Exact for straight
 * edges that are not tilted; a curve is within `CURVE_ERROR` of it, a tilted corner within a unit.
 */
export function regionOf(piece: PlacedPiece): Region {
  const found = known.get(piece);
  if (found) return found;
  const { outline, holes } = pieceOutline(piece.shape);
  const place = intoFrame(FACE, piece);
  const rings = [outline, ...holes].map((each) => inUnits(pointsOf(each), place));
  const plain = holes.length === 0 && !isPunched(piece.shape);
  const region = plain ? { rings } : merged(rings, [], ClipType.Union, FillRule.EvenOdd);
  known.set(piece, region);
  return region;
}

function merged(
  subject: Region['rings'],
  clip: Region['rings'],
  type: ClipType,
  rule: FillRule = FillRule.NonZero,
): Region {
  const clipper = new Clipper64();
  // Rings that come out share no edge, so that no sliver stays between two that touch.
  clipper.preserveCollinear = false;
  for (const ring of subject) clipper.addPath(ring as Path64, PathType.Subject);
  for (const ring of clip) clipper.addPath(ring as Path64, PathType.Clip);
  const rings: Path64[] = [];
  if (!clipper.execute(type, rule, rings)) throw new RangeError('A region has more corners than can be worked with.');
  return { rings };
}

/** All that any of `regions` covers. */
export function unite(regions: readonly Region[]): Region {
  const [only, ...others] = regions.filter(({ rings }) => rings.length > 0);
  if (!only) return NOTHING;
  if (others.length === 0) return only;
  return merged(
    [only, ...others].flatMap(({ rings }) => rings),
    [],
    ClipType.Union,
  );
}

/** What both cover. */
export function share(one: Region, other: Region): Region {
  return one.rings.length === 0 || other.rings.length === 0
    ? NOTHING
    : merged(one.rings, other.rings, ClipType.Intersection);
}

/** What `one` covers and `other` does not. */
export function without(one: Region, other: Region): Region {
  return one.rings.length === 0 || other.rings.length === 0 ? one : merged(one.rings, other.rings, ClipType.Difference);
}

/** Twice the area of a ring in square units, by the shoelace formula about its first corner; holes count against it. */
function twiceArea(ring: readonly Point[]): number {
  const [start] = ring;
  if (!start) return 0;
  let sum = 0;
  for (let at = 1; at + 1 < ring.length; at += 1) {
    const [a, b] = [ring[at] as Point, ring[at + 1] as Point];
    sum += (a.x - start.x) * (b.y - start.y) - (b.x - start.x) * (a.y - start.y);
  }
  return sum;
}

/** The area of `region`, in square ticks. */
export function regionArea({ rings }: Region): number {
  return Math.abs(rings.reduce((sum, ring) => sum + twiceArea(ring), 0)) / 2 / UNITS_PER_TICK ** 2;
}

/** The parts of `region` that do not touch each other, each with its holes. */
export function partsOf(region: Region): readonly Region[] {
  const outer = region.rings.filter((ring) => twiceArea(ring) > 0);
  return outer.length < 2 ? [region] : outer.map((ring) => share({ rings: [ring] }, region));
}

/** The length of all its edges, holes too, in ticks. */
export function regionPerimeter({ rings }: Region): number {
  const edge = (ring: readonly Point[], at: number): number => {
    const [from, to] = [ring[at] as Point, ring[(at + 1) % ring.length] as Point];
    return Math.hypot(to.x - from.x, to.y - from.y);
  };
  return rings.reduce((sum, ring) => sum + ring.reduce((all, _, at) => all + edge(ring, at), 0), 0) / UNITS_PER_TICK;
}

/** The rings in floating ticks, for drawing: outer rings and holes, to be filled by even and odd. */
export function regionRings({ rings }: Region): readonly (readonly Point[])[] {
  return rings.map((ring) => ring.map(({ x, y }) => ({ x: x / UNITS_PER_TICK, y: y / UNITS_PER_TICK })));
}

/** The upright box around `region`, in floating ticks; null around nothing. */
export function regionBounds({ rings }: Region): PlacedBounds | null {
  if (rings.length === 0) return null;
  const box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };
  for (const ring of rings)
    for (const { x, y } of ring) {
      box.left = Math.min(box.left, x / UNITS_PER_TICK);
      box.right = Math.max(box.right, x / UNITS_PER_TICK);
      box.top = Math.min(box.top, y / UNITS_PER_TICK);
      box.bottom = Math.max(box.bottom, y / UNITS_PER_TICK);
    }
  return box;
}
