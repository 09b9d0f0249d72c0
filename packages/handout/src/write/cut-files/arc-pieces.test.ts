import { flattenOutline, inches, type Outline, outlineArea, type Point } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ARC_TOLERANCE } from './arc-pieces.js';
import { type BulgeVertex, bulgeVertices } from './bulge.js';

/** Points on the arc of a bulge, from its chord, middle and radius alone (DXF reference, LWPOLYLINE, group code 42). */
function along(from: BulgeVertex, to: Point, pieces: number): readonly Point[] {
  const turn = -4 * Math.atan(from.bulge);
  if (Math.abs(turn) < 1e-9)
    return Array.from({ length: pieces }, (_, n) => ({
      x: from.x + ((to.x - from.x) * n) / pieces,
      y: from.y + ((to.y - from.y) * n) / pieces,
    }));
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const radius = chord / 2 / Math.sin(turn / 2);
  const heading = Math.atan2(to.y - from.y, to.x - from.x) - turn / 2;
  const centre = { x: from.x - radius * Math.sin(heading), y: from.y + radius * Math.cos(heading) };
  return Array.from({ length: pieces }, (_, n) => {
    const at = heading + (turn * n) / pieces;
    return { x: centre.x + radius * Math.sin(at), y: centre.y - radius * Math.cos(at) };
  });
}

function walked(vertices: readonly BulgeVertex[], pieces: number): readonly Point[] {
  return vertices.flatMap((vertex, index) =>
    along(vertex, vertices[(index + 1) % vertices.length] as BulgeVertex, pieces),
  );
}

function toSide(point: Point, a: Point, b: Point): number {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const share = length === 0 ? 0 : ((point.x - a.x) * (b.x - a.x) + (point.y - a.y) * (b.y - a.y)) / length ** 2;
  const part = Math.max(0, Math.min(1, share));
  return Math.hypot(point.x - a.x - part * (b.x - a.x), point.y - a.y - part * (b.y - a.y));
}

/** How far the farthest of `points` lies from the polygon. */
function farthest(points: readonly Point[], polygon: readonly Point[]): number {
  return Math.max(
    ...points.map((point) =>
      Math.min(
        ...polygon.map((corner, index) => toSide(point, corner, polygon[(index + 1) % polygon.length] as Point)),
      ),
    ),
  );
}

/** Sides of the finest polygon: to the arc of a 6 in radius they are nearer than a fiftieth of the tolerance. */
const FINE = 600;

function expectNear(outline: Outline): void {
  const vertices = bulgeVertices(outline);
  const exact = flattenOutline(outline, FINE);
  const steps = Math.max(2, Math.ceil((FINE * outline.steps.length) / vertices.length / 8));
  const arcs = walked(vertices, steps);
  expect(farthest(arcs, exact)).toBeLessThan(ARC_TOLERANCE);
  // The other way round: nothing of the outline is left out.
  const fine = walked(vertices, steps * 8);
  expect(farthest(flattenOutline(outline, 40), fine)).toBeLessThan(ARC_TOLERANCE);
}

function ellipseOf(width: number, height: number): Outline {
  const [x, y] = [width / 2, height / 2];
  const quarter = (toX: number, toY: number) =>
    ({ kind: 'arc', to: { x: toX, y: toY }, radiusX: x, radiusY: y, clockwise: true }) as const;
  return { start: { x, y: 0 }, steps: [quarter(width, y), quarter(x, height), quarter(0, y), quarter(x, 0)] };
}

test('ellipses as arcs lie within 0.005 mm, with the area of pi a b', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2_000, max: 200_000 }), fc.integer({ min: 2_000, max: 200_000 }), (width, height) => {
      const outline = ellipseOf(width, height);
      expectNear(outline);
      const points = walked(bulgeVertices(outline), 200);
      const [start, ...others] = points as [Point, ...Point[]];
      const polygon = { start, steps: [...others, start].map((to) => ({ kind: 'line' as const, to })) };
      const area = (Math.PI * width * height) / 4;
      const around = 2 * (width + height);
      expect(Math.abs(Math.abs(outlineArea(polygon)) - area)).toBeLessThan(around * ARC_TOLERANCE);
    }),
    { numRuns: 12 },
  );
});

test('any curve as arcs lies within 0.005 mm, also one with a turning point or a handle of no length', () => {
  const at = fc.integer({ min: 0, max: 60_000 });
  const half = fc.record({
    length: fc.integer({ min: 800, max: 30_000 }),
    depth: fc.integer({ min: 200, max: 12_000 }),
  });
  fc.assert(
    fc.property(half, fc.constantFrom(0, 0.3642, 0.5), at, ({ length, depth }, handle, x) => {
      const from = { x, y: 0 };
      const to = { x: x + length, y: depth };
      const controls = {
        control1: { x: x + handle * length, y: 0 },
        control2: { x: x + (1 - handle) * length, y: depth },
      };
      const line = (px: number, py: number) => ({ kind: 'line' as const, to: { x: px, y: py } });
      expectNear({ start: from, steps: [{ kind: 'curve', ...controls, to }, line(x, depth + 90_000), line(x, 0)] });
    }),
    { numRuns: 25 },
  );
});

test('a circle is four exact quarter arcs, each of bulge tan(90 / 4 degrees), clockwise with y up (plain trigonometry)', () => {
  const vertices = bulgeVertices(ellipseOf(inches(2), inches(2)));
  expect(vertices).toHaveLength(4);
  for (const { bulge } of vertices) expect(bulge).toBeCloseTo(-Math.tan(Math.PI / 8), 12);
});

test('a half turn has a bulge of one, and a straight step none', () => {
  const half = { kind: 'arc', to: { x: 0, y: 0 }, radiusX: 50, radiusY: 50, clockwise: false } as const;
  const [straight, round] = bulgeVertices({
    start: { x: 0, y: 0 },
    steps: [{ kind: 'line', to: { x: 0, y: 100 } }, half],
  });
  expect([straight?.bulge, round?.bulge]).toEqual([0, 1]);
});
