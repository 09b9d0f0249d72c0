import { boxesMeet, leastLap, meetOnLines } from '@trimwell/geometry';
import type { Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import { inLine } from './in-line.js';

/** True when two pieces lap over each other, neither holding the other, their sides running alike. */
function lap({ placed, bounds }: CheckField, one: Piece, other: Piece): boolean {
  if (one.face !== other.face || !inLine(one, other) || !boxesMeet(bounds(one), bounds(other))) return false;
  return leastLap(placed(one), placed(other)) !== null;
}

/** True when the two no longer lie over each other at all. */
function apart({ placed, bounds }: CheckField, one: Piece, other: Piece): boolean {
  if (!boxesMeet(bounds(one), bounds(other))) return true;
  return one.tilt % 90 !== 0 && !meetOnLines(placed(one), placed(other));
}

/** True when two pieces that lapped over each other in `before` are apart in `after`: a gap shows that nobody meant. */
export function partsPieces(before: CheckField, after: CheckField): boolean {
  const now = new Map(after.sketch.pieces.map((piece) => [piece.id, piece]));
  return before.sketch.pieces.some((was) => {
    const is = now.get(was.id);
    if (!is || is === was) return false;
    return before.sketch.pieces.some((other) => {
      const then = now.get(other.id);
      // Where the two lie now is asked first: hardly ever are they apart.
      return (
        then !== undefined && other !== was && inLine(is, then) && apart(after, is, then) && lap(before, was, other)
      );
    });
  });
}
