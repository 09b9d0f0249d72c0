import { byPair } from '../stack/by-pair.js';
import { quickMeet } from '../stack/meet.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { overlapOf } from './overlaps.js';

/**
 * True when two pieces lie over each other, as `overlapsOf` finds it; false where they are apart or only touch. A line between them or a
 * point well within both decides nearly always; else their regions are cut with each other.
 */
export const lieOver = byPair(
  (one: PlacedPiece, other: PlacedPiece): boolean => quickMeet(one, other) ?? overlapOf(one, other) !== null,
);

/** For each piece of `stack`, lowest first, the places of those below it that it lies over. */
export function piecesUnder(stack: readonly PlacedPiece[]): readonly (readonly number[])[] {
  return stack.map((piece, at) => stack.slice(0, at).flatMap((other, lower) => (lieOver(other, piece) ? [lower] : [])));
}
