import { expect, test } from 'vitest';
import { millimetres, ticks } from '../length/length.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { sideProfile, stackHeights, type ThickPiece } from './stack-heights.js';

const square = ticks(0);

/** A rectangle in whole millimetres, with its paper's caliper and its foam in millimetres. */
function layer(
  [x, y, width, height]: readonly [number, number, number, number],
  caliper: number,
  raise = 0,
  tilt = 0,
  shape: PlacedPiece['shape']['shape'] = 'rectangle',
): ThickPiece {
  const corners = { tl: square, tr: square, br: square, bl: square };
  return {
    placed: {
      shape: { shape, width: millimetres(width), height: millimetres(height), corners, punched: {} },
      x: millimetres(x),
      y: millimetres(y),
      tilt,
    },
    caliper: millimetres(caliper),
    raise: millimetres(raise),
  };
}

const tops = (stack: readonly ThickPiece[]): readonly number[] =>
  stackHeights(stack).layers.map(({ top }) => top / 640);

test('side by side every piece lies on the card; over each other calipers and foam add up (by hand)', () => {
  expect(tops([layer([0, 0, 20, 20], 0.3), layer([20, 0, 20, 20], 0.2)])).toEqual([0.3, 0.2]);
  expect(tops([layer([0, 0, 20, 20], 0.3), layer([5, 5, 10, 10], 0.2, 1.6), layer([6, 6, 2, 2], 0.3)])).toEqual([
    0.3, 2.1, 2.4,
  ]);
});

test('a bridge between a high and a low support rests on the high one, and so does what lies over the gap (by hand)', () => {
  const stack = [
    layer([0, 0, 20, 20], 0.3, 3),
    layer([40, 0, 20, 20], 0.5),
    layer([10, 5, 40, 10], 0.2),
    layer([25, 8, 5, 5], 0.4),
  ];
  const { layers, height, highest } = stackHeights(stack);
  expect(layers.map(({ top }) => top / 640)).toEqual([3.3, 0.5, 3.5, 3.9]);
  expect(layers[2]).toMatchObject({ bottom: millimetres(3.3), restsOn: [0], over: [0, 1] });
  expect(layers[3]).toMatchObject({ restsOn: [2], over: [2] });
  expect([height, highest]).toEqual([millimetres(3.9), 3]);
});

test('only true outlines bear: a piece in the corner of an oval, or beside a tilted strip, lies on the card (by hand)', () => {
  expect(tops([layer([0, 0, 40, 40], 0.5, 0, 0, 'ellipse'), layer([0, 0, 5, 5], 0.3)])).toEqual([0.5, 0.3]);
  expect(tops([layer([0, 0, 40, 4], 0.5, 0, 45), layer([30, 0, 6, 6], 0.3)])).toEqual([0.5, 0.3]);
});

test('an empty face has no height and no highest piece', () => {
  expect(stackHeights([])).toEqual({ layers: [], height: 0, highest: null });
});

test('from the side the highest piece is seen over each stretch, and what hangs over the card (by hand)', () => {
  const stack = [layer([10, 0, 20, 20], 0.3), layer([25, 5, 25, 5], 0.2)];
  const heights = stackHeights(stack);
  const seen = (axis: 'x' | 'y', side: number) =>
    sideProfile(stack, heights, axis, millimetres(side)).map(({ from, to, height, piece }) => [
      from / 640,
      to / 640,
      height / 640,
      piece,
    ]);
  expect(seen('y', 40)).toEqual([
    [0, 10, 0, null],
    [10, 25, 0.3, 0],
    [25, 50, 0.5, 1],
  ]);
  expect(seen('x', 30)).toEqual([
    [0, 5, 0.3, 0],
    [5, 10, 0.5, 1],
    [10, 20, 0.3, 0],
    [20, 30, 0, null],
  ]);
});
