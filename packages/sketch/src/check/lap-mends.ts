import {
  type Lap,
  type Length,
  leastLap,
  meetOnLines,
  type PlacedPiece,
  type Point,
  punchedDepths,
  ticks,
  widthAlong,
} from '@trimwell/geometry';
import { glueOverlap } from '../batch/hidden-centres.js';
import { movedBy } from '../edit/apply-edit.js';
import type { Edit, Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import { coveredBy } from './covered.js';
import { inLine } from './in-line.js';
import { placedRectangle } from './placed-rectangle.js';

/** The place of `piece` made longer by `by` ticks towards one of its sides. */
function longer(piece: Piece, { x, y }: Point, by: number): Pick<Piece, 'x' | 'y' | 'width' | 'height'> {
  return {
    x: ticks(piece.x - (x < 0 ? by : 0)),
    y: ticks(piece.y - (y < 0 ? by : 0)),
    width: ticks(piece.width + (x !== 0 ? by : 0)),
    height: ticks(piece.height + (y !== 0 ? by : 0)),
  };
}

/** The end of `piece` made longer by `by` ticks, `deep` ticks of it. */
function endOf(piece: Piece, along: Point, by: number, deep: number): PlacedPiece {
  const place = longer(piece, along, by);
  const level = along.x !== 0;
  const most = Math.min(deep, level ? place.width : place.height);
  const [width, height] = level ? [most, place.height] : [place.width, most];
  return placedRectangle(
    along.x > 0 ? place.x + place.width - width : place.x,
    along.y > 0 ? place.y + place.height - height : place.y,
    width,
    height,
  );
}

/** How far the shape of the edge of `piece` on one side reaches into it: its rounded corners and its punch. */
function shapedDepth({ placed }: CheckField, piece: Piece, { x, y }: Point): number {
  const { tl, tr, br, bl } = piece.corners;
  const { left, top, right, bottom } = punchedDepths(placed(piece).shape);
  const punched = x !== 0 ? (x < 0 ? left : right) : y < 0 ? top : bottom;
  return punched + Math.max(tl, tr, br, bl);
}

/** True for an upright piece that can be made longer along `along` without a mat growing with it. */
function canGrow({ sketch }: CheckField, piece: Piece, along: Point): boolean {
  const straight = piece.tilt === 0 && (along.x === 0 || along.y === 0);
  return straight && !piece.mats && !sketch.pieces.some(({ mats }) => mats?.piece === piece.id);
}

/** `piece` made longer by `by` ticks under those over it, unless what is added, or was cut off its old edge, would show. */
function tuckedIn(field: CheckField, piece: Piece, along: Point, by: number): readonly Edit[][] {
  const { over, opaque } = field;
  if (by <= 0 || !canGrow(field, piece, along)) return [];
  const added = endOf(piece, along, by, by + shapedDepth(field, piece, along));
  if (!coveredBy(field, added, over(piece).filter(opaque))) return [];
  return [[{ do: 'resize', piece: piece.id, ...longer(piece, along, by) }]];
}

/** What is glued on after `piece` and before `upper`. */
export function gluedBetween({ over }: CheckField, piece: Piece, upper: Piece): readonly Piece[] {
  const [lower, higher] = [over(piece), over(upper)];
  return lower.slice(0, lower.length - higher.length - 1);
}

/** `upper` made longer by `by` ticks over `piece`, unless it would reach beyond that or onto something glued in between. */
function reachedOver(field: CheckField, piece: Piece, upper: Piece, along: Point, by: number): readonly Edit[][] {
  const back = { x: -along.x, y: -along.y };
  if (by <= 0 || !canGrow(field, upper, back)) return [];
  const added = endOf(upper, back, by, by);
  if (!coveredBy(field, added, [piece])) return [];
  if (gluedBetween(field, piece, upper).some((other) => meetOnLines(added, field.placed(other)))) return [];
  return [[{ do: 'resize', piece: upper.id, ...longer(upper, back, by) }]];
}

/** Where a piece begins, where its middle is and where it ends along a direction. */
function linesAlong({ shape, x, y, tilt }: PlacedPiece, along: Point) {
  const middle = (x + shape.width / 2) * along.x + (y + shape.height / 2) * along.y;
  const half = widthAlong({ shape, x, y, tilt }, along) / 2;
  return { begin: middle - half, middle, end: middle + half };
}

/** True when an edge or the middle of one piece is in line with that of the other, as seen along a direction. */
function linedUp(one: PlacedPiece, other: PlacedPiece, along: Point): boolean {
  const [own, its] = [linesAlong(one, along), linesAlong(other, along)];
  // What is tilted lies beside whole ticks.
  const same = (line: number, as: number): boolean => Math.abs(line - as) < 1;
  const edges = [its.begin, its.end];
  return same(own.middle, its.middle) || edges.some((edge) => same(own.begin, edge) || same(own.end, edge));
}

/**
 * True when nothing but `upper` tells where `piece` belongs along a direction: it laps over no other paper, and is in line
 * neither with another one nor with the card.
 */
function liesFreely({ sketch, placed }: CheckField, piece: Piece, upper: Piece, along: Point): boolean {
  const own = placed(piece);
  const card = placedRectangle(0, 0, sketch.card.width, sketch.card.height);
  if (linedUp(own, card, along)) return false;
  return !sketch.pieces.some((other) => {
    if (other.face !== piece.face || other === piece || other === upper) return false;
    return (inLine(piece, other) && linedUp(own, placed(other), along)) || leastLap(own, placed(other)) !== null;
  });
}

/** `piece` moved by `by` ticks further under `upper`. Askew it is moved by whole marks, further rather than less. */
function movedIn(field: CheckField, piece: Piece, upper: Piece, { x, y }: Point, by: number): readonly Edit[][] {
  if (by <= 0 || !liesFreely(field, piece, upper, { x, y })) return [];
  const marks = (part: number): number =>
    Math.sign(part) * Math.ceil(Math.abs(part * by) / field.step - 1e-9) * field.step;
  return [[x === 0 || y === 0 ? movedBy(piece, x * by, y * by) : movedBy(piece, marks(x), marks(y))]];
}

/**
 * The ways to make `piece` go far enough under `upper`, the best first: it is made longer where nothing of that shows, or `upper` is made
 * longer over it, by as little as glue needs; only what lies freely is moved.
 */
export function lapMends(
  field: CheckField,
  piece: Piece,
  upper: Piece,
  { along, depth }: Lap,
  least: Length,
): readonly Edit[][] {
  const { sketch, placed, step } = field;
  const room = widthAlong(placed(upper), along);
  const under = Math.ceil(Math.min(glueOverlap(sketch.unit), room - least) - depth);
  const over = Math.ceil((least - depth) / step) * step;
  return [
    ...tuckedIn(field, piece, along, under),
    ...reachedOver(field, piece, upper, along, over),
    ...movedIn(field, piece, upper, along, under),
  ];
}
