import { arcForm, type OutlineStep, type Point } from '@trimwell/geometry';

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

/** An arc as cubic curves less than half a tick from it; none for an arc without length. */
export function arcCurves(from: Point, arc: Arc): readonly Curve[] {
  const form = arcForm(from, arc);
  if (!form) return [];
  const { to, radiusX, radiusY } = arc;
  const { centre, first, span } = form;
  const parts = partsOf(Math.abs(span), Math.max(radiusX, radiusY));
  const handle = (4 / 3) * Math.tan(span / parts / 4);
  const at = (angle: number, along: number): Point => ({
    x: centre.x + (Math.cos(angle) - along * Math.sin(angle)) * radiusX,
    y: centre.y + (Math.sin(angle) + along * Math.cos(angle)) * radiusY,
  });
  return Array.from({ length: parts }, (_, part) => {
    const [start, end] = [first + (span * part) / parts, first + (span * (part + 1)) / parts];
    return { control1: at(start, handle), control2: at(end, -handle), to: part === parts - 1 ? to : at(end, 0) };
  });
}
