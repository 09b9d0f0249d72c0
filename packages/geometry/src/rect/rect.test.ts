import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import { type Axis, contains, overlaps, quarterTurn, rect, splitRect } from './rect.js';

const side = fc.integer({ min: 3, max: 500_000 });

test('a cut loses nothing: both parts and the kerf tile the box', () => {
  fc.assert(
    fc.property(side, side, fc.nat(), fc.nat(), fc.constantFrom<Axis>('x', 'y'), (width, height, a, k, axis) => {
      const box = rect(7, 11, width, height);
      const across = axis === 'x' ? width : height;
      const kerf = k % (across - 2);
      const at = 1 + (a % (across - kerf - 1));
      const [near, far] = splitRect(box, axis, ticks(at), ticks(kerf));
      const along = axis === 'x' ? height : width;
      expect(near.width * near.height + far.width * far.height + kerf * along).toBe(width * height);
      expect(contains(box, near) && contains(box, far)).toBe(true);
      expect(overlaps(near, far)).toBe(false);
    }),
  );
});

test('a cut that leaves nothing of a part is refused', () => {
  const box = rect(0, 0, 10, 20);
  for (const [at, kerf] of [
    [0, 0],
    [10, 0],
    [9, 2],
    [-1, 0],
  ] as const) {
    expect(() => splitRect(box, 'x', ticks(at), ticks(kerf))).toThrow(RangeError);
  }
});

test('a blade may eat the far part whole, and no more', () => {
  const [near, far] = splitRect(rect(0, 0, 10, 20), 'x', ticks(8), ticks(2));
  expect([near.width, far.width, far.x]).toEqual([8, 0, 10]);
});

test('touching rectangles do not overlap, and a rectangle holds itself', () => {
  expect(overlaps(rect(0, 0, 5, 5), rect(5, 0, 5, 5))).toBe(false);
  expect(overlaps(rect(0, 0, 5, 5), rect(4, 4, 5, 5))).toBe(true);
  expect(contains(rect(0, 0, 5, 5), rect(0, 0, 5, 5))).toBe(true);
  expect(contains(rect(0, 0, 5, 5), rect(1, 1, 5, 4))).toBe(false);
  expect(quarterTurn(rect(1, 2, 3, 4))).toEqual({ width: 4, height: 3 });
});
