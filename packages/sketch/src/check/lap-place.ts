import { type PlacedPiece, ticks } from '@trimwell/geometry';

/**
 * What two rectangles whose sides run alike share, grown by `by` ticks on all sides, as a rectangle that is turned like the first one. They
 * must lie over each other. Round corners and punches are left out.
 */
export function lapPlace(one: PlacedPiece, other: PlacedPiece, by = 0): PlacedPiece {
  const angle = (one.tilt * Math.PI) / 180;
  const [cos, sin] = one.tilt === 0 ? [1, 0] : [Math.cos(angle), Math.sin(angle)];
  const [middleX, middleY] = [one.x + one.shape.width / 2, one.y + one.shape.height / 2];
  const [dx, dy] = [other.x + other.shape.width / 2 - middleX, other.y + other.shape.height / 2 - middleY];
  // In the untilted frame of the first one.
  const [across, down] = [dx * cos + dy * sin, dy * cos - dx * sin];
  const quarter = Math.round((other.tilt - one.tilt) / 90) % 2 !== 0;
  const { width, height } = other.shape;
  const [wide, high] = quarter ? [height, width] : [width, height];
  const left = Math.max(-one.shape.width / 2, across - wide / 2) - by;
  const right = Math.min(one.shape.width / 2, across + wide / 2) + by;
  const top = Math.max(-one.shape.height / 2, down - high / 2) - by;
  const bottom = Math.min(one.shape.height / 2, down + high / 2) + by;
  const [offX, offY] = [(left + right) / 2, (top + bottom) / 2];
  const size = {
    width: ticks(Math.max(1, Math.round(right - left))),
    height: ticks(Math.max(1, Math.round(bottom - top))),
  };
  const square = ticks(0);
  return {
    shape: { shape: 'rectangle', ...size, corners: { tl: square, tr: square, br: square, bl: square }, punched: {} },
    x: ticks(Math.round(middleX + offX * cos - offY * sin - size.width / 2)),
    y: ticks(Math.round(middleY + offX * sin + offY * cos - size.height / 2)),
    tilt: one.tilt,
  };
}
