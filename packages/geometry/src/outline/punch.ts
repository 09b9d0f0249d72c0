import type { Length } from '../length/length.js';
import { eyeletOf, PROFILE_SHAPES } from './profile-shapes.js';
import type { EdgePoint, EdgeStep, PunchProfile } from './punch-profile.js';

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

/** How far inside the finished edge of `length` the profile runs at `along`, repeats being centred on the whole edge. */
export function punchDepth(length: number, along: number, punch: PunchProfile): number {
  const first = firstStart(length, punch.repeat);
  const start = first + Math.floor((along - first) / punch.repeat) * punch.repeat;
  return PROFILE_SHAPES[punch.profile].depth(along, start, punch);
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
    steps.push(...PROFILE_SHAPES[punch.profile].steps(at, end, start, punch));
    at = end;
    start += repeat;
  }
  return steps;
}

/** A round hole beside a punched edge, in the edge's own directions. */
export interface Eyelet {
  readonly middle: EdgePoint;
  readonly radius: number;
}

/** The eyelets on an edge of `length`: one in every repeat that lies wholly between `from` and `to`. */
export function punchEyelets(length: number, from: number, to: number, punch: PunchProfile): readonly Eyelet[] {
  const eyelet = eyeletOf(punch);
  if (!eyelet) return [];
  const { repeat } = punch;
  const first = firstStart(length, repeat);
  const found: Eyelet[] = [];
  for (
    let start = first + Math.ceil((from - first) / repeat - 1e-9) * repeat;
    start + repeat <= to + repeat * 1e-9;
    start += repeat
  )
    found.push({ middle: { along: start + repeat / 2, in: eyelet.in }, radius: eyelet.radius });
  return found;
}
