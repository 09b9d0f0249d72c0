import type { Outline, OutlineStep, Point } from '@trimwell/geometry';
import { arcPieces } from './arc-pieces.js';
import { cubicCurve, ellipticCurve } from './smooth-curve.js';

/**
 * A vertex of a closed line of straight pieces and circular arcs: `bulge` is the tangent of a quarter of the angle that
 * the piece to the next vertex turns by, positive when it turns counterclockwise with y up (DXF reference, LWPOLYLINE,
 * group code 42), 0 when it is straight. Places in ticks, y down.
 */
export interface BulgeVertex extends Point {
  readonly bulge: number;
}

/** How far a vertex may lie from the next to be the same one, in ticks: a tenth of a micrometre. */
const SAME = 0.064;

/** The bulge of a circular arc of `radius` over a chord, at most half a turn: tan(angle / 4) from sin(angle / 2). */
function circularBulge(from: Point, to: Point, radius: number, clockwise: boolean): number {
  const half = Math.min(1, Math.hypot(to.x - from.x, to.y - from.y) / 2 / radius);
  const bulge = half / (1 + Math.sqrt(1 - half * half));
  return clockwise ? -bulge : bulge;
}

function verticesOf(from: Point, step: OutlineStep): readonly BulgeVertex[] {
  if (step.kind === 'line') return [{ ...from, bulge: 0 }];
  if (step.kind === 'curve') return arcPieces(cubicCurve(from, step));
  const { to, radiusX, radiusY, clockwise } = step;
  if (Math.abs(radiusX - radiusY) < SAME) return [{ ...from, bulge: circularBulge(from, to, radiusX, clockwise) }];
  return arcPieces(ellipticCurve(from, step));
}

/**
 * A closed outline as vertices with bulges, the last joined to the first again. Lines and circular arcs are exact;
 * elliptic arcs and curves become circular arcs that lie within `ARC_TOLERANCE` of them and meet without a kink.
 */
export function bulgeVertices({ start, steps }: Outline): readonly BulgeVertex[] {
  const vertices: BulgeVertex[] = [];
  let from = start;
  for (const step of steps) {
    if (Math.hypot(step.to.x - from.x, step.to.y - from.y) >= SAME) vertices.push(...verticesOf(from, step));
    from = step.to;
  }
  return vertices;
}
