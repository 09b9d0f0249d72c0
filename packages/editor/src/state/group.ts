import type { Rect } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import { selectedPieces } from './state.js';

/**
 * What moves as one: a piece with all its mats. `handle` is the outermost selected piece of it, whose place stands for
 * the whole; an edit of it moves them all.
 */
export interface Body {
  readonly handle: Piece;
  /** Ids of everything that moves along, the handle's included. */
  readonly tied: ReadonlySet<string>;
  /** A locked piece holds all that is tied to it. */
  readonly locked: Piece | null;
}

/** The ids of all pieces that move with `id`: what it mats, what mats it, and so on. */
export function tiedTo(sketch: Sketch, id: string): ReadonlySet<string> {
  const tied = new Set([id]);
  for (let before = 0; before < tied.size; ) {
    before = tied.size;
    for (const { id: mat, mats } of sketch.pieces) {
      if (!mats) continue;
      if (tied.has(mat)) tied.add(mats.piece);
      if (tied.has(mats.piece)) tied.add(mat);
    }
  }
  return tied;
}

/** The locked piece among those that move with `piece`, itself first; null when it is free to move. */
export function holdOf(sketch: Sketch, piece: Piece): Piece | null {
  if (piece.locked) return piece;
  const tied = tiedTo(sketch, piece.id);
  return tied.size === 1 ? null : (sketch.pieces.find((other) => other.locked && tied.has(other.id)) ?? null);
}

/** How many mats lie between `piece` and the innermost piece that it mats. */
function matsWithin(sketch: Sketch, piece: Piece): number {
  const inner = piece.mats && sketch.pieces.find((other) => other.id === piece.mats?.piece);
  return inner ? 1 + matsWithin(sketch, inner) : 0;
}

/** `pieces` as what moves: a mat and its inner piece are one body. In the order of `pieces`. */
export function bodiesOf(sketch: Sketch, pieces: readonly Piece[]): readonly Body[] {
  const bodies: Body[] = [];
  for (const piece of pieces) {
    const at = bodies.findIndex(({ tied }) => tied.has(piece.id));
    const known = bodies[at];
    if (!known) bodies.push({ handle: piece, tied: tiedTo(sketch, piece.id), locked: holdOf(sketch, piece) });
    else if (matsWithin(sketch, piece) > matsWithin(sketch, known.handle)) bodies[at] = { ...known, handle: piece };
  }
  return bodies;
}

/** What of the selection moves, in gluing order. */
export function selectedBodies(state: {
  readonly sketch: Sketch;
  readonly selection: readonly string[];
}): readonly Body[] {
  return bodiesOf(state.sketch, selectedPieces(state));
}

/** The body of the piece that was taken last, or null. */
export function leadBody(bodies: readonly Body[], selection: readonly string[]): Body | null {
  const last = selection.at(-1);
  return bodies.find(({ tied }) => last !== undefined && tied.has(last)) ?? null;
}

/** A box on the card; the corners of a tilted piece lie between ticks. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The least box around `places`; null without any. */
export function boxAround(places: readonly Rect[]): Rect | null;
export function boxAround(places: readonly Box[]): Box | null;
export function boxAround(places: readonly Box[]): Box | null {
  const [first, ...others] = places;
  if (!first) return null;
  return others.reduce<Box>((box, place) => {
    const [x, y] = [Math.min(box.x, place.x), Math.min(box.y, place.y)];
    const right = Math.max(box.x + box.width, place.x + place.width);
    const bottom = Math.max(box.y + box.height, place.y + place.height);
    return { x, y, width: right - x, height: bottom - y };
  }, first);
}
