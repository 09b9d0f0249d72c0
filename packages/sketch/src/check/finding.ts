import type { Length } from '@trimwell/geometry';
import type { Edge, Edit, Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';

/** How bad a finding is, worst first: it stops the build, it looks wrong, or it is worth knowing. */
export const SEVERITIES = ['stops the build', 'looks wrong', 'worth knowing'] as const;
export type Severity = (typeof SEVERITIES)[number];

/** Everything that is looked for; each has a file of its own beside this one. */
export type FindingCode =
  | 'radius-too-large'
  | 'punch-too-deep'
  | 'print-must-turn'
  | 'off-the-card'
  | 'print-on-its-side'
  | 'hidden'
  | 'uneven-reveal'
  | 'mat-out-of-true'
  | 'short-punched-edge'
  | 'part-repeats'
  | 'overlap-too-small'
  | 'corners-not-concentric'
  | 'too-narrow'
  | 'off-the-ruler'
  | 'place-off-the-ruler'
  | 'punched-edge-covered';

/** Something about a piece that its maker should look at, with the edits that mend it where there are some. */
export interface Finding {
  readonly code: FindingCode;
  readonly severity: Severity;
  readonly piece: string;
  /** The other piece that it is about, where there is one. */
  readonly other?: string;
  /** The edge that it is about, where there is one. */
  readonly edge?: Edge;
  /** The figure that matters: how far off, which rest; in ticks. */
  readonly amount: Length;
  /** One step that takes the finding away and brings none that is as bad; empty when there is none. */
  readonly fix: readonly Edit[];
}

/** A finding whose ways to mend it, the best first, have not been tried yet. */
export interface Suspect extends Omit<Finding, 'fix'> {
  readonly fixes: readonly (readonly Edit[])[];
}

/** Looks for one kind of finding at one piece. */
export type Check = (field: CheckField, piece: Piece) => Suspect | readonly Suspect[] | null;

/** Two findings of one piece and one kind are the same one, before and after a change. A piece may lap over several others. */
export function kindOf({ code, edge, other }: KindOf): string {
  const at = code === 'overlap-too-small' ? other : edge;
  return at === undefined ? code : `${code} ${at}`;
}

interface KindOf {
  readonly code: string;
  readonly edge?: Edge;
  readonly other?: string;
}
