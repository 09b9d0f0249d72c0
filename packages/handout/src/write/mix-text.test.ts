import { batchRecipe, mixPlan } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { mixText } from './mix-text.js';

const sketch = sampleSketch();

test('the mix in plain words: why cards are alike, the numbers, and every card', () => {
  expect(mixText(sketch, mixPlan(batchRecipe(sketch), 3))).toBe(`Fern sampler: 3 cards, 2 different
  3 cards, but 2 papers in 2 contrasting roles give only 2 looks.
Blanks from each paper
  Paper       Panel  Strip
  Fern sprig  2      1
  Seed dots   1      2
Papers of each card
  Card  Panel       Strip
  1     Fern sprig  Seed dots
  2     Seed dots   Fern sprig
  3     Fern sprig  Seed dots
`);
});

test('a card on which contrasting pieces share a paper is marked', () => {
  const clashing = { ...sketch, batch: { ...sketch.batch, contrast: [['greeting', 'liner']] } };
  const text = mixText(clashing, mixPlan(batchRecipe(clashing), 2));
  expect(text).toContain('both are always cut from ivory');
  expect(text.match(/Greeting = Liner/g)).toHaveLength(2);
});

test('a sketch without a mix says so', () => {
  const plain = { ...sketch, pieces: [], batch: { ...sketch.batch, cards: 2, contrast: [] } };
  expect(mixText(plain, mixPlan(batchRecipe(plain), 2))).toBe(
    'Fern sampler: 2 cards, no piece is cut from a mix of papers\n',
  );
});
