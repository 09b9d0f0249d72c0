import { millimetres, type Point } from '@trimwell/geometry';
import type { BulgeVertex } from './bulge.js';
import type { SmoothCurve } from './smooth-curve.js';

/** How far the arcs that stand for a curve may lie from it, in ticks: 0.005 mm, a twentieth of a paper's thickness. */
export const ARC_TOLERANCE = millimetres(0.1) / 20;

/** Aimed at, since the distance is measured at some points only. */
const AIM = ARC_TOLERANCE / 2;
const SAMPLES = 12;
/** Halvings at most; by then the parts of the largest sheet are shorter than the tolerance. */
const DEEPEST = 24;

function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

function unitOf(vector: Point): Point {
  const length = Math.hypot(vector.x, vector.y);
  return { x: vector.x / length, y: vector.y / length };
}

/** The signed angle from `a` to `b`, clockwise on the screen. */
function angle(a: Point, b: Point): number {
  return Math.atan2(a.x * b.y - a.y * b.x, dot(a, b));
}

/** The point where two arcs of one pair meet that leave `from` and reach `to` in the given directions (equal tangents). */
function meeting(from: Point, leaving: Point, to: Point, reaching: Point): Point | null {
  const chord = minus(to, from);
  const along = dot(chord, { x: leaving.x + reaching.x, y: leaving.y + reaching.y });
  const bend = 2 * (1 - dot(leaving, reaching));
  const tangent =
    bend > 1e-9
      ? (Math.sqrt(along * along + bend * dot(chord, chord)) - along) / bend
      : dot(chord, chord) / (2 * along);
  if (!Number.isFinite(tangent) || tangent <= 0) return null;
  return {
    x: (from.x + to.x + tangent * (leaving.x - reaching.x)) / 2,
    y: (from.y + to.y + tangent * (leaving.y - reaching.y)) / 2,
  };
}

/** The arc that leaves `from` in a direction and ends at `to`: it turns by twice the angle of its chord. */
function bulgeTowards(from: Point, leaving: Point, to: Point): number {
  return -Math.tan(angle(leaving, minus(to, from)) / 2);
}

/** Distance of `point` from the circle, or the line, that the arc from `from` to `to` is part of. */
function distance(point: Point, from: Point, to: Point, bulge: number): number {
  const chord = minus(to, from);
  const length = Math.hypot(chord.x, chord.y);
  const away = minus(point, from);
  const across = (chord.x * away.y - chord.y * away.x) / length;
  const along = dot(chord, away) / length;
  if (Math.abs(bulge) < 1e-9) return Math.abs(across);
  // The centre lies on the middle of the chord, (1 - b^2) / (4 b) of the chord to its left with y up.
  const aside = (length * (1 - bulge * bulge)) / (4 * bulge);
  const radius = (length * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return Math.abs(Math.hypot(along - length / 2, across + aside) - radius);
}

/**
 * A smooth curve as circular arcs in pairs that meet without a kink and keep the curve's directions at their ends
 * (biarcs; the joint of equal tangent lengths, from memory), each pair halved until it lies within half of
 * `ARC_TOLERANCE`. The curve's end is not among the vertices.
 */
export function arcPieces(curve: SmoothCurve, start = 0, end = 1, depth = 0): readonly BulgeVertex[] {
  const [from, to] = [curve.at(start), curve.at(end)];
  const [leaving, reaching] = [unitOf(curve.towards(start)), unitOf(curve.towards(end))];
  const joint = meeting(from, leaving, to, reaching);
  if (joint && depth > 0) {
    const first = bulgeTowards(from, leaving, joint);
    // Walked backwards the second arc leaves its end, so its sense is the opposite.
    const second = -bulgeTowards(to, { x: -reaching.x, y: -reaching.y }, joint);
    const near = Array.from({ length: SAMPLES }, (_, index) => {
      const point = curve.at(start + ((end - start) * (index + 0.5)) / SAMPLES);
      return Math.min(distance(point, from, joint, first), distance(point, joint, to, second));
    });
    const turns = Math.max(Math.abs(first), Math.abs(second));
    if (turns < 1 && Math.max(...near) <= AIM)
      return [
        { ...from, bulge: first },
        { ...joint, bulge: second },
      ];
  }
  if (depth >= DEEPEST) return [{ ...from, bulge: 0 }];
  const middle = (start + end) / 2;
  return [...arcPieces(curve, start, middle, depth + 1), ...arcPieces(curve, middle, end, depth + 1)];
}
