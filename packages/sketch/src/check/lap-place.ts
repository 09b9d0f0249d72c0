import type { PlacedPiece } from '@trimwell/geometry';
import { placedRectangle } from './placed-rectangle.js';

/**
 * What two rectangles whose sides run alike share, grown by `by` ticks on all sides, as a rectangle that is turned like the first one. They
 * must lie over each other. Round corners and punches are left out.
 */
export function lapPlace(one: PlacedPiece, other: PlacedPiece, by: number): PlacedPiece {
  const angle = (one.tilt * Math.PI) / 180;
  const [cos, sin] = one.tilt === 0 ? [1, 0] : [Math.cos(angle), Math.sin(angle)];
  const [middleX, middleY] = [one.x + one.shape.width / 2, one.y + one.shape.height / 2];
  const [dx, dy] = [other.x + other.shape.width / 2 - middleX, other.y + other.shape.height / 2 - middleY];
  // In the untilted frame of the first one.
  const [across, down] = [dx * cos + dy * sin, dy * cos - dx * sin];
  const quarter = Math.round((other.tilt - one.tilt) / 90) % 2 !== 0;
  const [wide, high] = quarter ? [other.shape.height, other.shape.width] : [other.shape.width, other.shape.height];
  const left = Math.max(-one.shape.width / 2, across - wide / 2) - by;
  const right = Math.min(one.shape.width / 2, across + wide / 2) + by;
  const top = Math.max(-one.shape.height / 2, down - high / 2) - by;
  const bottom = Math.min(one.shape.height / 2, down + high / 2) + by;
  const [offX, offY] = [(left + right) / 2, (top + bottom) / 2];
  const width = Math.max(1, Math.round(right - left));
  const height = Math.max(1, Math.round(bottom - top));
  const x = Math.round(middleX + offX * cos - offY * sin - width / 2);
  const y = Math.round(middleY + offX * sin + offY * cos - height / 2);
  return placedRectangle(x, y, width, height, one.tilt);
}
