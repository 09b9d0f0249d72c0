import { ellipse, flattenOutline, type OutlineStep, type Point } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arcCurves, arcError } from './arc-curves.js';

type Arc = Extract<OutlineStep, { kind: 'arc' }>;

function along(from: Point, arc: Arc): readonly Point[] {
  const steps = arcCurves(from, arc).map((curve) => ({ kind: 'curve' as const, ...curve }));
  return flattenOutline({ start: from, steps }, 40);
}

/** An arc on the ellipse about (x, y), from one angle by less than half a turn, and how far a point lies from it. */
const arcs = fc.record({
  radiusX: fc.integer({ min: 10, max: 400_000 }),
  ratio: fc.double({ min: 0.2, max: 5, noNaN: true }),
  first: fc.double({ min: -3, max: 3, noNaN: true }),
  span: fc.double({ min: 0.01, max: 3.1, noNaN: true }),
  clockwise: fc.boolean(),
});

test('curves lie within half a tick of their arc, and end where it ends', () => {
  fc.assert(
    fc.property(arcs, ({ radiusX, ratio, first, span, clockwise }) => {
      const radiusY = radiusX * ratio;
      const at = (angle: number): Point => ({
        x: 500 + radiusX * Math.cos(angle),
        y: -700 + radiusY * Math.sin(angle),
      });
      const [from, to] = [at(first), at(first + (clockwise ? span : -span))];
      const points = along(from, { kind: 'arc', to, radiusX, radiusY, clockwise });
      expect(points.at(-1)).toEqual(to);
      const reach = Math.max(radiusX, radiusY);
      for (const { x, y } of points) {
        const off = Math.abs(Math.hypot((x - 500) / radiusX, (y + 700) / radiusY) - 1) * reach;
        expect(off).toBeLessThan(0.5 + reach * 1e-9);
      }
      // The middle of the arc is on the side that its direction says.
      const middle = at(first + (clockwise ? span : -span) / 2);
      const nearest = Math.min(...points.map(({ x, y }) => Math.hypot(x - middle.x, y - middle.y)));
      expect(nearest).toBeLessThan(reach * span * 0.06 + 1);
    }),
    { numRuns: 300, seed: 7 },
  );
});

test('a quarter of a small circle is one curve, of a large one more, and an arc to its own start none', () => {
  const quarter = (radius: number) =>
    arcCurves(
      { x: radius, y: 0 },
      { kind: 'arc', to: { x: 0, y: radius }, radiusX: radius, radiusY: radius, clockwise: true },
    );
  expect(quarter(1000)).toHaveLength(1);
  expect(quarter(97_536)).toHaveLength(2);
  const [first] = ellipse(0, 0, 10, 10).steps;
  expect(first?.kind).toBe('arc');
  expect(
    arcCurves({ x: 1, y: 1 }, { kind: 'arc', to: { x: 1, y: 1 }, radiusX: 5, radiusY: 5, clockwise: true }),
  ).toEqual([]);
});

test('the error of a quarter is the known one', () => {
  // 2.73e-4 of the radius: M. Goldapp 1991, and every table of cubic circles since.
  expect(arcError(Math.PI / 2)).toBeCloseTo(2.73e-4, 6);
});
