import { type Length, ticks } from '@trimwell/geometry';
import type { Edge, Edit, Piece, Sketch } from '../model/sketch.js';

/**
 * `piece` made longer or shorter along `edge` about its middle, but never over an edge of the card that it did not cross
 * before. Halves of odd differences go to the left or the top.
 */
export function resizedAlong(sketch: Sketch, piece: Piece, edge: Edge, length: Length): Edit {
  const { card } = sketch;
  const level = edge === 'top' || edge === 'bottom';
  const start = (at: Length, side: Length, whole: Length): Length => {
    const middled = Math.round(at + (side - length) / 2);
    const within = at >= 0 && at + side <= whole && length <= whole;
    return ticks(within ? Math.max(0, Math.min(middled, whole - length)) : middled);
  };
  const same = { do: 'resize' as const, piece: piece.id, x: piece.x, y: piece.y };
  return level
    ? { ...same, x: start(piece.x, piece.width, card.width), width: length, height: piece.height }
    : { ...same, y: start(piece.y, piece.height, card.height), width: piece.width, height: length };
}
