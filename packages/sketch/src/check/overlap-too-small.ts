import {
  inches,
  type Lap,
  type Length,
  leastLap,
  millimetres,
  type PlacedPiece,
  type Point,
  ticks,
  widthAlong,
} from '@trimwell/geometry';
import { glueOverlap } from '../batch/hidden-centres.js';
import { movedBy } from '../edit/apply-edit.js';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import { coveredBy } from './covered.js';
import type { Check, Suspect } from './finding.js';
import { inLine } from './in-line.js';
import { lapPlace } from './lap-place.js';
import { FOLLOWED, reaches } from './levels.js';
import { placedRectangle } from './placed-rectangle.js';

/** What glue needs at least to hold two papers: 1/8 in or 3 mm (common practice, no source). */
export function leastOverlap(unit: Sketch['unit']): Length {
  return unit === 'in' ? inches(1 / 8) : millimetres(3);
}

/** The place of `piece` made longer by `by` ticks towards one of its sides. */
function longer(piece: Piece, { x, y }: Point, by: number): Pick<Piece, 'x' | 'y' | 'width' | 'height'> {
  return {
    x: ticks(piece.x - (x < 0 ? by : 0)),
    y: ticks(piece.y - (y < 0 ? by : 0)),
    width: ticks(piece.width + (x !== 0 ? by : 0)),
    height: ticks(piece.height + (y !== 0 ? by : 0)),
  };
}

/** What `piece` shows more of when it is made longer: the added end, and the corners that were rounded off. */
function addedEnd(piece: Piece, { x, y }: Point, by: number): PlacedPiece {
  const { tl, tr, br, bl } = piece.corners;
  const place = longer(piece, { x, y }, by);
  const deep = Math.min(by + Math.max(tl, tr, br, bl), x !== 0 ? place.width : place.height);
  const [width, height] = x !== 0 ? [deep, place.height] : [place.width, deep];
  return placedRectangle(
    x > 0 ? place.x + place.width - width : place.x,
    y > 0 ? place.y + place.height - height : place.y,
    width,
    height,
  );
}

/** `piece` made longer by `by` ticks under those over it; none where that would show, or where a mat would grow with it. */
function tuckedIn(field: CheckField, piece: Piece, along: Point, by: number): readonly Edit[][] {
  const { sketch, over, opaque } = field;
  const straight = piece.tilt === 0 && (along.x === 0 || along.y === 0);
  if (!straight || piece.mats || sketch.pieces.some(({ mats }) => mats?.piece === piece.id)) return [];
  if (!coveredBy(field, addedEnd(piece, along, by), over(piece).filter(opaque))) return [];
  return [[{ do: 'resize', piece: piece.id, ...longer(piece, along, by) }]];
}

/** `piece` moved by `by` ticks further under another. Askew it is moved by whole marks, further rather than less. */
function movedIn(piece: Piece, { x, y }: Point, by: number, step: Length): Edit {
  const marks = (part: number): number => Math.sign(part) * Math.ceil(Math.abs(part * by) / step - 1e-9) * step;
  return x === 0 || y === 0 ? movedBy(piece, x * by, y * by) : movedBy(piece, marks(x), marks(y));
}

/** How `piece` goes too little under `upper`, both glued flat, whether they reach each other or not; null when it does not. */
function smallLap({ sketch, placed }: CheckField, piece: Piece, upper: Piece): Lap | null {
  if (upper.mats?.piece === piece.id || !inLine(piece, upper) || upper.raise > FOLLOWED) return null;
  const least = leastOverlap(sketch.unit);
  const lap = leastLap(placed(piece), placed(upper), least);
  // A lap that is tilted is not exact: it is enough when it is so to the tick.
  return lap && Math.round(lap.depth) < least ? lap : null;
}

/** True when papers glued in between keep the two off each other, or when others over both hide the lap, and what a slip would open. */
function doesNotMatter(field: CheckField, piece: Piece, upper: Piece): boolean {
  const { sketch, placed, over, opaque } = field;
  const [lower, higher] = [over(piece), over(upper)];
  const between = lower.slice(0, lower.length - higher.length - 1);
  const lapWith = (by: number): PlacedPiece => lapPlace(placed(piece), placed(upper), by);
  return (
    coveredBy(field, lapWith(0), between) || coveredBy(field, lapWith(leastOverlap(sketch.unit)), higher.filter(opaque))
  );
}

function lapUnder(field: CheckField, piece: Piece, upper: Piece): Suspect | null {
  const { sketch, placed, level, step } = field;
  const lap = smallLap(field, piece, upper);
  if (!lap || !reaches(level(upper), level(piece)) || doesNotMatter(field, piece, upper)) return null;
  const least = leastOverlap(sketch.unit);
  const room = widthAlong(placed(upper), lap.along);
  const by = Math.ceil(Math.min(glueOverlap(sketch.unit), room - least) - lap.depth);
  const { along, depth } = lap;
  return {
    code: 'overlap-too-small',
    severity: 'looks wrong',
    piece: piece.id,
    other: upper.id,
    amount: ticks(Math.round(depth)),
    // Asked for only where it is told, not each time that another way to mend something is tried.
    get fixes() {
      return by > 0 ? [...tuckedIn(field, piece, along, by), [movedIn(piece, along, by, step)]] : [];
    },
  };
}

/**
 * A rectangle that goes under others glued flat onto it whose sides run alike, by less than glue needs, neither holding the other; mended
 * by making it longer under the other where nothing of that shows, or else by moving it further under. Where all of them
 * lie on one paper they would hold, but a slip of the hand would open a gap between them. Of a panel on its mat the mat is told alone.
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
