import { CARD_BASE } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { gridStep } from './stack-keys.js';
import { overAt, stretchTo, withGap } from './stack-order.js';
import { stackSight } from './stack-picture.js';

const sketch = sampleSketch();
const rows = [
  { id: CARD_BASE, middle: 200 },
  { id: 'a', middle: 160 },
  { id: 'b', middle: 120 },
  { id: 'c', middle: 80 },
];

test('what is let go lies over the topmost row below the pointer; below all, on the card', () => {
  expect(overAt(rows, ['b'], 100)).toBe('a');
  expect(overAt(rows, ['a'], 100)).toBe('b');
  expect(overAt(rows, ['a'], 20)).toBe('c');
  expect(overAt(rows, ['c'], 170)).toBeNull();
  expect(overAt(rows, ['a', 'b'], 100)).toBeNull();
});

test('the gap is where the lifted pieces would be glued; the stack is no higher for it', () => {
  const gap = withGap(sketch, ['panel-mat'], 'strip');
  expect(gap.pieces.map(({ id }) => id)).toEqual(['panel', 'strip', 'panel-mat', 'greeting', 'liner']);
  expect(stackSight(gap, 'front').height).toBeCloseTo(stackSight(sketch, 'front').height, 6);
});

test('rows are at least 24 pixels apart, be it forty of them, and a raised piece has room for its foam', () => {
  const [first] = sketch.pieces;
  if (!first) throw new Error('the sample has pieces');
  const many = { ...sketch, pieces: Array.from({ length: 40 }, (_, n) => ({ ...first, id: `p-${n}` })) };
  for (const each of [sketch, many]) {
    const { rows: places, height } = stackSight(each, 'front');
    places.slice(1).forEach(({ middle }, index) => {
      expect((places[index]?.middle ?? 0) - middle).toBeGreaterThanOrEqual(24);
      expect(middle).toBeGreaterThan(0);
    });
    expect(height).toBeGreaterThan(places[0]?.middle ?? 0);
  }
  const { rows: places } = stackSight(sketch, 'front');
  const apart = (id: string): number => {
    const at = places.findIndex((row) => row.id === id);
    return (places[at - 1]?.middle ?? 0) - (places[at]?.middle ?? 0);
  };
  expect(apart('greeting')).toBeGreaterThan(apart('strip') + 8);
});

test('Shift takes the stretch from the piece taken first, either way', () => {
  expect(stretchTo(sketch, 'front', 'panel', 'greeting')).toEqual(['panel', 'strip', 'greeting']);
  expect(stretchTo(sketch, 'front', 'strip', 'panel-mat')).toEqual(['strip', 'panel', 'panel-mat']);
  expect(stretchTo(sketch, 'front', undefined, 'panel')).toEqual(['panel']);
  expect(stretchTo(sketch, 'front', 'liner', 'panel')).toEqual(['panel']);
});

test('arrow keys go along the grid and stop at its ends', () => {
  const ids = ['c', 'b', 'a'];
  expect(gridStep('ArrowDown', { row: 'c', column: 0 }, ids)).toEqual({ row: 'b', column: 0 });
  expect(gridStep('ArrowUp', { row: 'c', column: 1 }, ids)).toEqual({ row: 'c', column: 1 });
  expect(gridStep('End', { row: 'c', column: 2 }, ids)).toEqual({ row: 'a', column: 2 });
  expect(gridStep('ArrowRight', { row: 'b', column: 2 }, ids)).toEqual({ row: 'b', column: 2 });
  expect(gridStep('ArrowLeft', { row: 'b', column: 1 }, ids)).toEqual({ row: 'b', column: 0 });
  expect(gridStep('x', { row: 'b', column: 1 }, ids)).toBeNull();
});
