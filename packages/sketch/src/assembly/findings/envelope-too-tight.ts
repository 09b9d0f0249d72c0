import { CARD_BASE } from '../../batch/recipe.js';
import type { CardCheck, CardSuspect } from '../card-finding.js';
import { type Envelope, namedEnvelope } from '../envelope-fit.js';
import { highestPlace } from '../face-stack.js';

const SEVERITY = {
  'too small': 'stops the build',
  strained: 'looks wrong',
  tight: 'worth knowing',
} as const;

/**
 * The envelope that the sketch names is smaller than the card, or leaves less than the card is thick, or less than is usual; mended by
 * the smallest usual one that leaves enough.
 */
export const envelopeTooTight: CardCheck = ({ sketch, envelopes, front }) => {
  const { own, smallest } = envelopes;
  if (!own || own.fit === 'roomy') return [];
  const place = highestPlace(sketch, front);
  const suspect = (envelope: Envelope | null): CardSuspect => ({
    code: 'envelope-too-tight',
    severity: SEVERITY[own.fit as keyof typeof SEVERITY],
    piece: CARD_BASE,
    place: place && own.fit === 'strained' ? { face: 'front', ...place } : null,
    amount: Math.ceil(own.missing),
    fixes: envelope ? [[{ do: 'card', card: { ...sketch.card, envelope } }]] : [],
  });
  return [suspect(smallest ? namedEnvelope(smallest) : null)];
};
