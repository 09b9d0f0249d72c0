import { expect, test } from 'vitest';
import { type Length, ticks } from '../length/length.js';
import { isCovered } from './covered.js';
import { placedBounds } from './placed-bounds.js';
import type { PlacedPiece } from './placed-piece.js';

const ROUND = 2_000;

function piece(
  [x, y, width, height]: readonly [number, number, number, number],
  { shape = 'rectangle' as PlacedPiece['shape']['shape'], tilt = 0, radius = 0 } = {},
): PlacedPiece {
  const r: Length = ticks(radius);
  const corners = { tl: r, tr: r, br: r, bl: r };
  return {
    shape: { shape, width: ticks(width), height: ticks(height), corners, punched: {} },
    x: ticks(x),
    y: ticks(y),
    tilt,
  };
}

test('two covers hide together what neither hides alone; one tick of a gap shows', () => {
  const below = piece([0, 0, 10_000, 8_000]);
  const left = piece([-100, -100, 5_100, 9_000]);
  const right = piece([5_000, -100, 6_000, 9_000]);
  expect(isCovered(below, [left])).toBe(false);
  expect(isCovered(below, [left, right])).toBe(true);
  expect(isCovered(below, [left, piece([5_001, -100, 6_000, 9_000])])).toBe(false);
  expect(isCovered(below, [])).toBe(false);
});

test('a piece under its like is hidden, whatever its shape and tilt; under a rounder one its corners show', () => {
  for (const options of [
    {},
    { radius: ROUND },
    { shape: 'ellipse' as const },
    { tilt: 17 },
    { tilt: 30, radius: ROUND },
  ])
    expect(isCovered(piece([0, 0, 16_000, 12_000], options), [piece([0, 0, 16_000, 12_000], options)])).toBe(true);
  expect(isCovered(piece([0, 0, 16_000, 12_000]), [piece([0, 0, 16_000, 12_000], { radius: ROUND })])).toBe(false);
  expect(isCovered(piece([0, 0, 16_000, 12_000]), [piece([0, 0, 16_000, 12_000], { shape: 'ellipse' })])).toBe(false);
});

test('the box around a tilted piece: 3 by 4 turned by a quarter, a square by an eighth, a circle by anything', () => {
  expect(placedBounds(piece([0, 0, 3_000, 4_000], { tilt: 90 }))).toEqual({
    left: -500,
    top: 500,
    right: 3_500,
    bottom: 3_500,
  });
  const eighth = placedBounds(piece([0, 0, 2_000, 2_000], { tilt: 45 }));
  expect(eighth.right - eighth.left).toBeCloseTo(2_000 * Math.SQRT2, 6);
  const circle = placedBounds(piece([0, 0, 2_000, 2_000], { tilt: 33, shape: 'ellipse' }));
  expect(circle.left).toBeCloseTo(0, 6);
  expect(circle.bottom).toBeCloseTo(2_000, 6);
});

test('rounded corners of a tilted piece reach less far than square ones, never further', () => {
  const square = placedBounds(piece([0, 0, 9_000, 5_000], { tilt: 20 }));
  const rounded = placedBounds(piece([0, 0, 9_000, 5_000], { tilt: 20, radius: ROUND }));
  expect(rounded.right).toBeLessThan(square.right - 100);
  expect(rounded.top).toBeGreaterThan(square.top + 100);
  // Half sides of the inner rectangle, turned, plus the radius (by hand).
  const [cos, sin] = [Math.cos(Math.PI / 9), Math.sin(Math.PI / 9)];
  expect(rounded.right).toBeCloseTo(4_500 + 2_500 * cos + 500 * sin + ROUND, -1);
});
