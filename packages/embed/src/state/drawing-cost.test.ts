import { inches, millimetres, ticks } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { isTooMuch } from './drawing-cost.js';

function withMany(pieces: number): Sketch {
  const sketch = sampleSketch();
  const strip = sketch.pieces.find(({ id }) => id === 'strip');
  if (!strip) throw new Error('the sample has a strip');
  const punched = { top: 'scallops', bottom: 'scallops' };
  return {
    ...sketch,
    punches: sketch.punches.map((punch) => ({ ...punch, repeat: millimetres(1) })),
    pieces: Array.from({ length: pieces }, (_, index) => ({
      ...strip,
      id: `p${index}`,
      width: ticks(2_000 * 640),
      height: inches(1),
      punched,
    })),
  };
}

test('a usual sketch is drawn in full, one with thousands of repeats plainly', () => {
  expect(isTooMuch(sampleSketch())).toBe(false);
  expect(isTooMuch(withMany(1))).toBe(false);
  expect(isTooMuch(withMany(2))).toBe(true);
});
