import { curvedProfile, straightProfile, type Turn } from './profile-curves.js';
import type { EdgePoint, EdgeStep, ProfileShape, PunchProfile } from './punch-profile.js';

/** Radii of a scallop: a circle's, or an ellipse's when it is deeper than half its repeat. */
function scallopRadii({ repeat, depth }: PunchProfile): { readonly along: number; readonly in: number } {
  const half = repeat / 2;
  if (depth >= half) return { along: half, in: depth };
  const radius = (half * half + depth * depth) / (2 * depth);
  return { along: radius, in: radius };
}

/** One round tongue to a repeat. */
const scallop: ProfileShape = {
  depth: (along, start, punch) => {
    const radii = scallopRadii(punch);
    const share = Math.min(1, Math.abs(along - start - punch.repeat / 2) / radii.along);
    return radii.in * (1 - Math.sqrt(1 - share * share));
  },
  steps: (_from, to, start, punch) => {
    const radii = scallopRadii(punch);
    const end: EdgePoint = { along: to, in: scallop.depth(to, start, punch) };
    return [{ kind: 'arc', to: end, radiusAlong: radii.along, radiusIn: radii.in, outward: true }];
  },
};

/** A bite of half the repeat in the middle of it. */
const perforated: ProfileShape = {
  depth: (along, start, { repeat, depth }) => {
    const share = Math.min(1, Math.abs(along - start - repeat / 2) / (repeat / 4));
    return depth * Math.sqrt(1 - share * share);
  },
  steps: (from, to, start, punch) => {
    const { repeat, depth } = punch;
    const [begin, end] = [Math.max(from, start + repeat / 4), Math.min(to, start + (3 * repeat) / 4)];
    if (begin >= end) return [{ kind: 'line', to: { along: to, in: 0 } }];
    const before: EdgeStep[] = from < begin ? [{ kind: 'line', to: { along: begin, in: 0 } }] : [];
    const after: EdgeStep[] = end < to ? [{ kind: 'line', to: { along: to, in: 0 } }] : [];
    const last: EdgePoint = { along: end, in: after.length > 0 ? 0 : perforated.depth(end, start, punch) };
    return [...before, { kind: 'arc', to: last, radiusAlong: repeat / 4, radiusIn: depth, outward: false }, ...after];
  },
};

/**
 * A pointed arch: each side is part of an ellipse whose middle lies on the far side's foot and whose radius along the
 * edge is the whole repeat, as in the equilateral arch of the masons (when the depth is 0.866 of the repeat, circles).
 */
const arch: ProfileShape = {
  depth: (along, start, { repeat, depth }) => {
    const foot = Math.min(along - start, start + repeat - along);
    const share = Math.max(0, Math.min(1, 1 - foot / repeat));
    return depth - ((2 * depth) / Math.sqrt(3)) * Math.sqrt(1 - share * share);
  },
  steps: (from, to, start, punch) => {
    const { repeat, depth } = punch;
    const middle = start + repeat / 2;
    const radii = { radiusAlong: repeat, radiusIn: (2 * depth) / Math.sqrt(3), outward: true };
    const end: EdgeStep = { kind: 'arc', to: { along: to, in: arch.depth(to, start, punch) }, ...radii };
    return from < middle && middle < to ? [{ kind: 'arc', to: { along: middle, in: 0 }, ...radii }, end] : [end];
  },
};

/** Square teeth, half tooth and half gap; their walls lean a little, so that the punch lets go of the paper. */
const STEP_TURNS: readonly Turn[] = [
  [0, 1],
  [0.22, 1],
  [0.28, 0],
  [0.72, 0],
  [0.78, 1],
  [1, 1],
];

/** As of a torn edge: highs and lows of no order, the same in every repeat. Outermost and innermost once each. */
const DECKLE_TURNS: readonly Turn[] = [
  [0, 0.55],
  [0.07, 0.1],
  [0.13, 0.7],
  [0.22, 0.3],
  [0.28, 1],
  [0.37, 0.45],
  [0.46, 0.8],
  [0.52, 0],
  [0.6, 0.5],
  [0.69, 0.2],
  [0.76, 0.9],
  [0.84, 0.35],
  [0.91, 0.62],
  [0.95, 0.4],
  [1, 0.55],
];

/** Every profile that a border punch may have. */
export const PROFILE_SHAPES: Readonly<Record<PunchProfile['profile'], ProfileShape>> = {
  scallop,
  wave: curvedProfile([
    [0, 1],
    [0.5, 0],
    [1, 1],
  ]),
  zigzag: straightProfile([
    [0, 1],
    [0.5, 0],
    [1, 1],
  ]),
  perforated,
  'eyelet scallop': scallop,
  arch,
  step: straightProfile(STEP_TURNS),
  deckle: curvedProfile(DECKLE_TURNS),
};

/** The round hole that a punch makes in each whole repeat besides its profile; null for most. */
export function eyeletOf({
  profile,
  repeat,
  depth,
}: PunchProfile): { readonly radius: number; readonly in: number } | null {
  return profile === 'eyelet scallop' ? { radius: repeat / 10, in: depth / 2 + repeat / 4 } : null;
}

/** How far from the finished edge the punch cuts into the piece at most: its depth, or the far side of its eyelets. */
export function punchReach(punch: PunchProfile): number {
  const eyelet = eyeletOf(punch);
  return eyelet ? Math.max(punch.depth, eyelet.in + eyelet.radius) : punch.depth;
}
