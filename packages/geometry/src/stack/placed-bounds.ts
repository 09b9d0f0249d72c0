import { flattenOutline } from '../outline/flatten.js';
import { pieceOutline } from '../outline/shapes.js';
import type { PlacedPiece } from './placed-piece.js';

/** The upright box around a piece where it lies, in floating ticks. */
export interface PlacedBounds {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Straight parts of each curve of a tilted outline: they leave the true edge by less than 1/10000 of its radius. */
const PARTS = 64;

function about(x: number, y: number, halfWidth: number, halfHeight: number): PlacedBounds {
  return { left: x - halfWidth, top: y - halfHeight, right: x + halfWidth, bottom: y + halfHeight };
}

/**
 * The box that the outline of a piece really reaches to. Exact for upright pieces and for half turns; of a tilted ellipse
 * the half sides are `hypot(a cos t, b sin t)` and `hypot(a sin t, b cos t)`, from the support function of an ellipse.
 */
export function placedBounds({ shape, x, y, tilt }: PlacedPiece): PlacedBounds {
  const { width, height } = shape;
  const [middleX, middleY] = [x + width / 2, y + height / 2];
  if (tilt % 180 === 0) return { left: x, top: y, right: x + width, bottom: y + height };
  if (tilt % 90 === 0) return about(middleX, middleY, height / 2, width / 2);
  const [cos, sin] = [Math.cos((tilt * Math.PI) / 180), Math.sin((tilt * Math.PI) / 180)];
  if (shape.shape === 'ellipse') {
    const [a, b] = [width / 2, height / 2];
    return about(middleX, middleY, Math.hypot(a * cos, b * sin), Math.hypot(a * sin, b * cos));
  }
  const points = flattenOutline(pieceOutline(shape).outline, PARTS).map((point) => {
    const [dx, dy] = [point.x - width / 2, point.y - height / 2];
    return { x: middleX + dx * cos - dy * sin, y: middleY + dx * sin + dy * cos };
  });
  return {
    left: Math.min(...points.map((point) => point.x)),
    top: Math.min(...points.map((point) => point.y)),
    right: Math.max(...points.map((point) => point.x)),
    bottom: Math.max(...points.map((point) => point.y)),
  };
}
