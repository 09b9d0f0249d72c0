import { inches } from '@trimwell/geometry';
import { checkSketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { firstCard } from './first-card.js';

test('a blank card of US A2 lies on a table that nobody laid anything on', () => {
  const sketch = firstCard();
  expect(sketch.pieces).toEqual([]);
  expect(sketch.card).toMatchObject({ width: inches(4.25), height: inches(5.5), fold: 'left' });
  expect(checkSketch(sketch)).toEqual([]);
});
