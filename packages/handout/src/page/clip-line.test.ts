import fc from 'fast-check';
import { expect, test } from 'vitest';
import { clipLine, clipPath } from './clip-line.js';

const box = { x: 0, y: 0, width: 100, height: 60 };

test('a line is cut at the edges of the box', () => {
  expect(clipLine({ x: -50, y: 30 }, { x: 150, y: 30 }, box)).toEqual([
    { x: 0, y: 30 },
    { x: 100, y: 30 },
  ]);
  expect(clipLine({ x: -50, y: -1 }, { x: 150, y: -1 }, box)).toBeNull();
  expect(clipLine({ x: 10, y: 10 }, { x: 20, y: 20 }, box)).toEqual([
    { x: 10, y: 10 },
    { x: 20, y: 20 },
  ]);
});

test('a path that leaves and comes back is parted there', () => {
  const path = [
    { x: 10, y: 10 },
    { x: 50, y: 10 },
    { x: 50, y: 90 },
    { x: 10, y: 90 },
    { x: 10, y: 10 },
  ];
  expect(clipPath(path, box)).toEqual([
    [
      { x: 10, y: 10 },
      { x: 50, y: 10 },
      { x: 50, y: 60 },
    ],
    [
      { x: 10, y: 60 },
      { x: 10, y: 10 },
    ],
  ]);
});

test('the parts in the four quarters of a plane are as long as the whole', () => {
  const point = fc.record({ x: fc.integer({ min: -500, max: 500 }), y: fc.integer({ min: -500, max: 500 }) });
  const quarters = [-1000, 0].flatMap((x) => [-1000, 0].map((y) => ({ x, y, width: 1000, height: 1000 })));
  const length = (path: readonly { x: number; y: number }[]): number =>
    path
      .slice(1)
      .reduce((sum, { x, y }, index) => sum + Math.hypot(x - (path[index]?.x ?? x), y - (path[index]?.y ?? y)), 0);
  fc.assert(
    fc.property(fc.array(point, { minLength: 2, maxLength: 12 }), (path) => {
      // A stretch along the seam belongs to both its sides.
      fc.pre(path.every(({ x, y }) => x !== 0 && y !== 0));
      const parts = quarters.flatMap((quarter) => clipPath(path, quarter));
      expect(parts.reduce((sum, part) => sum + length(part), 0)).toBeCloseTo(length(path), 6);
    }),
  );
});
