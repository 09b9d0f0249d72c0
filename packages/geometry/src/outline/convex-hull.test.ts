import { expect, test } from 'vitest';
import { convexHull } from './convex-hull.js';

test('the hull of a square, its middle, a point on its edge and a corner twice is the square (by hand)', () => {
  const corners = [
    { x: 0, y: 0 },
    { x: 4, y: 0 },
    { x: 4, y: 4 },
    { x: 0, y: 4 },
  ];
  const hull = convexHull([...corners, { x: 2, y: 2 }, { x: 4, y: 1 }, { x: 4, y: 4 }]);
  expect(hull).toHaveLength(5);
  expect(hull[0]).toEqual(hull[4]);
  expect(hull.slice(1)).toEqual(expect.arrayContaining(corners));
});
