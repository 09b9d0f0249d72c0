import { boxesMeet } from '@trimwell/geometry';
import { coveredBy } from './covered.js';
import type { Check } from './finding.js';

/**
 * A piece of which nothing shows; vellum hides nothing. Mended by gluing it right over the lowest of its covers, or else over
 * all of them, or else by leaving it out.
 */
export const hiddenPiece: Check = (field, piece) => {
  const { sketch, over, opaque, placed, bounds } = field;
  const box = bounds(piece);
  const covers = over(piece).filter((cover) => boxesMeet(bounds(cover), box) && opaque(cover));
  const [lowest, topmost] = [covers[0], covers.at(-1)];
  if (!lowest || !topmost || !coveredBy(field, placed(piece), covers)) return null;
  const ways = lowest === topmost ? [lowest] : [lowest, topmost];
  return {
    code: 'hidden',
    severity: 'looks wrong',
    piece: piece.id,
    other: lowest.id,
    amount: piece.height,
    fixes: [
      ...ways.map((cover) => [{ do: 'order' as const, piece: piece.id, to: sketch.pieces.indexOf(cover) }]),
      [{ do: 'remove-piece', piece: piece.id }],
    ],
  };
};
