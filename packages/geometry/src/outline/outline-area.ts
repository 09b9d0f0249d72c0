import type { Point } from '../rect/rect.js';
import type { Outline, OutlineStep } from './outline.js';

function cross(a: Point, b: Point): number {
  return (a.x * b.y - b.x * a.y) / 2;
}

/** Area between an arc of at most half a turn and its chord: rx ry (t - sin t) / 2, t the angle it spans on the circle. */
function segmentArea(from: Point, { to, radiusX, radiusY }: Extract<OutlineStep, { kind: 'arc' }>): number {
  const half = Math.min(1, Math.hypot((to.x - from.x) / radiusX, (to.y - from.y) / radiusY) / 2);
  const angle = 2 * Math.asin(half);
  return (radiusX * radiusY * (angle - Math.sin(angle))) / 2;
}

/** Area to the left of a cubic against the origin: the integral of (x dy - y dx) / 2 over its four points. */
function curveArea(a: Point, b: Point, c: Point, d: Point): number {
  return (6 * cross(a, b) + 3 * cross(a, c) + cross(a, d) + 3 * cross(b, c) + 3 * cross(b, d) + 6 * cross(c, d)) / 10;
}

/** Area inside an outline in square ticks, exact for lines, arcs and curves; positive when it is walked clockwise. */
export function outlineArea({ start, steps }: Outline): number {
  let area = 0;
  let from = start;
  for (const step of steps) {
    if (step.kind === 'curve') area += curveArea(from, step.control1, step.control2, step.to);
    else area += cross(from, step.to);
    if (step.kind === 'arc') area += (step.clockwise ? 1 : -1) * segmentArea(from, step);
    from = step.to;
  }
  return area;
}
