import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { inset, largestDisc } from './inset.js';
import { NOTHING, regionArea, regionOf, share, unite } from './region.js';

function piece(
  x: number,
  y: number,
  width: number,
  height: number,
  shape: PlacedPiece['shape']['shape'] = 'rectangle',
) {
  const square = ticks(0);
  const corners = { tl: square, tr: square, br: square, bl: square };
  return regionOf({
    shape: { shape, width: ticks(width), height: ticks(height), corners, punched: {} },
    x: ticks(x),
    y: ticks(y),
    tilt: 0,
  });
}

test('a frame of so many ticks is taken off all round (by hand)', () => {
  expect(regionArea(inset(piece(0, 0, 10_000, 6_000), 1_000))).toBe(8_000 * 4_000);
  expect(inset(piece(0, 0, 10_000, 6_000), 3_001)).toEqual(NOTHING);
  expect(inset(NOTHING, 10)).toEqual(NOTHING);
  // Two squares that a neck of 1000 joins: 600 off its sides, nothing is left of it, and each square is 4000 less 1200 wide.
  const joined = unite([piece(0, 0, 4_000, 4_000), piece(4_000, 1_500, 4_000, 1_000), piece(8_000, 0, 4_000, 4_000)]);
  const left = inset(joined, 600);
  expect(left.rings).toHaveLength(2);
  // Towards the neck a disc may reach a little further; nowhere else.
  expect(regionArea(left) - 2 * 2_800 * 2_800).toBeGreaterThanOrEqual(0);
  expect(regionArea(left) - 2 * 2_800 * 2_800).toBeLessThan(0.02 * 2 * 2_800 * 2_800);
});

test('the largest disc of a strip, of a circle, and of the lens of two circles (plane geometry)', () => {
  expect(Math.abs(largestDisc(piece(0, 0, 30_000, 5_000)) - 2_500)).toBeLessThan(10);
  expect(Math.abs(largestDisc(piece(0, 0, 20_000, 20_000, 'ellipse')) - 10_000)).toBeLessThan(20);
  // Two circles of radius r whose middles lie d apart share a lens r - d/2 thick on either side of its middle.
  const lens = share(piece(0, 0, 20_000, 20_000, 'ellipse'), piece(18_000, 0, 20_000, 20_000, 'ellipse'));
  expect(Math.abs(largestDisc(lens) - 1_000)).toBeLessThan(20);
  expect(largestDisc(NOTHING)).toBe(0);
});
