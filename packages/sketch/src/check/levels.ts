import { isRigid, type Level, type LiesOver, levelsOf, meetOnLines, type ThickPiece } from '@trimwell/geometry';
import { placedPiece } from '../batch/hidden-centres.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { caliperOf } from './caliper-of.js';

/** A piece as it adds to its stack. */
export function thickPiece(sketch: Sketch, piece: Piece): ThickPiece {
  const { caliper } = caliperOf(sketch, piece.from);
  return { placed: placedPiece(sketch, piece), caliper, raise: piece.raise };
}

/** True for a piece that lifts what is glued onto it: one on foam, or a board, which nothing follows. */
export function isLifted(sketch: Sketch, { from, raise }: Piece): boolean {
  return isRigid({ raise, caliper: caliperOf(sketch, from).caliper });
}

/** The levels of the pieces of one face, in gluing order. Nothing is over what it only touches. */
export function faceLevels(sketch: Sketch, pieces: readonly Piece[]): readonly Level[] {
  const stack = pieces.map((piece) => thickPiece(sketch, piece));
  const liesOver: LiesOver = (lower, upper) => {
    const [one, other] = [stack[lower]?.placed, stack[upper]?.placed];
    return one !== undefined && other !== undefined && meetOnLines(one, other);
  };
  return levelsOf(stack, liesOver);
}
