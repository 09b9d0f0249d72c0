import { directionsOf, lapAlong } from '../stack/lap.js';
import { boxesMeet, placedBounds } from '../stack/placed-bounds.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { pointTest } from '../stack/point-in-piece.js';
import { marksWithin, WITHIN } from '../stack/quick-cover.js';
import { overlapOf } from './overlaps.js';

/** True when some point lies so well within both pieces that they share far more than an edge. */
function shareMark(one: PlacedPiece, other: PlacedPiece): boolean {
  const { left, top, right, bottom } = placedBounds(other);
  const holds = pointTest(other);
  return marksWithin(one).some(({ x, y }) => x > left && x < right && y > top && y < bottom && holds(x, y, WITHIN));
}

function findOut(one: PlacedPiece, other: PlacedPiece): boolean {
  if (!boxesMeet(placedBounds(one), placedBounds(other))) return false;
  if (directionsOf(one, other).some((direction) => lapAlong(one, other, direction).depth <= 0)) return false;
  if (shareMark(one, other) || shareMark(other, one)) return true;
  return overlapOf(one, other) !== null;
}

/** By both pieces: neither is ever changed, and the same two are asked of again when something else is moved. */
const known = new WeakMap<PlacedPiece, WeakMap<PlacedPiece, boolean>>();

/**
 * True when two pieces lie over each other, as `overlapsOf` finds it; false where they are apart or only touch. A line between them or a
 * point well within both decides nearly always; else their regions are cut with each other.
 */
export function lieOver(one: PlacedPiece, other: PlacedPiece): boolean {
  const answers = known.get(one) ?? new WeakMap<PlacedPiece, boolean>();
  const answer = answers.get(other) ?? findOut(one, other);
  known.set(one, answers.set(other, answer));
  return answer;
}

/** For each piece of `stack`, lowest first, the places of those below it that it lies over. */
export function piecesUnder(stack: readonly PlacedPiece[]): readonly (readonly number[])[] {
  return stack.map((piece, at) => stack.slice(0, at).flatMap((other, lower) => (lieOver(other, piece) ? [lower] : [])));
}
