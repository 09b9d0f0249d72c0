import { batchRecipe, mixPlan, nearMisses, planBatch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { cardText, differText, mixes, mixReasons, roleText } from './batch-messages.js';
import { limitText, oneMoreText } from './messages.js';
import { missChange, missGain, offeredMisses } from './near-miss-messages.js';

function offerOf(sketch: ReturnType<typeof stripSketch>, cards = 12) {
  const slices = nearMisses(sketch);
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  return { sketch, found: slice.value, batch: planBatch(batchRecipe(sketch), cards) };
}

test('a slip says what changes and what it saves: two sheets of moss instead of three (by hand)', () => {
  const offer = offerOf(stripSketch('2 1/8 in'));
  const [miss] = offeredMisses(offer);
  if (!miss) throw new Error('the strip is a near miss');
  expect(missChange(offer, miss).replaceAll('\u00a0', ' ')).toBe('Make Strip 2 in high instead of 2 1⁄8 in');
  expect(missGain(offer, miss)).toBe('2 sheets of Moss card instead of 3');
  expect(missGain({ ...offer, batch: null }, miss)).toBe('1 sheet of Moss card fewer');
});

test('sheets saved from another number than the one shown are not offered', () => {
  const offer = offerOf(stripSketch('2 1/8 in'));
  expect(offeredMisses({ ...offer, batch: { ...offer.batch, sheets: 8 } })).toEqual([]);
  expect(offeredMisses({ ...offer, batch: null })).toEqual([]);
});

test('cards added are told from those there are', () => {
  const offer = offerOf(stripSketch('2 1/8 in', { moss: 2 }, { batch: { cards: 'as many as possible' } }), 10);
  const [miss] = offeredMisses(offer);
  expect(miss && missGain(offer, miss)).toBe('12 cards instead of 10');
});

test('one more sheet: the best first, and no more is said than is proven', () => {
  const sketch = sampleSketch();
  const limit = { cards: 9, proven: true, runsOut: ['moss'] };
  const gains = [
    { paper: 'dots', cards: 9, proven: true },
    { paper: 'ivory', cards: 10, proven: false },
    { paper: 'moss', cards: 12, proven: true },
  ];
  expect(oneMoreText(gains, limit, sketch)).toBe(
    'One more sheet of Moss card gives 12, of Ivory card 10 or more, of others none more.',
  );
  expect(oneMoreText([{ paper: 'dots', cards: 9, proven: false }], limit, sketch)).toBe(
    'One more sheet of any one paper gives none more that was found.',
  );
  expect(oneMoreText([], limit, sketch)).toBe('');
  expect(limitText(limit, sketch)).toBe('The sheets give 9 cards at most; Moss card runs out first.');
  expect(limitText({ ...limit, proven: false }, sketch)).toContain('9 cards or more');
});

test('a batch in words, by the names on the table: two papers in two contrasting roles give two looks (by hand)', () => {
  const sketch = sampleSketch();
  const plan = mixPlan(batchRecipe(sketch), 6);
  expect(mixes(sketch)).toBe(true);
  expect(mixes(stripSketch('2 in'))).toBe(false);
  expect(differText(plan)).toBe('6 cards in 2 looks');
  expect(differText(mixPlan(batchRecipe(sketch), 2))).toBe('All 2 cards differ');
  expect(mixReasons(sketch, plan)).toHaveLength(1);
  expect(plan.roles.map((role) => roleText(sketch, role))).toEqual([
    'Panel: 3 Fern sprig and 3 Seed dots',
    'Strip: 3 Fern sprig and 3 Seed dots',
  ]);
  expect(cardText(sketch, plan, 0)).toMatch(
    /^Card 1: Panel from (Fern sprig, Strip from Seed dots|Seed dots, Strip from Fern sprig)$/,
  );
});

test('pieces that share a paper against their contrast are named', () => {
  const sketch = sampleSketch();
  const one = { ...sketch, mixes: [], pieces: sketch.pieces.map((piece) => ({ ...piece, from: 'dots' })) };
  const clashing = { ...mixPlan(batchRecipe(one), 6), allDifferent: 'yes' as const };
  expect(mixReasons(one, { ...clashing, clashes: [{ card: 0, pieces: ['panel', 'strip'], paper: 'dots' }] })).toEqual([
    'Panel and Strip should contrast, but share a paper on 1 card: there are too few papers.',
  ]);
});
