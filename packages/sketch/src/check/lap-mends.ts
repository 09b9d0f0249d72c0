import {
  isPunched,
  type Lap,
  type Length,
  leastLap,
  meetOnLines,
  type PlacedPiece,
  type Point,
  ticks,
  widthAlong,
} from '@trimwell/geometry';
import { glueOverlap } from '../batch/hidden-centres.js';
import { movedBy } from '../edit/apply-edit.js';
import type { Edit, Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import { coveredBy } from './covered.js';
import { liesFreely, linedUp } from './lined-up.js';
import { placedRectangle } from './placed-rectangle.js';

type Place = Pick<Piece, 'x' | 'y' | 'width' | 'height'>;

/** The place of `piece` made longer by `by` ticks towards one of its sides. */
function longer(piece: Piece, { x, y }: Point, by: number): Place {
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

/** True when the edge of `piece` on one side is punched; of a tilted one, when any is. */
function isPunchedAt({ placed }: CheckField, piece: Piece, { x, y }: Point): boolean {
  const { shape } = placed(piece);
  if (piece.tilt !== 0) return isPunched(shape);
  const { left, top, right, bottom } = shape.punched;
  return [x < 0 && left, y < 0 && top, x > 0 && right, y > 0 && bottom].some(Boolean);
}

/** True for an upright piece that can be made longer along `along` without a mat growing with it. */
function canGrow({ sketch }: CheckField, piece: Piece, along: Point): boolean {
  const straight = piece.tilt === 0 && (along.x === 0 || along.y === 0);
  return straight && !piece.mats && !sketch.pieces.some(({ mats }) => mats?.piece === piece.id);
}

/** `piece` made longer by `by` ticks under those over it, unless what is added, or was cut off its corners, would show. */
function tuckedIn(field: CheckField, piece: Piece, along: Point, by: number): readonly Edit[][] {
  const { over, opaque } = field;
  // What is printed on it would no longer be in the middle of what shows.
  if (by <= 0 || piece.art || !canGrow(field, piece, along)) return [];
  const { tl, tr, br, bl } = piece.corners;
  const added = endOf(piece, along, by, by + Math.max(tl, tr, br, bl));
  if (!coveredBy(field, added, over(piece).filter(opaque))) return [];
  return [[{ do: 'resize', piece: piece.id, ...longer(piece, along, by) }]];
}

/** What is glued on after `piece` and before `upper`. */
export function gluedBetween({ over }: CheckField, piece: Piece, upper: Piece): readonly Piece[] {
  const [lower, higher] = [over(piece), over(upper)];
  return lower.slice(0, lower.length - higher.length - 1);
}

/** True when something that was glued on between `piece` and `upper` lies where `upper` reaches to when its end goes `by` ticks on. */
function reachesOthers(field: CheckField, piece: Piece, upper: Piece, back: Point, by: number): boolean {
  const added = endOf(upper, back, by, by);
  return gluedBetween(field, piece, upper).some((other) => meetOnLines(added, field.placed(other)));
}

/** True when `upper`, made `by` ticks longer, covers nothing more than `piece` with its new end, and nothing glued in between. */
function reachesOnly(field: CheckField, piece: Piece, upper: Piece, back: Point, by: number): boolean {
  return coveredBy(field, endOf(upper, back, by, by), [piece]) && !reachesOthers(field, piece, upper, back, by);
}

/** How deep `upper` laps over another piece at its end along a direction, on which it reaches `by` ticks further; null where it does not. */
function lapAtEnd(field: CheckField, piece: Piece, upper: Piece, along: Point, by: number): number | null {
  const depths = field.under(upper).flatMap((other): number[] => {
    const lap = other === piece ? null : leastLap(field.placed(other), field.placed(upper));
    const there = lap !== null && lap.along.x === -along.x && lap.along.y === -along.y;
    return there && reachesOnly(field, other, upper, along, by) ? [lap.depth] : [];
  });
  return depths[0] ?? null;
}

/**
 * `upper` made longer by `by` ticks over `piece`, unless it would reach beyond that or onto something glued in between. Where it lies on
 * another paper with its other end it may be made longer there as well: where both laps are alike, or where it is to stay in the middle.
 * No edge is taken out of line, but for others that lap over `piece` by too little as well.
 */
function reachedOver(
  field: CheckField,
  piece: Piece,
  upper: Piece,
  { along, depth }: Lap,
  by: number,
  least: Length,
): readonly Edit[][] {
  const { placed } = field;
  const back = { x: -along.x, y: -along.y };
  if (by <= 0 || !canGrow(field, upper, back) || !reachesOnly(field, piece, upper, back, by)) return [];
  const alike = (other: Piece): boolean => leastLap(placed(piece), placed(other), least) !== null;
  const told = linedUp(field, upper, along, (other) => other === piece || alike(other));
  if (told.begin) return [];
  const one = longer(upper, back, by);
  const resized = (to: Place): Edit[] => [{ do: 'resize', piece: upper.id, ...to }];
  const once = told.middle || upper.art ? [] : [resized(one)];
  const other = told.end ? null : lapAtEnd(field, piece, upper, along, by);
  if (other === null) return once;
  const twice = resized(longer({ ...upper, ...one }, along, by));
  return Math.round(other) === Math.round(depth) ? [twice, ...once] : [...once, twice];
}

/** `upper` moved by `by` ticks further over `piece`, unless it would lie on something glued in between. */
function movedOver(field: CheckField, piece: Piece, upper: Piece, along: Point, by: number): readonly Edit[][] {
  const back = { x: -along.x, y: -along.y };
  const straight = upper.tilt === 0 && (along.x === 0 || along.y === 0);
  if (!straight || by <= 0 || reachesOthers(field, piece, upper, back, by)) return [];
  return moved(field, upper, piece, back, by);
}

/** `piece` moved along a direction by `by` ticks, as `other` asks for. Askew it is moved by whole marks, further rather than less. */
function moved(field: CheckField, piece: Piece, other: Piece, { x, y }: Point, by: number): readonly Edit[][] {
  if (by <= 0 || !liesFreely(field, piece, other, { x, y })) return [];
  const marks = (part: number): number =>
    Math.sign(part) * Math.ceil(Math.abs(part * by) / field.step - 1e-9) * field.step;
  return [[x === 0 || y === 0 ? movedBy(piece, x * by, y * by) : movedBy(piece, marks(x), marks(y))]];
}

/**
 * The ways to make `piece` go far enough under `upper`, the best first: it is made longer where nothing of that shows, or `upper` is made
 * longer over it, by as little as glue needs; only what lies freely is moved. A punched edge is meant to show: nothing hides more of it.
 */
export function lapMends(
  field: CheckField,
  piece: Piece,
  upper: Piece,
  { along, depth }: Lap,
  least: Length,
): readonly Edit[][] {
  const { sketch, placed, step } = field;
  if (isPunchedAt(field, piece, along)) return [];
  const room = widthAlong(placed(upper), along);
  const under = Math.ceil(Math.min(glueOverlap(sketch.unit), room - least) - depth);
  const over = Math.ceil((least - depth) / step) * step;
  return [
    ...tuckedIn(field, piece, along, under),
    ...reachedOver(field, piece, upper, { along, depth }, over, least),
    ...moved(field, piece, upper, along, under),
    ...movedOver(field, piece, upper, along, over),
  ];
}
