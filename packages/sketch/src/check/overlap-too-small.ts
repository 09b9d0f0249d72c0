import {
  inches,
  type Lap,
  type Length,
  leastLap,
  millimetres,
  type PlacedPiece,
  reaches,
  ticks,
} from '@trimwell/geometry';
import type { Piece, Sketch } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import { coveredBy } from './covered.js';
import type { Check, Suspect } from './finding.js';
import { inLine } from './in-line.js';
import { gluedBetween, lapMends } from './lap-mends.js';
import { lapPlace } from './lap-place.js';

/** What glue needs at least to hold two papers: 1/8 in or 3 mm (common practice, no source). */
export function leastOverlap(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

/** How `piece` goes too little under `upper`, both glued flat, whether they reach each other or not; null when it does not. */
function smallLap({ sketch, placed }: CheckField, piece: Piece, upper: Piece): Lap | null {
  if (upper.mats?.piece === piece.id || !inLine(piece, upper) || upper.raise > 0) return null;
  const least = leastOverlap(sketch.unit);
  const lap = leastLap(placed(piece), placed(upper), least);
  // A lap that is tilted is not exact: it is enough when it is so to the tick.
  return lap && Math.round(lap.depth) < least ? lap : null;
}

/** True when papers glued in between keep the two off each other, or when others over both hide the lap, and what a slip would open. */
function doesNotMatter(field: CheckField, piece: Piece, upper: Piece): boolean {
  const { sketch, placed, over, opaque } = field;
  const lapWith = (by: number): PlacedPiece => lapPlace(placed(piece), placed(upper), by);
  return (
    coveredBy(field, lapWith(0), gluedBetween(field, piece, upper)) ||
    coveredBy(field, lapWith(leastOverlap(sketch.unit)), over(upper).filter(opaque))
  );
}

function lapUnder(field: CheckField, piece: Piece, upper: Piece): Suspect | null {
  const { sketch, level } = field;
  const lap = smallLap(field, piece, upper);
  if (!lap || !reaches(level(upper), level(piece)) || doesNotMatter(field, piece, upper)) return null;
  return {
    code: 'overlap-too-small',
    severity: 'looks wrong',
    piece: piece.id,
    other: upper.id,
    amount: ticks(Math.round(lap.depth)),
    // Asked for only where it is told, not each time that another way to mend something is tried.
    get fixes() {
      return lapMends(field, piece, upper, lap, leastOverlap(sketch.unit));
    },
  };
}

/**
 * A rectangle that goes under others glued flat onto it whose sides run alike, by less than glue needs, neither holding the other.
 * Where all of them lie on one paper they would hold, but a slip of the hand would open a gap between them. Of a panel on its mat the mat
 * is told alone.
 */
export const overlapTooSmall: Check = (field, piece) => {
  if (piece.shape !== 'rectangle') return null;
  return field.over(piece).flatMap((upper) => lapUnder(field, piece, upper) ?? []);
};

/** True when some piece is told to go too little under `upper`. */
export function isLapped(field: CheckField, upper: Piece): boolean {
  return field.under(upper).some((piece) => lapUnder(field, piece, upper) !== null);
}

/** Pieces that go too little under others which foam keeps off them: they are told as soon as the others are let down. */
export function keptOff(field: CheckField): readonly Piece[] {
  const { sketch, level, over } = field;
  if (!field.lifted) return [];
  const off = (piece: Piece, upper: Piece): boolean => !reaches(level(upper), level(piece));
  return sketch.pieces.filter(
    (piece) =>
      piece.shape === 'rectangle' &&
      over(piece).some((upper) => smallLap(field, piece, upper) !== null && off(piece, upper)),
  );
}
