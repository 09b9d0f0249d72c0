import { inches, millimetres, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Paper, Sketch } from '../model/sketch.js';
import { estimateCaliper } from './estimate-caliper.js';
import { thickestSpot } from './thickest-spot.js';

const measured = (caliper: Paper['caliper'] = millimetres(0.5)): Sketch => {
  const sketch = sampleSketch();
  return { ...sketch, papers: sketch.papers.map((paper) => ({ ...paper, caliper })) };
};

test('a measured caliper is taken as it is; a weight and a kind give estimates', () => {
  expect(estimateCaliper({ caliper: millimetres(0.4), gsm: 300, kind: 'kraft' })).toEqual({
    caliper: 256,
    estimated: false,
  });
  // 1000 g/m2 at 1.3 cm3/g are 1.3 mm (by hand).
  expect(estimateCaliper({ gsm: 1000, kind: 'cardstock' })).toEqual({ caliper: millimetres(1.3), estimated: true });
  expect(estimateCaliper({ kind: 'vellum' }).estimated).toBe(true);
  expect(estimateCaliper({ kind: 'vellum' }).caliper).toBeLessThan(estimateCaliper({ kind: 'cardstock' }).caliper);
});

test('where pieces lie over each other their calipers and foam add up: base, mat, panel and the greeting on its foam', () => {
  // The greeting and the strip are apart: 4 papers of 0.5 mm and 1/16 in of foam (by hand).
  const sketch = applyEdits(measured(), [{ do: 'place', piece: 'strip', x: inches(1 / 4), y: inches(4) }]);
  const spot = thickestSpot(sketch, 'front');
  expect(spot.height).toBe(4 * millimetres(0.5) + inches(1 / 16));
  expect(spot.pieces).toEqual(['panel-mat', 'panel', 'greeting']);
  expect(spot.estimated).toBe(false);
});

test('pieces that only touch do not add up; one tick further they do', () => {
  const sketch = applyEdits(measured(), [{ do: 'tilt', piece: 'greeting', tilt: 0 }]);
  const under = (y: number): number =>
    thickestSpot(applyEdits(sketch, [{ do: 'place', piece: 'strip', x: inches(1), y: ticks(y) }]), 'front').pieces
      .length;
  const bottom = inches(2.25);
  expect(under(bottom)).toBe(3);
  expect(under(bottom - 1)).toBe(4);
});

test('closed, the card has two leaves and both faces; an estimate is told', () => {
  const sketch = measured();
  const [front, closed] = [thickestSpot(sketch, 'front'), thickestSpot(sketch, 'closed')];
  expect(closed.height - front.height).toBe(2 * millimetres(0.5));
  expect(thickestSpot(sampleSketch(), 'front').estimated).toBe(true);
  expect(thickestSpot({ ...sketch, pieces: [] }, 'inside')).toEqual({
    height: millimetres(0.5),
    pieces: [],
    estimated: false,
  });
});
