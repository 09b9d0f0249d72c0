import { type Length, millimetres, ticks } from '../length/length.js';
import type { Point } from '../rect/rect.js';
import { FACE, intoFrame, type PlacedPiece } from './placed-piece.js';
import { pointTest } from './point-in-piece.js';

/** A paper that is glued down follows a step as high as this: 1 mm, a few papers (common practice, no source). */
export const FOLLOWED = millimetres(1);

/** A piece of a stack with what it adds to it. */
export interface ThickPiece {
  readonly placed: PlacedPiece;
  /** How thick its paper is. */
  readonly caliper: Length;
  /** Height of the foam under it; 0 when it is glued flat. */
  readonly raise: Length;
}

/** How high a piece lies on foam and on boards; papers are not counted, since they follow what they are glued to. */
export interface Level {
  /** What it is glued to, or its foam stands on. */
  readonly ground: Length;
  readonly top: Length;
}

/** The level of what is glued flat to the card. */
export const LAID_FLAT: Level = { ground: ticks(0), top: ticks(0) };

/** True for what bends over nothing: a board, and what lies on foam. */
export function isRigid({ caliper, raise }: Pick<ThickPiece, 'caliper' | 'raise'>): boolean {
  return raise > 0 || caliper > FOLLOWED;
}

/** True when what lies at `upper` reaches down to the top of what lies at `lower`, which is below it. */
export function reaches(upper: Level, lower: Level): boolean {
  return lower.top >= upper.ground - FOLLOWED;
}

/** True when the foam of a piece at `upper` stands on what lies at `lower`; beside that it may touch what is higher, without foam. */
export function standsOn(upper: Level, lower: Level): boolean {
  return reaches(upper, lower) && lower.top <= upper.ground;
}

/** Whether the piece at the second place of a stack lies over the one at the first. */
export type LiesOver = (lower: number, upper: number) => boolean;

/** Points along each side of a piece at which it is looked what its foam lies over. */
const POINTS = 5;

/** Points spread evenly over a piece, as it lies on the face. */
function pointsOver(piece: PlacedPiece): readonly Point[] {
  const { width, height } = piece.shape;
  const [onFace, within] = [intoFrame(FACE, piece), pointTest(piece)];
  const shares = Array.from({ length: POINTS }, (_, at) => (at + 0.5) / POINTS);
  return shares
    .flatMap((across) => shares.map((down) => onFace({ x: across * width, y: down * height })))
    .filter(({ x, y }) => within(x, y));
}

/**
 * The levels of the pieces of a stack, lowest first. What is glued flat lies on the highest of all under it. Foam stands as high as half of
 * its piece lies at least, unless something beside that is more than `FOLLOWED` higher than it reaches: then on that.
 */
export function levelsOf(stack: readonly ThickPiece[], liesOver: LiesOver): readonly Level[] {
  const found: Level[] = [];
  /** What is higher than the card, the highest first: what is first found below a piece is the highest there. */
  const lifting: number[] = [];
  const topOf = (at: number | undefined): Length => (at === undefined ? ticks(0) : (found[at]?.top ?? ticks(0)));
  /** What half of the points over a piece have under them at least. */
  const underHalf = (placed: PlacedPiece, at: number): Length => {
    const below = lifting.filter((lower) => liesOver(lower, at));
    const tests = below.flatMap((lower) => {
      const each = stack[lower];
      return each ? [{ lower, holds: pointTest(each.placed) }] : [];
    });
    const tops = pointsOver(placed).map(({ x, y }) => topOf(tests.find(({ holds }) => holds(x, y))?.lower));
    return tops.sort((a, b) => b - a)[Math.ceil(tops.length / 2) - 1] ?? ticks(0);
  };
  stack.forEach(({ placed, caliper, raise }, at) => {
    const highest = topOf(lifting.find((lower) => liesOver(lower, at)));
    const half = raise > 0 && highest > 0 ? underHalf(placed, at) : highest;
    const ground = half + raise >= highest - FOLLOWED ? half : highest;
    const board = caliper > FOLLOWED ? caliper : 0;
    const top = ticks(Math.max(highest, ground + raise) + board);
    found.push({ ground, top });
    if (top === 0) return;
    const lower = lifting.findIndex((each) => topOf(each) <= top);
    lifting.splice(lower < 0 ? lifting.length : lower, 0, at);
  });
  return found;
}
