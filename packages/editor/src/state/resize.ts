import { type Length, nearestStep, ticks } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';

/** A piece's rectangle before it is tilted about its centre. */
export type Place = Pick<Piece, 'x' | 'y' | 'width' | 'height'>;

/** Which way a handle looks from the middle of the piece, in the piece's own frame: -1 left or top, 1 right or bottom. */
export interface Handle {
  readonly x: -1 | 0 | 1;
  readonly y: -1 | 0 | 1;
}

/** The eight handles, clockwise from the top left corner. */
export const HANDLES: readonly Handle[] = [
  { x: -1, y: -1 },
  { x: 0, y: -1 },
  { x: 1, y: -1 },
  { x: 1, y: 0 },
  { x: 1, y: 1 },
  { x: 0, y: 1 },
  { x: -1, y: 1 },
  { x: -1, y: 0 },
];

export interface ResizeRules {
  /** The least width and height. */
  readonly least: Length;
  /** Sizes become multiples of it, and so do places that would else lie between two; null keeps both to the tick. */
  readonly step: Length | null;
  /** Keep width to height as it was, as nearly as the step allows. */
  readonly proportion: boolean;
}

interface Vector {
  readonly x: number;
  readonly y: number;
}

/** `vector` turned clockwise on the screen by `degrees`. */
export function turned({ x, y }: Vector, degrees: number): Vector {
  const angle = (degrees * Math.PI) / 180;
  const [sine, cosine] = [Math.sin(angle), Math.cos(angle)];
  return { x: x * cosine - y * sine, y: x * sine + y * cosine };
}

function kept(size: number, { least, step }: ResizeRules): number {
  if (step === null) return Math.max(least, Math.round(size));
  return Math.max(Math.ceil(least / step) * step, nearestStep(size, step));
}

/** Width and height when both follow one factor; neither becomes smaller than the least. */
function proportional(place: Place, handle: Handle, pull: Vector, rules: ResizeRules): Vector {
  const { width, height } = place;
  const along = handle.x * pull.x * width + handle.y * pull.y * height;
  const diagonal = handle.x * handle.x * width * width + handle.y * handle.y * height * height;
  const wanted = Math.max(1 + along / diagonal, rules.least / Math.min(width, height));
  const longer = kept(Math.max(width, height) * wanted, rules);
  const factor = longer / Math.max(width, height);
  return { x: kept(width * factor, rules), y: kept(height * factor, rules) };
}

/**
 * `place` with its size set to `width` x `height`, so that the point opposite `handle` stays where it is on the card.
 * Exact for an untilted piece. Tilted, the place is rounded to whole ticks, so that point moves by at most half a tick
 * along each axis (0.0008 mm), and never drifts when counted from the start of a drag.
 */
export function resizedTo(place: Place, tilt: number, handle: Handle, width: number, height: number): Place {
  const shift = turned(
    { x: (handle.x * (width - place.width)) / 2, y: (handle.y * (height - place.height)) / 2 },
    tilt,
  );
  return {
    x: ticks(Math.round(place.x + shift.x - (width - place.width) / 2)),
    y: ticks(Math.round(place.y + shift.y - (height - place.height) / 2)),
    width: ticks(width),
    height: ticks(height),
  };
}

/**
 * `after` brought to the step where resizing has left it between two: a tilted piece, whose sides run along no ruler, and
 * the direction that an edge's handle widens to both sides. Whatever an upright piece keeps in its place stays there.
 */
function onStep(after: Place, before: Place, tilt: number, handle: Handle, step: Length): Place {
  const loose = (axis: 'x' | 'y'): boolean => tilt !== 0 || (handle[axis] === 0 && after[axis] !== before[axis]);
  const at = (axis: 'x' | 'y'): Length => (loose(axis) ? ticks(nearestStep(after[axis], step)) : after[axis]);
  return { ...after, x: at('x'), y: at('y') };
}

/**
 * The place of a piece whose `handle` was pulled by `(x, y)` ticks on the card since it lay at `place`. The pull is
 * turned into the piece's own frame; the opposite corner or edge stays (see `resizedTo`), with a `step` to within half
 * of it where the piece is tilted; with `proportion` an edge's handle widens both sides of the other direction alike, to
 * within half a step.
 */
export function resizePiece(place: Place, tilt: number, handle: Handle, pull: Vector, rules: ResizeRules): Place {
  const own = turned(pull, -tilt);
  const size = rules.proportion
    ? proportional(place, handle, own, rules)
    : {
        x: handle.x === 0 ? place.width : kept(place.width + handle.x * own.x, rules),
        y: handle.y === 0 ? place.height : kept(place.height + handle.y * own.y, rules),
      };
  const after = resizedTo(place, tilt, handle, size.x, size.y);
  return rules.step === null ? after : onStep(after, place, tilt, handle, rules.step);
}

/** What `piece` covers of its own mats' insides: twice every reveal between it and the innermost piece it mats. */
function insideReveals(sketch: Sketch, piece: Piece): number {
  if (!piece.mats) return 0;
  const { piece: innerId, reveal } = piece.mats;
  const inner = sketch.pieces.find((other) => other.id === innerId);
  return 2 * reveal + (inner ? insideReveals(sketch, inner) : 0);
}

/** The least side that `piece` can have: one step, or for a mat what leaves one step of the piece that it mats. */
export function leastSide(sketch: Sketch, piece: Piece, step: Length): Length {
  return ticks(insideReveals(sketch, piece) + step);
}

/** The point of a handle on the card, in floating ticks; `{ x: 0, y: 0 }` is the middle. */
export function handlePoint(place: Place, tilt: number, handle: Handle): Vector {
  const from = turned({ x: (handle.x * place.width) / 2, y: (handle.y * place.height) / 2 }, tilt);
  return { x: place.x + place.width / 2 + from.x, y: place.y + place.height / 2 + from.y };
}
