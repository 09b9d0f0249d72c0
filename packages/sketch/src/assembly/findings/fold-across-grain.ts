import { CARD_BASE } from '../../batch/recipe.js';
import type { CardCheck } from '../card-finding.js';

/**
 * The base is folded across the grain of its paper, as far as that is known: it folds less smoothly and may crack, which looks wrong
 * where the paper is heavy or dark. What would mend it, another sheet or another fold, is another card.
 */
export const foldAcrossGrain: CardCheck = ({ sketch, fold }) => {
  if (fold.grain !== 'across' && fold.grain !== 'both') return [];
  return [
    {
      code: 'fold-across-grain',
      severity: fold.heavy || fold.dark ? 'looks wrong' : 'worth knowing',
      piece: CARD_BASE,
      paper: sketch.card.base,
      place: null,
      amount: fold.flat.score?.at ?? 0,
      fixes: [],
    },
  ];
};
