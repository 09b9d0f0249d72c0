import { type Length, meetOnLines, millimetres, ticks } from '@trimwell/geometry';
import { placedPiece } from '../batch/hidden-centres.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { caliperOf } from './caliper-of.js';

/** A paper that is glued down follows a step as high as this: 1 mm, a few papers (common practice, no source). */
export const FOLLOWED = millimetres(1);

/** How high a piece lies above the card on foam and on boards; papers are not counted, since they follow what they are glued to. */
export interface Level {
  /** What it is glued to, or its foam is. */
  readonly ground: Length;
  readonly top: Length;
}

/** The level of what is glued flat to the card. */
export const LAID_FLAT: Level = { ground: ticks(0), top: ticks(0) };

/** How much a piece lifts what is glued onto it: its foam, and itself where it is a board that nothing follows. */
function liftOf(sketch: Sketch, piece: Piece): number {
  const { caliper } = caliperOf(sketch, piece.from);
  return piece.raise + (caliper > FOLLOWED ? caliper : 0);
}

/** True for a piece that lifts what is glued onto it. */
export function isLifted(sketch: Sketch, piece: Piece): boolean {
  return liftOf(sketch, piece) > 0;
}

/** Whether the piece at the second place in gluing order lies over the one at the first. */
type LiesOver = (lower: number, upper: number) => boolean;

/** The levels of the pieces of one face, in gluing order. Nothing is over what it only touches. */
export function levelsOf(sketch: Sketch, pieces: readonly Piece[], liesOver?: LiesOver): readonly Level[] {
  const placed = pieces.map((piece) => placedPiece(sketch, piece));
  const meets: LiesOver = (lower, upper) => {
    const [one, other] = [placed[lower], placed[upper]];
    return one !== undefined && other !== undefined && meetOnLines(one, other);
  };
  const found: Level[] = [];
  /** What lifts others, the highest first: what is first found below a piece bears it. */
  const lifting: number[] = [];
  pieces.forEach((piece, at) => {
    const bearing = lifting.find((lower) => (liesOver ?? meets)(lower, at));
    const ground = bearing === undefined ? ticks(0) : (found[bearing]?.top ?? ticks(0));
    const top = ticks(ground + liftOf(sketch, piece));
    found.push({ ground, top });
    if (top === 0) return;
    const lower = lifting.findIndex((each) => (found[each]?.top ?? 0) <= top);
    lifting.splice(lower < 0 ? lifting.length : lower, 0, at);
  });
  return found;
}

/** True when what lies at `upper`, on foam of a height, reaches down to the top of what lies at `lower`, which is below it. */
export function reaches(upper: Level, lower: Level, foam: number): boolean {
  return lower.top + foam >= upper.ground - FOLLOWED;
}
