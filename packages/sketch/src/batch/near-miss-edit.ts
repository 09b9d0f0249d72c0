import { type Length, nearestStep, ticks } from '@trimwell/geometry';
import type { Edit, Piece, Sketch } from '../model/sketch.js';

export type Side = 'width' | 'height';
export type ResizeEdit = Extract<Edit, { readonly do: 'resize' }>;

/** The marks of the ruler below `length`, at most `tolerance` below it, the nearest first; never nothing at all. */
export function smallerMarks(length: Length, tolerance: Length, step: Length): readonly Length[] {
  const marks: Length[] = [];
  const least = Math.max(step, length - tolerance);
  for (let mark = (Math.ceil(length / step) - 1) * step; mark >= least; mark -= step) marks.push(ticks(mark));
  return marks;
}

/**
 * The edit that makes one side of `piece` smaller about its middle. A piece that stood on a mark of the ruler stands on
 * one afterwards, so its middle may move by half a step; any other keeps its middle to the tick.
 */
export function shrinkAbout(piece: Piece, side: Side, to: Length, step: Length): ResizeEdit {
  const { x, y, width, height } = piece;
  const at = side === 'width' ? x : y;
  const half = (piece[side] - to) / 2;
  const start = ticks(at + (at % step === 0 ? nearestStep(half, step) : Math.round(half)));
  return side === 'width'
    ? { do: 'resize', piece: piece.id, x: start, y, width: to, height }
    : { do: 'resize', piece: piece.id, x, y: start, width, height: to };
}

/** True for a circle: it stays one. */
export function isRound({ shape, width, height }: Piece): boolean {
  return shape === 'ellipse' && width === height;
}

/** The edits that make `piece` smaller by marks of the ruler: either side by itself, both at once for a circle. */
export function smallerEdits(piece: Piece, tolerance: Length, step: Length): readonly (readonly ResizeEdit[])[] {
  if (isRound(piece)) {
    const both = (to: Length): ResizeEdit => {
      const { x, width } = shrinkAbout(piece, 'width', to, step);
      return { ...shrinkAbout(piece, 'height', to, step), x, width };
    };
    return [smallerMarks(piece.width, tolerance, step).map(both)];
  }
  return (['width', 'height'] satisfies Side[]).map((side) =>
    smallerMarks(piece[side], tolerance, step).map((to) => shrinkAbout(piece, side, to, step)),
  );
}

/** The mats that follow `piece`, directly or through another mat, in gluing order. */
export function matsOf(sketch: Sketch, piece: Piece): readonly Piece[] {
  const following = new Set([piece.id]);
  for (let grown = true; grown; ) {
    const more = sketch.pieces.filter(({ id, mats }) => mats && following.has(mats.piece) && !following.has(id));
    for (const { id } of more) following.add(id);
    grown = more.length > 0;
  }
  return sketch.pieces.filter(({ id }) => id !== piece.id && following.has(id));
}
