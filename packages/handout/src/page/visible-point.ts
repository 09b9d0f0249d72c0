import type { Point } from '@trimwell/geometry';
import type { Piece } from '@trimwell/sketch';

/** A piece or the card itself as an area that may be covered. */
export type Area = Pick<Piece, 'x' | 'y' | 'width' | 'height' | 'tilt' | 'shape'>;

/** `point` in the area's own untilted directions, from its upper left corner. */
function within({ x, y, width, height, tilt }: Area, point: Point): Point {
  const angle = (-tilt * Math.PI) / 180;
  const [dx, dy] = [point.x - x - width / 2, point.y - y - height / 2];
  return {
    x: dx * Math.cos(angle) - dy * Math.sin(angle) + width / 2,
    y: dx * Math.sin(angle) + dy * Math.cos(angle) + height / 2,
  };
}

function without({ x, y, width, height, tilt }: Area, own: Point): Point {
  const angle = (tilt * Math.PI) / 180;
  const [dx, dy] = [own.x - width / 2, own.y - height / 2];
  return {
    x: x + width / 2 + dx * Math.cos(angle) - dy * Math.sin(angle),
    y: y + height / 2 + dx * Math.sin(angle) + dy * Math.cos(angle),
  };
}

function covers(area: Area, point: Point): boolean {
  const { x, y } = within(area, point);
  const { width, height } = area;
  if (area.shape === 'ellipse') return ((2 * x) / width - 1) ** 2 + ((2 * y) / height - 1) ** 2 < 1;
  return x > 0 && x < width && y > 0 && y < height;
}

/** How finely an area is searched, and how far from its edges, as a share of its shorter side and in ticks at most. */
const STEPS = 14;
const INSET_SHARE = 0.12;
const MOST_INSET = 900;

/** Points of `area` that none of `above` covers, on a grid that has a row close to each edge. */
export function visiblePoints(area: Area, above: readonly Area[]): readonly Point[] {
  const { width, height, shape } = area;
  const inset = Math.min(MOST_INSET, INSET_SHARE * Math.min(width, height));
  const along = (length: number): readonly number[] =>
    Array.from({ length: STEPS + 1 }, (_, index) => inset + ((length - 2 * inset) * index) / STEPS);
  const own = along(width).flatMap((x) => along(height).map((y) => ({ x, y })));
  const inside = (point: Point): boolean =>
    shape !== 'ellipse' || covers({ ...area, tilt: 0 }, { x: area.x + point.x, y: area.y + point.y });
  return own
    .filter(inside)
    .map((point) => without(area, point))
    .filter((point) => !above.some((other) => covers(other, point)));
}

/** The corners of an area as it lies. */
export function areaCorners(area: Area): readonly Point[] {
  const { width, height } = area;
  return [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ].map((corner) => without(area, corner));
}
