import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import { CARD_BASE } from '../../batch/recipe.js';
import type { Edit, Piece, Sketch } from '../../model/sketch.js';
import type { LetterAnswer } from '../../post/letter-class.js';
import type { CardCheck, CardPlace, FoundLetter } from '../card-finding.js';
import { type FaceStack, highestChain, highestPlace } from '../face-stack.js';

/** Foam as it is sold (a tape maker's page for inches, common practice for millimetres), the highest first; 0 is flat. */
const FOAMS: Readonly<Record<Sketch['unit'], readonly Length[]>> = {
  in: [inches(1 / 8), inches(1 / 16), inches(1 / 32), ticks(0)],
  mm: [millimetres(3), millimetres(2), millimetres(1), ticks(0)],
};

/** Ways to lower the highest spot: each raised piece of its stack on lower foam, or flat, the highest foam first. */
function lowered(sketch: Sketch, face: FaceStack): readonly (readonly Edit[])[] {
  const raised = highestChain(face).filter(({ raise }) => raise > 0);
  const by = (piece: Piece): readonly Edit[][] =>
    FOAMS[sketch.unit]
      .filter((foam) => foam < piece.raise)
      .map((raise) => [{ do: 'alter-piece' as const, piece: piece.id, raise }]);
  return [...raised].sort((a, b) => b.raise - a.raise).flatMap(by);
}

function highest(sketch: Sketch, front: FaceStack): CardPlace | null {
  const place = highestPlace(sketch, front);
  return place ? { face: 'front', ...place } : null;
}

function letterOf({ country, class: taken }: LetterAnswer): FoundLetter {
  const [cheapest] = country.classes;
  return { country: country.name, class: taken?.name ?? null, cheapest: cheapest?.name ?? '' };
}

/**
 * The post of the country that was asked takes the card for more than its cheapest letter, or takes no letter like it. Where only
 * its thickness is in the way, mended by lower foam at the thickest spot.
 */
export const dearerLetter: CardCheck = ({ sketch, options, post, front, inside, posted }) => {
  const [answer] = post;
  const first = answer?.refused[0];
  if (options.post === undefined || !answer || !first) return [];
  const thick = first.reasons.includes('too-thick');
  const over = posted.thickness - (first.class.most.thickness ?? posted.thickness);
  return [
    {
      code: answer.class ? 'dearer-letter' : 'no-letter',
      severity: answer.class ? 'worth knowing' : 'looks wrong',
      piece: CARD_BASE,
      place: thick ? highest(sketch, front) : null,
      amount: thick ? over : 0,
      reasons: first.reasons,
      letter: letterOf(answer),
      fixes: first.reasons.length === 1 && thick ? [...lowered(sketch, front), ...lowered(sketch, inside)] : [],
    },
  ];
};

/** The post of that country takes the card as its cheapest letter, but at a surcharge. */
export const letterSurcharge: CardCheck = ({ options, post }) => {
  const [answer] = post;
  if (options.post === undefined || !answer || answer.surcharges.length === 0) return [];
  return [
    {
      code: 'letter-surcharge',
      severity: 'worth knowing',
      piece: CARD_BASE,
      place: null,
      amount: 0,
      reasons: answer.surcharges,
      letter: letterOf(answer),
      fixes: [],
    },
  ];
};
