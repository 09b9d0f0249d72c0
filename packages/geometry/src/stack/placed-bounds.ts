import type { PlacedPiece } from './placed-piece.js';
import { supportOf } from './support.js';

/** The upright box around a piece where it lies, in floating ticks. */
export interface PlacedBounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** True when two upright boxes share some area. */
export function boxesMeet(one: PlacedBounds, other: PlacedBounds): boolean {
  return one.left < other.right && one.right > other.left && one.top < other.bottom && one.bottom > other.top;
}

function about(x: number, y: number, halfWidth: number, halfHeight: number): PlacedBounds {
  return { left: x - halfWidth, top: y - halfHeight, right: x + halfWidth, bottom: y + halfHeight };
}

const known = new WeakMap<PlacedPiece, PlacedBounds>();

/** The box that the outline of a piece really reaches to: exact for upright pieces and quarter turns, else as exact as `supportOf`. */
export function placedBounds(piece: PlacedPiece): PlacedBounds {
  const found = known.get(piece);
  if (found) return found;
  const bounds = findBounds(piece);
  known.set(piece, bounds);
  return bounds;
}

function findBounds(piece: PlacedPiece): PlacedBounds {
  const { shape, x, y, tilt } = piece;
  const { width, height } = shape;
  const [middleX, middleY] = [x + width / 2, y + height / 2];
  if (tilt % 180 === 0) return { left: x, top: y, right: x + width, bottom: y + height };
  if (tilt % 90 === 0) return about(middleX, middleY, height / 2, width / 2);
  const reach = supportOf(piece);
  return {
    left: middleX - reach(-1, 0),
    top: middleY - reach(0, -1),
    right: middleX + reach(1, 0),
    bottom: middleY + reach(0, 1),
  };
}
