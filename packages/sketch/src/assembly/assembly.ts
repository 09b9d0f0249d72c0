import type { ProfileStretch } from '@trimwell/geometry/regions';
import { AS_MANY_AS_POSSIBLE, type Sketch } from '../model/sketch.js';
import { letterLimits } from '../post/letter-limits.js';
import { type BuildStep, buildSteps } from './build-steps.js';
import { type AssemblyOptions, type CardFacts, cardFacts } from './card-facts.js';
import type { CardFinding } from './card-finding.js';
import { cardFindings } from './card-findings.js';
import { batchWeight, type CardWeight } from './card-weight.js';
import { faceProfile } from './face-stack.js';

/** Heights of one face seen from its lower edge and from its left one. */
export interface FaceProfiles {
  readonly fromBelow: readonly ProfileStretch[];
  readonly fromLeft: readonly ProfileStretch[];
}

/** Everything that a view of building the card shows. */
export interface Assembly extends CardFacts {
  /** Base first, then the front, then the inside. */
  readonly steps: readonly BuildStep[];
  readonly profiles: { readonly front: FaceProfiles; readonly inside: FaceProfiles };
  /** The papers of all cards; null when the batch is as many as possible and no plan says how many. */
  readonly batchWeight: CardWeight | null;
  /** What is to be watched about the card as a whole; what is wrong with single pieces `checkSketch` tells. */
  readonly findings: readonly CardFinding[];
  /** Said with every limit of a post. */
  readonly notice: string;
}

/**
 * Whether and how the card of `sketch` can be built, folded, slipped into its envelope and posted: its stack as geometry, its steps,
 * heights, weight, envelopes, fold, letter classes, and what is to be watched about all that.
 */
export function assembly(sketch: Sketch, options: AssemblyOptions = {}): Assembly {
  const facts = cardFacts(sketch, options);
  const { front, inside, weight } = facts;
  const profiles = (face: typeof front): FaceProfiles => ({
    fromBelow: faceProfile(sketch, face, 'y'),
    fromLeft: faceProfile(sketch, face, 'x'),
  });
  const { cards } = sketch.batch;
  const count = options.batch?.cards ?? (cards === AS_MANY_AS_POSSIBLE ? null : cards);
  return {
    ...facts,
    steps: buildSteps(sketch, front, inside),
    profiles: { front: profiles(front), inside: profiles(inside) },
    batchWeight: count === null ? null : batchWeight(weight, count),
    findings: cardFindings(facts),
    notice: letterLimits().notice,
  };
}
