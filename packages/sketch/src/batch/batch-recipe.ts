import { rulerStep } from '../model/ruler-steps.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { type HiddenCentre, hiddenCentres } from './hidden-centres.js';
import { type BatchRecipe, partsFrom, plainRecipe } from './recipe.js';

/** The hidden centres of `sketch` that a blank of a paper of the same piece fits into. */
export function usefulCentres(sketch: Sketch, recipe: Pick<BatchRecipe, 'papers' | 'parts'>): readonly HiddenCentre[] {
  const step = rulerStep(sketch.unit);
  // Not even the whole piece would do for most, so that little has to be looked at while something is dragged.
  const wanted = (piece: Piece): boolean => partsFrom(recipe, piece.id, piece).length > 0;
  return hiddenCentres(sketch, { step, wanted }).filter(
    ({ piece, place }) => partsFrom(recipe, piece, place).length > 0,
  );
}

/** The recipe of `sketch`, with its hidden centres where its batch has them switched on. */
export function batchRecipe(sketch: Sketch): BatchRecipe {
  const recipe = plainRecipe(sketch);
  if (!sketch.batch.hiddenCentres) return recipe;
  const centres = usefulCentres(sketch, recipe);
  return { ...recipe, centres: centres.map(({ piece, place: { width, height } }) => ({ piece, width, height })) };
}
