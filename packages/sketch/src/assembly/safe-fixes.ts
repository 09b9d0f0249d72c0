import type { Finding } from '../check/finding.js';
import { applyEdits } from '../edit/apply-edit.js';
import { type CardFacts, cardFacts, closedSize } from './card-facts.js';
import { rank, ranksOf, suspectsOf, wasAsBad } from './card-findings.js';

/** True when the ways to mend a piece may tell of the card as a whole: of its envelope or its letter, or by growing out of it. */
function matters({ sketch, options }: CardFacts, after: CardFacts['sketch']): boolean {
  if (sketch.card.envelope !== undefined || options.post !== undefined) return true;
  const [was, is] = [closedSize(sketch), closedSize(after)];
  return was.width !== is.width || was.height !== is.height;
}

/**
 * What was found in pieces, without the fixes that would bring something as bad about the card as a whole: a piece made wider may
 * no longer go into the envelope. Nothing is planned anew for that.
 */
export function safeFixes(facts: CardFacts, found: readonly Finding[]): readonly Finding[] {
  const { batch: _batch, ...options } = facts.options;
  const known = ranksOf(suspectsOf({ ...facts, options }));
  return found.map((finding): Finding => {
    if (finding.fix.length === 0) return finding;
    const after = applyEdits(facts.sketch, finding.fix);
    if (!matters(facts, after)) return finding;
    const safe = suspectsOf(cardFacts(after, options)).every(
      (other) => rank(other) > rank(finding) || wasAsBad(known, other),
    );
    return safe ? finding : { ...finding, fix: [] };
  });
}
