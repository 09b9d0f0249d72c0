import { expect, test } from 'vitest';
import { type Length, ticks } from '../length/length.js';
import type { PlacedPiece } from './placed-piece.js';
import { sectionSpans } from './section-spans.js';

const none = ticks(0);

function piece(shape: 'rectangle' | 'ellipse' | 'tag', width: number, height: number, tilt = 0): PlacedPiece {
  return {
    shape: {
      shape,
      width: width as Length,
      height: height as Length,
      corners: { tl: none, tr: none, br: none, bl: none },
      punched: {},
    },
    x: ticks(1000),
    y: ticks(2000),
    tilt,
  };
}

test('a rectangle is met from side to side, on its upper edge too, and not below', () => {
  const upright = piece('rectangle', 4000, 3000);
  expect(sectionSpans(upright, 'x', 2500)).toEqual([{ from: 1000, to: 5000 }]);
  expect(sectionSpans(upright, 'y', 1500)).toEqual([{ from: 2000, to: 5000 }]);
  expect(sectionSpans(upright, 'x', 2000)).toEqual([{ from: 1000, to: 5000 }]);
  expect(sectionSpans(upright, 'x', 5000)).toEqual([]);
  expect(sectionSpans(upright, 'x', 1999)).toEqual([]);
});

test('a square on its corner is met along its whole diagonal in the middle, and half of it half way up', () => {
  const tilted = piece('rectangle', 4000, 4000, 45);
  const [span] = sectionSpans(tilted, 'x', 4000);
  // The diagonal of a square of 4000 is 4000 times the root of 2.
  expect((span?.to ?? 0) - (span?.from ?? 0)).toBeCloseTo(4000 * Math.SQRT2, 6);
  const [half] = sectionSpans(tilted, 'x', 4000 - 1000 * Math.SQRT2);
  expect((half?.to ?? 0) - (half?.from ?? 0)).toBeCloseTo(2000 * Math.SQRT2, 6);
});

test('an oval is met as its equation says, within 1/400 in', () => {
  // x^2 / a^2 + y^2 / b^2 = 1 with a = 2000, b = 1500, 600 above the middle: x = 2000 sqrt(1 - 0.16).
  const [span] = sectionSpans(piece('ellipse', 4000, 3000), 'x', 2000 + 1500 - 600);
  expect(Math.abs((span?.to ?? 0) - (3000 + 2000 * Math.sqrt(0.84)))).toBeLessThan(40.64);
});

test('the hole of a tag is left out', () => {
  const tag = piece('tag', 20_000, 40_000);
  const rows = Array.from({ length: 39 }, (_, index) => sectionSpans(tag, 'x', 2000 + 1000 * (index + 1)));
  expect(rows.some((spans) => spans.length === 2)).toBe(true);
  expect(rows.at(-1)).toHaveLength(1);
});
