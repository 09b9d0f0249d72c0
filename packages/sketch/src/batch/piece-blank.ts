import { blankSize, type Length, ticks } from '@trimwell/geometry';
import type { Piece, Sketch } from '../model/sketch.js';

/** The blank id of the opened-flat card base. */
export const CARD_BASE = 'card-base';

/** The blank of `piece`: its untilted size, plus the bite of the punch on each punched edge. */
export function pieceBlank(sketch: Sketch, piece: Piece): { readonly width: Length; readonly height: Length } {
  const bite = (id: string | undefined): Length => sketch.punches.find((punch) => punch.id === id)?.bite ?? ticks(0);
  const { top, right, bottom, left } = piece.punched;
  return blankSize({
    width: piece.width,
    height: piece.height,
    shape: piece.shape,
    bites: { top: bite(top), right: bite(right), bottom: bite(bottom), left: bite(left) },
  });
}
