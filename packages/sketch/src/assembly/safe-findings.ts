import type { Finding } from '../check/finding.js';
import { checkSketch } from '../check/findings.js';
import { concernsCard } from '../check/whole-card.js';
import { type CardFacts, cardFacts } from './card-facts.js';
import { rank, ranksOf, suspectsOf, wasAsBad } from './card-findings.js';

/**
 * What is found in the pieces of a card, as `checkSketch` does, but mended only by what brings nothing as bad about the card as a
 * whole either: a piece made wider may no longer go into the envelope. Nothing is planned anew for that.
 */
export function safeFindings(facts: CardFacts): readonly Finding[] {
  const { batch: _batch, ...options } = facts.options;
  const { sketch } = facts;
  const known = ranksOf(suspectsOf({ ...facts, options }));
  return checkSketch(sketch, (after, suspect) => {
    if (!concernsCard(sketch, after, options.post ?? null)) return true;
    return suspectsOf(cardFacts(after, options)).every(
      (other) => rank(other) > rank(suspect) || wasAsBad(known, other),
    );
  });
}
