import type { Point } from '../rect/rect.js';
import type { Outline, OutlineStep } from './outline.js';

type Arc = Extract<OutlineStep, { kind: 'arc' }>;

/** An arc about its centre: where it begins and how far it goes, in radians of its unit circle, clockwise above 0. */
export interface ArcForm {
  readonly centre: Point;
  readonly first: number;
  readonly span: number;
}

/** The centre form of an arc (W3C SVG 2, appendix B.2.4); null when it ends where it starts. */
export function arcForm(from: Point, { to, radiusX, radiusY, clockwise }: Arc): ArcForm | null {
  const [dx, dy] = [(to.x - from.x) / radiusX / 2, (to.y - from.y) / radiusY / 2];
  const half = Math.min(1, Math.hypot(dx, dy));
  if (half === 0) return null;
  const height = Math.sqrt(1 - half * half) * (clockwise ? 1 : -1);
  const middle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const centre = { x: middle.x - (dy / half) * height * radiusX, y: middle.y + (dx / half) * height * radiusY };
  const first = Math.atan2((from.y - centre.y) / radiusY, (from.x - centre.x) / radiusX);
  return { centre, first, span: 2 * Math.asin(half) * (clockwise ? 1 : -1) };
}

/** Points on an arc without its start, its end included. */
function arcPoints(from: Point, arc: Arc, pieces: number): readonly Point[] {
  const form = arcForm(from, arc);
  const { to, radiusX, radiusY } = arc;
  if (!form) return [to];
  const { centre, first, span } = form;
  return Array.from({ length: pieces }, (_, index) => {
    if (index === pieces - 1) return to;
    const angle = first + (span * (index + 1)) / pieces;
    return { x: centre.x + radiusX * Math.cos(angle), y: centre.y + radiusY * Math.sin(angle) };
  });
}

function curvePoints(a: Point, step: Extract<OutlineStep, { kind: 'curve' }>, pieces: number): readonly Point[] {
  const { control1: b, control2: c, to: d } = step;
  return Array.from({ length: pieces }, (_, index) => {
    const t = (index + 1) / pieces;
    const u = 1 - t;
    const [ka, kb, kc, kd] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    return { x: ka * a.x + kb * b.x + kc * c.x + kd * d.x, y: ka * a.y + kb * b.y + kc * c.y + kd * d.y };
  });
}

/** The outline as a polygon, every arc and curve in `pieces` straight pieces; the last point is the start again. */
export function flattenOutline({ start, steps }: Outline, pieces = 16): readonly Point[] {
  const points: Point[] = [start];
  let from = start;
  for (const step of steps) {
    if (step.kind === 'arc') points.push(...arcPoints(from, step, pieces));
    else if (step.kind === 'curve') points.push(...curvePoints(from, step, pieces));
    else points.push(step.to);
    from = step.to;
  }
  return points;
}
