import { arcForm, type OutlineStep, type Point } from '@trimwell/geometry';

/** A smooth curve over 0 to 1: its points, and its direction of travel as a vector of any length but 0. */
export interface SmoothCurve {
  readonly at: (t: number) => Point;
  readonly towards: (t: number) => Point;
}

type Arc = Extract<OutlineStep, { kind: 'arc' }>;
type Cubic = Extract<OutlineStep, { kind: 'curve' }>;

function sum(points: readonly (readonly [number, Point])[]): Point {
  return {
    x: points.reduce((total, [share, { x }]) => total + share * x, 0),
    y: points.reduce((total, [share, { y }]) => total + share * y, 0),
  };
}

function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y };
}

/** A cubic Bézier curve; where a control point lies on its end, the direction comes from the other one. */
export function cubicCurve(from: Point, { control1, control2, to }: Cubic): SmoothCurve {
  const [first, middle, last] = [minus(control1, from), minus(control2, control1), minus(to, control2)];
  const nothing = ({ x, y }: Point): boolean => Math.hypot(x, y) < 1e-9;
  return {
    at: (t) => {
      const u = 1 - t;
      return sum([
        [u * u * u, from],
        [3 * u * u * t, control1],
        [3 * u * t * t, control2],
        [t * t * t, to],
      ]);
    },
    towards: (t) => {
      const u = 1 - t;
      const found = sum([
        [u * u, first],
        [2 * u * t, middle],
        [t * t, last],
      ]);
      if (!nothing(found)) return found;
      return t < 0.5 ? minus(control2, from) : minus(to, control1);
    },
  };
}

/** An elliptic arc with axes along x and y, at most half a turn. @throws RangeError for one that ends where it starts. */
export function ellipticCurve(from: Point, arc: Arc): SmoothCurve {
  const { to, radiusX, radiusY, clockwise } = arc;
  const sign = clockwise ? 1 : -1;
  const form = arcForm(from, arc);
  if (!form) throw new RangeError('An arc without length has no direction.');
  const { centre, first, span } = form;
  return {
    at: (t) => {
      if (t <= 0) return from;
      if (t >= 1) return to;
      const angle = first + span * t;
      return { x: centre.x + radiusX * Math.cos(angle), y: centre.y + radiusY * Math.sin(angle) };
    },
    towards: (t) => {
      const angle = first + span * t;
      return { x: -radiusX * Math.sin(angle) * sign, y: radiusY * Math.cos(angle) * sign };
    },
  };
}
