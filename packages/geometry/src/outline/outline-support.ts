import type { Point } from '../rect/rect.js';
import { convexHull } from './convex-hull.js';
import { arcForm, flattenOutline } from './flatten.js';
import type { Outline } from './outline.js';

/** Straight parts of a curve: they leave it by less than 1/10000 of its size. */
const PARTS = 64;
const TURN = 2 * Math.PI;

/** Arcs of one radius that begin and end at the same angles: about their centres they all reach as far. */
interface LikeArcs {
  readonly radius: number;
  /** Where they begin, clockwise, and how far they go, in radians. */
  readonly from: number;
  readonly span: number;
  readonly centres: Point[];
}

/** The corners of the hull of an outline's lines and curves, and its arcs of circles, of like ones the outermost. */
function cornersAndArcs({ start, steps }: Outline) {
  const corners: Point[] = [start];
  const arcs = new Map<string, LikeArcs>();
  let from = start;
  for (const step of steps) {
    const circular = step.kind === 'arc' && step.radiusX === step.radiusY;
    const form = circular ? arcForm(from, step) : null;
    if (circular && form) {
      const first = form.span < 0 ? form.first + form.span : form.first;
      const span = Math.abs(form.span);
      const key = [step.radiusX, first, span].map((each) => each.toFixed(6)).join();
      const like = arcs.get(key) ?? { radius: step.radiusX, from: first, span, centres: [] };
      like.centres.push(form.centre);
      arcs.set(key, like);
      corners.push(step.to);
    } else corners.push(...flattenOutline({ start: from, steps: [step] }, PARTS).slice(1));
    from = step.to;
  }
  // Of arcs along an edge only the outermost can reach furthest.
  const outermost = [...arcs.values()].map(({ centres, ...like }) => ({ ...like, centres: convexHull(centres) }));
  return { corners: convexHull(corners), arcs: outermost };
}

function furthest(points: readonly Point[], x: number, y: number): number {
  let most = -Infinity;
  for (const point of points) most = Math.max(most, point.x * x + point.y * y);
  return most;
}

/**
 * How far an outline reaches from (0, 0) along a direction, given as a unit vector: the support function of its convex hull. Exact for
 * lines and arcs of circles, within 1/10000 of the size of other curves.
 */
export function outlineSupport(outline: Outline): (x: number, y: number) => number {
  const { corners, arcs } = cornersAndArcs(outline);
  return (x, y) => {
    const angle = Math.atan2(y, x);
    let most = furthest(corners, x, y);
    for (const { radius, from, span, centres } of arcs) {
      const turned = (((angle - from) % TURN) + TURN) % TURN;
      if (turned <= span) most = Math.max(most, radius + furthest(centres, x, y));
    }
    return most;
  };
}
