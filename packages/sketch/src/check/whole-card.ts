import { placedBounds, type Size, ticks } from '@trimwell/geometry';
import { placedPiece } from '../batch/hidden-centres.js';
import type { Sketch } from '../model/sketch.js';
import { isLifted } from './levels.js';

/** The size of the closed card with all that hangs over its edges, in whole ticks, rounded up. */
export function closedSize(sketch: Sketch): Size {
  const box = { left: 0, top: 0, right: sketch.card.width as number, bottom: sketch.card.height as number };
  const { width, fold } = sketch.card;
  for (const piece of sketch.pieces) {
    const { top, bottom, ...across } = placedBounds(placedPiece(sketch, piece));
    // Without a fold the inside is the back, which is seen from behind.
    const mirrored = fold === 'none' && piece.face === 'inside';
    const [left, right] = mirrored ? [width - across.right, width - across.left] : [across.left, across.right];
    box.left = Math.min(box.left, left);
    box.top = Math.min(box.top, top);
    box.right = Math.max(box.right, right);
    box.bottom = Math.max(box.bottom, bottom);
  }
  return { width: ticks(Math.ceil(box.right - box.left)), height: ticks(Math.ceil(box.bottom - box.top)) };
}

/**
 * True when changing `sketch` into `after` may matter to the card as a whole, so that it has to be looked at as one: to an envelope or a
 * letter, to what stands on foam, or by growing out of its size.
 */
export function concernsCard(sketch: Sketch, after: Sketch, post: string | null): boolean {
  if (after.card.envelope !== undefined || post !== null) return true;
  if (after.pieces.some((piece) => isLifted(after, piece))) return true;
  const [was, is] = [closedSize(sketch), closedSize(after)];
  return was.width !== is.width || was.height !== is.height;
}
