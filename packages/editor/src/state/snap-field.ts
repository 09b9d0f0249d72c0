import { type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { type SnapField, type SnapRect, snapTolerance } from './snap.js';

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

/** `piece` as something to snap. */
export function snapRect({ x, y, width, height, tilt }: Piece): SnapRect {
  return { x, y, width, height, tilted: tilt !== 0 };
}

/** What `piece` can snap to on its face; a pixel of the screen is `ticksPerPixel` wide. */
export function snapFieldOf(sketch: Sketch, piece: Piece, ticksPerPixel: number): SnapField {
  const tied = tiedTo(sketch, piece.id);
  const step = rulerStep(sketch.unit);
  return {
    card: sketch.card,
    others: sketch.pieces.filter((other) => other.face === piece.face && !tied.has(other.id)).map(snapRect),
    step,
    tolerance: snapTolerance(ticksPerPixel, step),
  };
}
