import type { Sketch } from '@trimwell/sketch';
import type { Drawing } from '../drawing/drawing.js';
import type { CardOptions } from './card-options.js';
import { layCard } from './lay-card.js';
import { TRUE_HAND } from './piece.js';

export type { CardOptions };

/** One face of the card in true proportion: the base, then every piece on that face in gluing order. */
export function drawCard(sketch: Sketch, options: CardOptions): Drawing {
  return layCard(sketch, options, TRUE_HAND);
}
