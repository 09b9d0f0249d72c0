import { type Size, ticks } from '@trimwell/geometry';
import { isLifted } from '../check/levels.js';
import type { Sketch } from '../model/sketch.js';
import { type LetterAnswer, letterClassOf, type PostItem } from '../post/letter-class.js';
import { letterLimits, type PostCountry } from '../post/letter-limits.js';
import type { CardThickness } from './card-thickness.js';
import { type CardWeight, ENVELOPE_PAPER, sheetWeight } from './card-weight.js';
import type { CardEnvelopes } from './envelope-fit.js';

/** Sheets of its own paper that an envelope is thick where it has no seam: two sides and a flap (common practice, no source). */
const ENVELOPE_SHEETS = 3;

/** A card in its envelope, as it goes into the post. */
export interface PostedCard extends PostItem {
  /** True when its thickness or its weight rests on an estimate; what the envelope itself adds always does. */
  readonly estimated: boolean;
}

/** The envelope that the card would be posted in: its own, if that takes it, else the smallest usual one, else one cut from paper. */
export function postedIn({ own, smallest, cut }: CardEnvelopes): Size {
  if (own && own.fit !== 'too small') return own.envelope;
  return smallest ?? cut.inside;
}

/**
 * The card in its envelope. An envelope is taken for one that is folded diagonally without seams, a square of side
 * (w + h) / sqrt 2, so that its paper is (w + h)^2 / 2; it is as thick as three sheets of its paper.
 */
export function postedCard(
  sketch: Sketch,
  envelopes: CardEnvelopes,
  thickness: CardThickness,
  weight: CardWeight,
): PostedCard {
  const { width, height } = postedIn(envelopes);
  return {
    width,
    height,
    thickness: ticks(Math.round(thickness.height + ENVELOPE_SHEETS * ENVELOPE_PAPER.caliper)),
    weight: weight.grams + sheetWeight((width + height) ** 2 / 2, ENVELOPE_PAPER.gsm),
    uneven: sketch.pieces.some((piece) => isLifted(sketch, piece)),
    estimated: thickness.estimated || weight.estimated,
  };
}

/** The country of that code (ISO 3166-1, two letters) in the table of letter limits; undefined when it has none. */
export function postCountry(code: string): PostCountry | undefined {
  return letterLimits().countries.find((country) => country.code === code);
}

/** What the posts take the card as: in one country, or in all of the table in its order. */
export function postAnswers(item: PostItem, code?: string): readonly LetterAnswer[] {
  return letterLimits()
    .countries.filter((country) => code === undefined || country.code === code)
    .map((country) => letterClassOf(item, country));
}
