import { flatCardBase, outlineArea, pieceOutline, TICKS_PER_MM } from '@trimwell/geometry';
import { placedPiece } from '../batch/hidden-centres.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { gsmOf } from './estimate-gsm.js';

const SQUARE_TICKS_PER_SQUARE_METRE = (1_000 * TICKS_PER_MM) ** 2;

/** The paper that one card holds of one paper or mix: area in square ticks, weight in grams. */
export interface PaperShare {
  /** The id of a paper or a mix. */
  readonly from: string;
  readonly area: number;
  readonly grams: number;
  /** True when no paper of it says how heavy it is. */
  readonly estimated: boolean;
}

/** What the papers of cards weigh, in grams. Glue, foam and what is tied on come on top and are not known. */
export interface CardWeight {
  readonly shares: readonly PaperShare[];
  readonly grams: number;
  readonly estimated: boolean;
}

/** The area of all copies of `piece` on one card, finished, in square ticks; its holes and punched edges are cut off. */
export function pieceArea(sketch: Sketch, piece: Piece): number {
  const { outline, holes } = pieceOutline(placedPiece(sketch, piece).shape);
  return piece.perCard * (outlineArea(outline) - holes.reduce((sum, hole) => sum + outlineArea(hole), 0));
}

/**
 * The paper of one card and its weight (area x g/m2), the base first and then in the order of the pieces. A mix weighs what its
 * heaviest paper does. Centres that are cut out count as if they stayed, so it is never more.
 */
export function cardWeight(sketch: Sketch): CardWeight {
  const base = flatCardBase(sketch.card);
  const areas = new Map([[sketch.card.base, base.width * base.height]]);
  for (const piece of sketch.pieces) areas.set(piece.from, (areas.get(piece.from) ?? 0) + pieceArea(sketch, piece));
  const shares = [...areas].map(([from, area]): PaperShare => {
    const { gsm, estimated } = gsmOf(sketch, from);
    return { from, area, grams: (area / SQUARE_TICKS_PER_SQUARE_METRE) * gsm, estimated };
  });
  return {
    shares,
    grams: shares.reduce((sum, { grams }) => sum + grams, 0),
    estimated: shares.some(({ estimated }) => estimated),
  };
}

/** `weight` of so many cards. */
export function batchWeight({ shares, grams, estimated }: CardWeight, cards: number): CardWeight {
  const times = shares.map((share) => ({ ...share, area: share.area * cards, grams: share.grams * cards }));
  return { shares: times, grams: grams * cards, estimated };
}

/** The weight in grams of a plain sheet of that size, in ticks. */
export function sheetWeight(area: number, gsm: number): number {
  return (area / SQUARE_TICKS_PER_SQUARE_METRE) * gsm;
}

/** The usual paper of an envelope: 100 g/m2 and 0.13 mm (common practice, no source). */
export const ENVELOPE_PAPER = { gsm: 100, caliper: 0.13 * TICKS_PER_MM } as const;
