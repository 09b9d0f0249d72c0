import type { Length, Rect } from '@trimwell/geometry';
import type { Sketch } from '../model/sketch.js';
import { batchRecipe, usefulCentres } from './batch-recipe.js';
import { coversOf } from './hidden-centres.js';
import { partsFrom, rulerStep } from './recipe.js';

/** A centre that the batch could use: what it is cut out of, its size, what hides it, and what could be cut from it. */
export interface HiddenCentreOffer {
  readonly piece: string;
  readonly width: Length;
  readonly height: Length;
  /** Where it lies on the piece, from its untilted top left corner. */
  readonly place: Rect;
  /** The papers that the piece is cut from and some blank that fits as well. */
  readonly papers: readonly string[];
  /** Pieces that hide it, in gluing order. */
  readonly coveredBy: readonly string[];
  /** Pieces of one of those papers that fit into it, in gluing order. */
  readonly fits: readonly string[];
}

/**
 * What switching hidden centres on would give, in gluing order, whether they are on or not. Only centres that some other
 * piece of the same paper fits into; whether they save a sheet is what the plan says.
 */
export function hiddenCentreOffers(sketch: Sketch): readonly HiddenCentreOffer[] {
  const recipe = batchRecipe(sketch);
  const step = rulerStep(sketch.unit);
  return usefulCentres(sketch, recipe).map((centre): HiddenCentreOffer => {
    const { piece, place } = centre;
    const useful = partsFrom(recipe, piece, place);
    const all = new Set(useful.flatMap(({ fits }) => fits));
    return {
      piece,
      width: place.width,
      height: place.height,
      place,
      papers: useful.map(({ paper }) => paper),
      coveredBy: coversOf(sketch, centre, { step }),
      fits: recipe.parts.filter((part) => all.has(part)).map(({ blank }) => blank),
    };
  });
}
