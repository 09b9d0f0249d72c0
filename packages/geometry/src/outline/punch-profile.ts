import type { Length } from '../length/length.js';

/** The profiles that can be drawn; each is defined in `profile-shapes.ts`. */
export const PUNCH_PROFILES = [
  'scallop',
  'wave',
  'zigzag',
  'perforated',
  'eyelet scallop',
  'arch',
  'step',
  'deckle',
] as const;

/** What a border punch leaves of an edge: its profile, how far one repeat goes along the edge, how deep it cuts in. */
export interface PunchProfile {
  readonly profile: (typeof PUNCH_PROFILES)[number];
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

/** A profile as numbers and as steps; one repeat begins at `start`, and is as long as the punch says. */
export interface ProfileShape {
  /** Depth at `along`, which lies in the repeat. One value everywhere, joints of repeats alike from both sides. */
  readonly depth: (along: number, start: number, punch: PunchProfile) => number;
  /** The part of the repeat between `from` and `to`, from the profile's point at `from`, which is not stated. */
  readonly steps: (from: number, to: number, start: number, punch: PunchProfile) => readonly EdgeStep[];
}
