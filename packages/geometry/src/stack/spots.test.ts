import { expect, test } from 'vitest';
import { millimetres, ticks } from '../length/length.js';
import type { PlacedPiece } from './placed-piece.js';
import { spotsOf } from './spots.js';

const square = ticks(0);

/** A rectangle in whole millimetres. */
function piece(x: number, y: number, width: number, height: number): PlacedPiece {
  const corners = { tl: square, tr: square, br: square, bl: square };
  return {
    shape: { shape: 'rectangle', width: millimetres(width), height: millimetres(height), corners, punched: {} },
    x: millimetres(x),
    y: millimetres(y),
    tilt: 0,
  };
}

const sorted = (spots: readonly (readonly number[])[]): readonly string[] => spots.map((spot) => spot.join()).sort();

test('every spot of a crossing is told once, also what lies between two pieces (by hand)', () => {
  const cross = [piece(0, 10, 30, 10), piece(10, 0, 10, 30)];
  expect(sorted(spotsOf(cross))).toEqual(['0', '0,1', '1']);
  // A sheet over two pieces with a slit in between.
  expect(sorted(spotsOf([piece(0, 0, 20, 10), piece(0, 12, 20, 10), piece(0, 0, 20, 22)]))).toEqual([
    '0,2',
    '1,2',
    '2',
  ]);
  expect(spotsOf([])).toEqual([]);
});

test('pieces may be many (by hand)', () => {
  const first = Array.from({ length: 60 }, (_, at) => at);
  const sixty = first.map(() => piece(0, 0, 20, 20));
  expect(sorted(spotsOf([...sixty, piece(10, 0, 20, 20)]))).toEqual([first.join(), [...first, 60].join(), '60'].sort());
});
