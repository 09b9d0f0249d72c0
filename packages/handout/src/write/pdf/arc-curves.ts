import type { OutlineStep, Point } from '@trimwell/geometry';

type Arc = Extract<OutlineStep, { kind: 'arc' }>;
type Curve = Omit<Extract<OutlineStep, { kind: 'curve' }>, 'kind'>;

/** How far a curve may lie from its arc, in ticks: less than a micrometre, which no printer shows. */
const TOLERANCE = 0.5;

/**
 * How far a cubic with handles of 4/3 tan(angle/4) lies from a circle of radius 1, at the most:
 * 2/27 sin^6(angle/4) / cos^2(angle/4) (M. Goldapp, Approximation of circular arcs by cubic polynomials, 1991, k = 0).
 */
export function arcError(angle: number): number {
  return ((2 / 27) * Math.sin(angle / 4) ** 6) / Math.cos(angle / 4) ** 2;
}

/** In how few equal parts an arc of `span` radians stays within the tolerance. */
function partsOf(span: number, radius: number): number {
  let parts = Math.max(1, Math.ceil(span / (Math.PI / 2) - 1e-9));
  while (radius * arcError(span / parts) >= TOLERANCE) parts += 1;
  return parts;
}

/** The circle of radius 1 through two points, less than half a turn apart: its centre, first angle and signed span. */
function unitArc(from: Point, to: Point, clockwise: boolean) {
  const [dx, dy] = [(to.x - from.x) / 2, (to.y - from.y) / 2];
  const half = Math.min(1, Math.hypot(dx, dy));
  if (half === 0) return null;
  const sign = clockwise ? 1 : -1;
  const height = Math.sqrt(1 - half * half) * sign;
  const centre = {
    x: (from.x + to.x) / 2 - (dy / half) * height,
    y: (from.y + to.y) / 2 + (dx / half) * height,
  };
  return { centre, first: Math.atan2(from.y - centre.y, from.x - centre.x), span: 2 * Math.asin(half) * sign };
}

/** An arc as cubic curves less than half a tick from it; none for an arc without length. */
export function arcCurves(from: Point, { to, radiusX, radiusY, clockwise }: Arc): readonly Curve[] {
  const arc = unitArc(
    { x: from.x / radiusX, y: from.y / radiusY },
    { x: to.x / radiusX, y: to.y / radiusY },
    clockwise,
  );
  if (!arc) return [];
  const { centre, first, span } = arc;
  const parts = partsOf(Math.abs(span), Math.max(radiusX, radiusY));
  const handle = (4 / 3) * Math.tan(span / parts / 4);
  const at = (angle: number, along: number): Point => ({
    x: (centre.x + Math.cos(angle) - along * Math.sin(angle)) * radiusX,
    y: (centre.y + Math.sin(angle) + along * Math.cos(angle)) * radiusY,
  });
  return Array.from({ length: parts }, (_, part) => {
    const [start, end] = [first + (span * part) / parts, first + (span * (part + 1)) / parts];
    return { control1: at(start, handle), control2: at(end, -handle), to: part === parts - 1 ? to : at(end, 0) };
  });
}
