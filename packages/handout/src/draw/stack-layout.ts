import { inches } from '@trimwell/geometry';
import { CARD_BASE, caliperOf, type Face, type Piece, type Sketch } from '@trimwell/sketch';
import { facePaper } from './piece.js';

/** How far back an edge leans and how flat it lies, as shares of its depth: an oblique view from above. */
export const LEAN = 0.34;
export const FLAT = 0.2;
/** How many times as high as they are calipers and foam are drawn, so that a sheet of paper can be seen at all. */
const HEIGHTS = 8;
/** Foam is drawn no higher than this share of the card's height, however thick it is; its figure says the rest. */
const MOST_FOAM = 0.16;
/** Least room for letters and names, in ems, so that the slips of short-named pieces are not drawn larger than others. */
export const NAMES = 17;

export interface StackLayoutOptions {
  readonly face: Face;
  /** Height of the letters, in ticks. Default 1/5 in. */
  readonly size?: number;
  /** How far apart the slips are lifted, in ticks. Default enough for their names not to touch. */
  readonly lift?: number;
}

/** One slip of the stack, in floating ticks; y grows downwards and is 0 at the back of the base. */
export interface StackSlip {
  /** The piece's id, or `CARD_BASE`. */
  readonly id: string;
  readonly piece: Piece | null;
  readonly paper: string;
  readonly rect: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** Where the back of its upper side lies. */
  readonly level: number;
  /** How thick its paper and the foam under it are drawn. */
  readonly thick: number;
  readonly foam: number;
}

/** The slips of one face, the base first, each lifted off the one below by the same air beside its own thickness and foam. */
export function layoutStack(sketch: Sketch, options: StackLayoutOptions): readonly StackSlip[] {
  const { card } = sketch;
  const { face, size = inches(1) / 5, lift = Math.max(card.height * FLAT * 0.52, size * 2.3) } = options;
  const thickOf = (from: string): number => caliperOf(sketch, from).caliper * HEIGHTS;
  let level = 0;
  const base: StackSlip = {
    id: CARD_BASE,
    piece: null,
    paper: card.base,
    rect: { x: 0, y: 0, width: card.width, height: card.height },
    level,
    thick: thickOf(card.base),
    foam: 0,
  };
  const slips = sketch.pieces
    .filter((piece) => piece.face === face)
    .map((piece): StackSlip => {
      const thick = thickOf(piece.from);
      const foam = Math.min(piece.raise * HEIGHTS, card.height * MOST_FOAM);
      level -= lift + thick + foam;
      return { id: piece.id, piece, paper: facePaper(sketch, piece), rect: piece, level, thick, foam };
    });
  return [base, ...slips];
}
