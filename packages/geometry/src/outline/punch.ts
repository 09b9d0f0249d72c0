import type { Length } from '../length/length.js';

/** What a border punch leaves of an edge: its profile, how far one repeat goes along the edge, how deep it cuts in. */
export interface PunchProfile {
  readonly profile: 'scallop' | 'wave' | 'zigzag' | 'perforated';
  readonly repeat: Length;
  readonly depth: Length;
}

/** A place on an edge: `along` it from its start, `in` from the finished edge towards the middle of the piece. */
export interface EdgePoint {
  readonly along: number;
  readonly in: number;
}

/** One step of a punched edge, in the edge's own directions; an arc bulges out of the piece or into it. */
export type EdgeStep =
  | { readonly kind: 'line'; readonly to: EdgePoint }
  | {
      readonly kind: 'arc';
      readonly to: EdgePoint;
      readonly radiusAlong: number;
      readonly radiusIn: number;
      readonly outward: boolean;
    }
  | { readonly kind: 'curve'; readonly control1: EdgePoint; readonly control2: EdgePoint; readonly to: EdgePoint };

/** How the repeats of a punch meet an edge. */
export interface Repeats {
  /** Whole repeats on the edge. */
  readonly whole: number;
  /** What is left at each of the two ends, in ticks; 0 when the repeats fill the edge exactly. */
  readonly rest: number;
}

/** Whole repeats along an edge of `length`, centred on it, and the rest at each end. */
export function repeatsAlong(length: Length, { repeat }: PunchProfile): Repeats {
  const number = Math.max(1, Math.round(length / repeat));
  const whole = number * repeat <= length ? number : Math.max(0, number - 2);
  return { whole, rest: (length - whole * repeat) / 2 };
}

/**
 * Where repeats begin on an edge of `length`. The pattern is symmetrical about the middle of the edge: a repeat lies
 * on the middle when the nearest number of repeats is odd, a joint between two when it is even. So a whole number of
 * repeats fills the edge exactly, and otherwise both ends hold the same part of a repeat.
 */
function firstStart(length: number, repeat: number): number {
  const number = Math.max(1, Math.round(length / repeat));
  return length / 2 - (number / 2) * repeat - repeat;
}

/** Depth of a scallop `off` from the middle of its repeat: an arc of a circle, or of an ellipse when deeper than half a repeat. */
function scallopRadii(repeat: number, depth: number): { readonly along: number; readonly in: number } {
  const half = repeat / 2;
  if (depth >= half) return { along: half, in: depth };
  const radius = (half * half + depth * depth) / (2 * depth);
  return { along: radius, in: radius };
}

function scallopDepth(off: number, repeat: number, depth: number): number {
  const radii = scallopRadii(repeat, depth);
  const share = Math.min(1, Math.abs(off) / radii.along);
  return radii.in * (1 - Math.sqrt(1 - share * share));
}

type Lower = (from: number, to: number, start: number, punch: PunchProfile) => readonly EdgeStep[];

/** The part of one scallop from `from` to `to`, its repeat beginning at `start`. */
const scallop: Lower = (_from, to, start, { repeat, depth }) => {
  const radii = scallopRadii(repeat, depth);
  const end: EdgePoint = { along: to, in: scallopDepth(to - start - repeat / 2, repeat, depth) };
  return [{ kind: 'arc', to: end, radiusAlong: radii.along, radiusIn: radii.in, outward: true }];
};

const zigzag: Lower = (from, to, start, { repeat, depth }) => {
  const middle = start + repeat / 2;
  const end: EdgeStep = { kind: 'line', to: { along: to, in: zigzagDepth(to - middle, repeat, depth) } };
  return from < middle && middle < to ? [{ kind: 'line', to: { along: middle, in: 0 } }, end] : [end];
};

function zigzagDepth(off: number, repeat: number, depth: number): number {
  return (depth * Math.abs(off)) / (repeat / 2);
}

/** Share of a half wave at which a cubic's handles come nearest to a cosine. */
const HANDLE = 0.3642;

interface Cubic {
  readonly points: readonly [EdgePoint, EdgePoint, EdgePoint, EdgePoint];
}

/** A half wave from `start`: down from a joint to the outermost point, or back. */
function halfWave(start: number, length: number, from: number, to: number): Cubic {
  const point = (along: number, depth: number): EdgePoint => ({ along, in: depth });
  return {
    points: [
      point(start, from),
      point(start + HANDLE * length, from),
      point(start + (1 - HANDLE) * length, to),
      point(start + length, to),
    ],
  };
}

function between(a: EdgePoint, b: EdgePoint, t: number): EdgePoint {
  return { along: a.along + (b.along - a.along) * t, in: a.in + (b.in - a.in) * t };
}

/** The part of `cubic` before and after `t` (de Casteljau). */
function splitCubic({ points: [a, b, c, d] }: Cubic, t: number): readonly [Cubic, Cubic] {
  const [ab, bc, cd] = [between(a, b, t), between(b, c, t), between(c, d, t)];
  const [abc, bcd] = [between(ab, bc, t), between(bc, cd, t)];
  const middle = between(abc, bcd, t);
  return [{ points: [a, ab, abc, middle] }, { points: [middle, bcd, cd, d] }];
}

function alongAt({ points: [a, b, c, d] }: Cubic, t: number): number {
  const u = 1 - t;
  return u * u * u * a.along + 3 * u * u * t * b.along + 3 * u * t * t * c.along + t * t * t * d.along;
}

/** The parameter at which `cubic`, which only ever goes forward, is `along`: found by halving, to the last bit. */
function parameterAt(cubic: Cubic, along: number): number {
  let [low, high] = [0, 1];
  for (let n = 0; n < 52; n += 1) {
    const middle = (low + high) / 2;
    if (alongAt(cubic, middle) < along) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** `cubic` between `from` and `to`, or null when it lies outside. */
function clipped(cubic: Cubic, from: number, to: number): Cubic | null {
  const [start, , , end] = cubic.points;
  if (end.along <= from || start.along >= to) return null;
  const tail = start.along < from ? splitCubic(cubic, parameterAt(cubic, from))[1] : cubic;
  return end.along > to ? splitCubic(tail, parameterAt(tail, to))[0] : tail;
}

const wave: Lower = (from, to, start, { repeat, depth }) => {
  const half = repeat / 2;
  return [halfWave(start, half, depth, 0), halfWave(start + half, half, 0, depth)].flatMap((cubic) => {
    const part = clipped(cubic, from, to);
    if (!part) return [];
    const [, control1, control2, end] = part.points;
    return [{ kind: 'curve', control1, control2, to: end } as const];
  });
};

function perforatedDepth(off: number, repeat: number, depth: number): number {
  const share = Math.min(1, Math.abs(off) / (repeat / 4));
  return depth * Math.sqrt(1 - share * share);
}

/** A bite of half the repeat in the middle of it. */
const perforated: Lower = (from, to, start, { repeat, depth }) => {
  const [begin, end] = [Math.max(from, start + repeat / 4), Math.min(to, start + (3 * repeat) / 4)];
  if (begin >= end) return [{ kind: 'line', to: { along: to, in: 0 } }];
  const before: EdgeStep[] = from < begin ? [{ kind: 'line', to: { along: begin, in: 0 } }] : [];
  const after: EdgeStep[] = end < to ? [{ kind: 'line', to: { along: to, in: 0 } }] : [];
  const last: EdgePoint = {
    along: end,
    in: after.length > 0 ? 0 : perforatedDepth(end - start - repeat / 2, repeat, depth),
  };
  return [...before, { kind: 'arc', to: last, radiusAlong: repeat / 4, radiusIn: depth, outward: false }, ...after];
};

const PROFILES: Readonly<Record<PunchProfile['profile'], Lower>> = { scallop, wave, zigzag, perforated };

function depthAt(along: number, start: number, punch: PunchProfile): number {
  const off = along - start - punch.repeat / 2;
  switch (punch.profile) {
    case 'scallop':
      return scallopDepth(off, punch.repeat, punch.depth);
    case 'zigzag':
      return zigzagDepth(off, punch.repeat, punch.depth);
    case 'perforated':
      return perforatedDepth(off, punch.repeat, punch.depth);
    case 'wave': {
      const half = punch.repeat / 2;
      const cubic = off < 0 ? halfWave(start, half, punch.depth, 0) : halfWave(start + half, half, 0, punch.depth);
      return splitCubic(cubic, parameterAt(cubic, along))[0].points[3].in;
    }
  }
}

/** How far inside the finished edge of `length` the profile runs at `along`, repeats being centred on the whole edge. */
export function punchDepth(length: number, along: number, punch: PunchProfile): number {
  const first = firstStart(length, punch.repeat);
  return depthAt(along, first + Math.floor((along - first) / punch.repeat) * punch.repeat, punch);
}

/**
 * A punched edge of `length` between `from` and `to` (what its corners leave of it): the steps from the profile's point
 * at `from` to its point at `to`. The outermost points touch the finished edge, the innermost lie `depth` inside. Repeats
 * are centred on the whole edge; parts of repeats at the ends are exact parts of the same curves.
 */
export function punchedEdge(length: number, from: number, to: number, punch: PunchProfile): readonly EdgeStep[] {
  const { repeat } = punch;
  const steps: EdgeStep[] = [];
  const least = repeat * 1e-9;
  const first = firstStart(length, repeat);
  let at = from;
  let start = first + Math.floor((from - first) / repeat) * repeat;
  if (start + repeat <= from + least) start += repeat;
  while (at < to - least) {
    const end = Math.min(start + repeat, to);
    steps.push(...PROFILES[punch.profile](at, end, start, punch));
    at = end;
    start += repeat;
  }
  return steps;
}
