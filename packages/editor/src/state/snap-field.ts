import { type Piece, rulerStep, type Sketch } from '@trimwell/sketch';
import { type Body, boxAround } from './group.js';
import { type SnapField, type SnapRect, snapTolerance } from './snap.js';

/** `piece` as something to snap. */
export function snapRect({ x, y, width, height, tilt, name }: Piece): SnapRect {
  return { x, y, width, height, tilted: tilt !== 0, name };
}

/**
 * What `bodies` can snap to on the face of `piece`: all that is to be seen there and does not move along, locked pieces
 * too. A pixel of the screen is `ticksPerPixel` wide.
 */
export function snapFieldOf(sketch: Sketch, piece: Piece, bodies: readonly Body[], ticksPerPixel: number): SnapField {
  const moves = (id: string): boolean => bodies.some(({ tied }) => tied.has(id));
  const step = rulerStep(sketch.unit);
  return {
    card: sketch.card,
    others: sketch.pieces
      .filter((other) => other.face === piece.face && !other.hidden && !moves(other.id))
      .map(snapRect),
    step,
    tolerance: snapTolerance(ticksPerPixel, step),
  };
}

/** Several bodies as one rectangle to snap: the box around those that are upright, or `lead` alone when none is. */
export function groupRect(bodies: readonly Body[], lead: Body): SnapRect {
  if (bodies.length === 1) return snapRect(lead.handle);
  const upright = bodies.map(({ handle }) => handle).filter(({ tilt }) => tilt === 0);
  return boxAround(upright) ?? snapRect(lead.handle);
}
