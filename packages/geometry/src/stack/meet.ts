import type { Point } from '../rect/rect.js';
import { byPair } from './by-pair.js';
import { lapAlong, sidesOf, throughMiddles } from './lap-along.js';
import { crossingsOf, meetOnLine } from './lines.js';
import { boxesMeet, placedBounds } from './placed-bounds.js';
import { boundaryIn, type PlacedPiece } from './placed-piece.js';
import { pointTest } from './point-in-piece.js';
import { markWithin, WITHIN } from './quick-cover.js';

/** True when some point lies so well within both pieces that they share far more than an edge. */
function shareMark(one: PlacedPiece, other: PlacedPiece): boolean {
  const { left, top, right, bottom } = placedBounds(other);
  const holds = pointTest(other);
  const within = ({ x, y }: Point): boolean => x > left && x < right && y > top && y < bottom && holds(x, y, WITHIN);
  return markWithin(one, within) !== null;
}

/** Radii of discs that were looked for in two pieces, and whether one is there. */
const discs = byPair((): Map<number, boolean> => new Map());

/** True when one of some points surely is the middle of a disc of `radius` ticks that lies within both pieces; false says nothing. */
export function shareDisc(one: PlacedPiece, other: PlacedPiece, radius: number): boolean {
  const known = discs(one, other);
  const found = known.get(radius) ?? findDisc(one, other, radius);
  known.set(radius, found);
  return found;
}

function findDisc(one: PlacedPiece, other: PlacedPiece, radius: number): boolean {
  const [inOne, inOther] = [pointTest(one), pointTest(other)];
  const middle = ({ x, y }: Point): boolean => inOne(x, y, radius) && inOther(x, y, radius);
  return markWithin(one, middle) !== null || markWithin(other, middle) !== null;
}

/**
 * Whether two pieces lie over each other where a line between them or a point well within both tells, which is nearly always; null where
 * their outlines have to be looked at.
 */
export function quickMeet(one: PlacedPiece, other: PlacedPiece): boolean | null {
  if (!boxesMeet(placedBounds(one), placedBounds(other))) return false;
  const apart = (direction: Point): boolean => lapAlong(one, other, direction).depth <= 0;
  if (sidesOf(one).some(apart) || sidesOf(other).some(apart)) return false;
  if (shareMark(one, other) || shareMark(other, one)) return true;
  const through = throughMiddles(one, other);
  return through && apart(through) ? false : null;
}

/** Lines across a piece on which it is looked whether another one lies over it. */
const LINES = 256;

/** True when the outlines themselves, with round corners and punched edges, share some of the lines across `one`. */
function outlinesMeet(one: PlacedPiece, other: PlacedPiece): boolean {
  const lines = Array.from({ length: LINES }, (_, line) => (one.shape.height * (line + 0.5)) / LINES);
  const own = crossingsOf(boundaryIn(one, one), lines);
  const over = crossingsOf(boundaryIn(one, other), lines);
  return own.some((row, line) => meetOnLine(row, over[line] ?? []));
}

/** True when two pieces lie over each other, as far as 256 lines across the first one tell; false where they are apart or only touch. */
export const meetOnLines = byPair(
  (one: PlacedPiece, other: PlacedPiece): boolean => quickMeet(one, other) ?? outlinesMeet(one, other),
);
