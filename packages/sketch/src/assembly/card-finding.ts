import type { PlacedBounds } from '@trimwell/geometry';
import type { Severity } from '../check/finding.js';
import type { Edit, Face } from '../model/sketch.js';
import type { LetterReason, SurchargeReason } from '../post/letter-class.js';
import type { CardFacts } from './card-facts.js';

/** Everything that is looked for in a card as a whole; each has a file of its own in `findings`. */
export type CardFindingCode =
  | 'cannot-be-cut'
  | 'cut-off-the-ruler'
  | 'held-too-little'
  | 'envelope-too-tight'
  | 'no-usual-envelope'
  | 'fold-across-grain'
  | 'dark-inside'
  | 'no-letter'
  | 'dearer-letter'
  | 'letter-surcharge';

/** Where on the card something is: the box around it on its face, in floating ticks. */
export interface CardPlace extends PlacedBounds {
  readonly face: Face;
}

/** What the post of a country takes the card for, by name; `class` is null when it takes no letter like it. */
export interface FoundLetter {
  readonly country: string;
  readonly class: string | null;
  readonly cheapest: string;
}

/** Something about the card as a whole that its maker should look at, with the edits that mend it where there are some. */
export interface CardFinding {
  readonly code: CardFindingCode;
  readonly severity: Severity;
  /** The piece that it is about, or `CARD_BASE` for the card. */
  readonly piece: string;
  /** The paper that it is about, where there is one. */
  readonly paper?: string;
  readonly place: CardPlace | null;
  /** The figure that matters, in ticks: what is missing, what is over; of `cannot-be-cut` how many; 0 where none says anything. */
  readonly amount: number;
  /** Why a post takes it for more, or not at all. */
  readonly reasons: readonly (LetterReason | SurchargeReason)[];
  /** Of findings about post. */
  readonly letter?: FoundLetter;
  /** One step that takes the finding away and brings none that is as bad; empty when there is none. */
  readonly fix: readonly Edit[];
}

/** A finding whose ways to mend it, the best first, have not been tried yet. */
export interface CardSuspect extends Omit<CardFinding, 'fix' | 'reasons'> {
  readonly reasons?: CardFinding['reasons'];
  readonly fixes: readonly (readonly Edit[])[];
}

/** Looks for one kind of finding in a card. */
export type CardCheck = (facts: CardFacts) => readonly CardSuspect[];
