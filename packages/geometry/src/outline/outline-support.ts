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
  centres: readonly Point[];
}

interface Parts {
  readonly corners: readonly Point[];
  readonly arcs: readonly LikeArcs[];
}

/** The arcs of circles and the corners of an outline; of other arcs and of curves many corners. */
function partsOf({ start, steps }: Outline): Parts {
  const corners: Point[] = [start];
  const arcs = new Map<string, LikeArcs>();
  let from = start;
  for (const step of steps) {
    const form = step.kind === 'arc' && step.radiusX === step.radiusY ? arcForm(from, step) : null;
    if (form && step.kind === 'arc') {
      const first = form.span < 0 ? form.first + form.span : form.first;
      const span = Math.abs(form.span);
      const key = [step.radiusX, first, span].map((each) => each.toFixed(6)).join();
      const like = arcs.get(key) ?? { radius: step.radiusX, from: first, span, centres: [] };
      arcs.set(key, { ...like, centres: [...like.centres, form.centre] });
      corners.push(step.to);
    } else corners.push(...flattenOutline({ start: from, steps: [step] }, PARTS).slice(1));
    from = step.to;
  }
  // Of arcs along an edge only the outermost can reach furthest.
  const outermost = [...arcs.values()].map((like) => ({ ...like, centres: convexHull(like.centres) }));
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
  const { corners, arcs } = partsOf(outline);
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
