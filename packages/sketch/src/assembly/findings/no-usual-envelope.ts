import { CARD_BASE } from '../../batch/recipe.js';
import type { CardCheck } from '../card-finding.js';

/** No envelope is named and no usual one holds the card; mended by one of its own, which is folded from a square of paper. */
export const noUsualEnvelope: CardCheck = ({ sketch, envelopes }) => {
  if (envelopes.own || envelopes.smallest) return [];
  const envelope = { name: 'cut from paper', ...envelopes.cut.inside };
  return [
    {
      code: 'no-usual-envelope',
      severity: 'worth knowing',
      piece: CARD_BASE,
      place: null,
      amount: 0,
      fixes: [[{ do: 'card', card: { ...sketch.card, envelope } }]],
    },
  ];
};
