import { leastLap, meetOnLines, type PlacedPiece, type Point, widthAlong } from '@trimwell/geometry';
import type { Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import { inLine } from './in-line.js';
import { placedRectangle } from './placed-rectangle.js';
import { cardPlace, revealsOf, sides, WIDEST_BORDER } from './reveals.js';

/** Where a piece begins, where its middle is and where it ends along a direction. */
interface Lines {
  readonly begin: number;
  readonly middle: number;
  readonly end: number;
}

function linesOf(placed: PlacedPiece, along: Point): Lines {
  const middle = (placed.x + placed.shape.width / 2) * along.x + (placed.y + placed.shape.height / 2) * along.y;
  const half = widthAlong(placed, along) / 2;
  return { begin: middle - half, middle, end: middle + half };
}

/** What of a piece is in line with something else along a direction, so that it was put there on purpose. */
export interface LinedUp {
  readonly begin: boolean;
  readonly middle: boolean;
  readonly end: boolean;
}

/** What of `piece` is in line along a direction with the card or with a piece of its face, those left out that are said to say nothing. */
export function linedUp(
  field: CheckField,
  piece: Piece,
  along: Point,
  saysNothing: (other: Piece) => boolean,
): LinedUp {
  const { sketch, placed } = field;
  const own = linesOf(placed(piece), along);
  // What is tilted lies beside whole ticks.
  const same = (line: number, as: number): boolean => Math.abs(line - as) < 1;
  const card = linesOf(placedRectangle(0, 0, sketch.card.width, sketch.card.height), along);
  const others = sketch.pieces.filter((other) => other.face === piece.face && other !== piece && !saysNothing(other));
  const edges = [card, ...others.filter((other) => inLine(piece, other)).map((other) => linesOf(placed(other), along))];
  const meets = (line: number): boolean => edges.some(({ begin, end }) => same(line, begin) || same(line, end));
  const middles = [card, ...others.map((other) => linesOf(placed(other), along))];
  return {
    begin: meets(own.begin),
    middle: middles.some(({ middle }) => same(own.middle, middle)),
    end: meets(own.end),
  };
}

/** True when a narrow border of an upright piece at either end of a direction is as wide as one at its side, in the card or in what holds it. */
function hasEvenBorder({ sketch, step, under }: CheckField, piece: Piece, along: Point): boolean {
  if (piece.tilt !== 0) return false;
  const holders = under(piece).filter(({ shape, tilt }) => shape === 'rectangle' && tilt === 0);
  return [cardPlace(sketch), ...holders].some((holder) => {
    const reveals = revealsOf(holder, piece);
    if (sides(reveals).some((reveal) => reveal < 0)) return false;
    const { left, top, right, bottom } = reveals;
    const [ends, beside] =
      along.x !== 0
        ? [
            [left, right],
            [top, bottom],
          ]
        : [
            [top, bottom],
            [left, right],
          ];
    return ends.some((end) => end > 0 && end <= WIDEST_BORDER * step && beside.includes(end));
  });
}

/**
 * True when nothing but `other` tells where `piece` belongs along a direction: it is in line with nothing else, has no even border, and
 * neither laps over another paper nor bears one.
 */
export function liesFreely(field: CheckField, piece: Piece, other: Piece, along: Point): boolean {
  const { sketch, placed, over } = field;
  const own = placed(piece);
  const { begin, middle, end } = linedUp(field, piece, along, (each) => each === other);
  if (begin || middle || end || hasEvenBorder(field, piece, along)) return false;
  if (over(piece).some((each) => each !== other && meetOnLines(own, placed(each)))) return false;
  return !sketch.pieces.some((each) => {
    const beside = each.face === piece.face && each !== piece && each !== other;
    return beside && leastLap(own, placed(each)) !== null;
  });
}
