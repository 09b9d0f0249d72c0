import { type Point, ticks } from '@trimwell/geometry';
import { type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { type Body, type Box, bodiesOf, boxAround } from './group.js';
import { extentOf } from './select-commands.js';

/** Those of `pieces` that move along with a body; the body's own edges are those of all of them. */
function boxOf({ tied }: Body, pieces: readonly Piece[]): Box | null {
  return boxAround(pieces.filter(({ id }) => tied.has(id)).map(extentOf));
}

/**
 * How far something from `low`, of the length `size`, comes inwards so that it lies between 0 and `whole`: not at all when its
 * middle lies there. What is longer than the card comes to its middle.
 */
function inwards(low: number, size: number, whole: number): number {
  const middle = low + size / 2;
  if (middle >= 0 && middle <= whole) return 0;
  if (size > whole) return (whole - size) / 2 - low;
  return low < 0 ? -low : whole - size - low;
}

/** `place` brought to a mark of the ruler: the nearest, or, where it was moved inwards, the next one in that direction. */
function toMark(place: number, by: number, step: number): number {
  const marks = (place + by) / step;
  if (by === 0) return Math.round(marks) * step;
  return (by > 0 ? Math.ceil(marks) : Math.floor(marks)) * step;
}

function moveOf({ handle }: Body, box: Box, { card, unit }: Sketch, ruled: boolean): Point {
  const step = rulerStep(unit);
  const along = (axis: 'x' | 'y', side: 'width' | 'height'): number => {
    const by = inwards(box[axis], box[side], card[side]);
    return by === 0 && !ruled ? 0 : toMark(handle[axis], by, step) - handle[axis];
  };
  return { x: along('x', 'width'), y: along('y', 'height') };
}

/**
 * `pieces`, copied from a sketch in `unit`, where they come to lie in `sketch`. Sizes stay as they are. Between inches and
 * millimetres every place comes to the nearest mark of the sketch's own ruler. What would lie off the card with its middle is
 * brought onto it; what only reaches over an edge may be meant so, and stays. A mat moves with its piece.
 */
export function pastedPlaces(pieces: readonly Piece[], unit: Sketch['unit'], sketch: Sketch): readonly Piece[] {
  const bodies = bodiesOf({ ...sketch, pieces }, pieces);
  const moves = new Map<string, Point>();
  for (const body of bodies) {
    const box = boxOf(body, pieces);
    if (!box) continue;
    const move = moveOf(body, box, sketch, unit !== sketch.unit);
    for (const id of body.tied) moves.set(id, move);
  }
  return pieces.map((piece) => {
    const { x, y } = moves.get(piece.id) ?? { x: 0, y: 0 };
    return { ...piece, x: ticks(piece.x + x), y: ticks(piece.y + y) };
  });
}
