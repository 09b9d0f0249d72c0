import { inches, millimetres, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { planBatch } from '../batch/batch-plan.js';
import { batchRecipe } from '../batch/batch-recipe.js';
import type { Paper, Sketch } from '../model/sketch.js';
import { cardFold, isDark, luminance, mostPerSheet } from './card-fold.js';

const none = { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) };
const sheet = (width: number, height: number, unit: (n: number) => Paper['width']) => ({
  width: unit(width),
  height: unit(height),
  margins: none,
  directional: false,
});

// Common practice as pages of card makers state it; worked out in the table of collected facts.
test.each<readonly [string, readonly [number, number], readonly [number, number], number]>([
  ['US A2 from a letter sheet', [8.5, 11], [5.5, 8.5], 2],
  ['US A2 the other way', [8.5, 11], [4.25, 11], 2],
  ['US A2 from 12 x 12 in', [12, 12], [5.5, 8.5], 2],
  ['US A7 from a letter sheet', [8.5, 11], [7, 10], 1],
  ['US A7 from 12 x 12 in', [12, 12], [7, 10], 1],
  ['US A7 from 11 x 17 in', [11, 17], [7, 10], 2],
  ['US A6 from a letter sheet', [8.5, 11], [6.25, 9], 1],
  ['US A9 from a letter sheet', [8.5, 11], [8.5, 11], 1],
  ['6 in square from 12 x 12 in', [12, 12], [6, 12], 2],
  ['5 in square from 12 x 12 in', [12, 12], [5, 10], 2],
  ['4 in square from 12 x 12 in', [12, 12], [4, 8], 4],
  ['3 in square from 12 x 12 in', [12, 12], [3, 6], 8],
])('bases: %s', (_name, [width, height], [wide, high], bases) => {
  const found = mostPerSheet(sheet(width, height, inches), { width: inches(wide), height: inches(high) });
  expect(found).toEqual({ bases, proven: true });
});

test('two A6 card bases from A4, each an A5 sheet (ISO 216)', () => {
  const size = { width: millimetres(148), height: millimetres(210) };
  expect(mostPerSheet(sheet(210, 297, millimetres), size).bases).toBe(2);
  // Kept upright, 148 mm goes into 210 mm once and 210 mm into 297 mm once (by hand).
  expect(mostPerSheet({ ...sheet(210, 297, millimetres), directional: true }, size).bases).toBe(1);
});

function withBase(change: Partial<Paper>, fold: Sketch['card']['fold'] = 'left'): Sketch {
  const sketch = sampleSketch();
  const papers = sketch.papers.map((paper) => (paper.id === 'ivory' ? { ...paper, ...change } : paper));
  return { ...sketch, papers, card: { ...sketch.card, fold } };
}

const grained = (grain: Paper['grain'] & string, fold: Sketch['card']['fold'], change: Partial<Paper> = {}) =>
  cardFold(withBase({ grain, ...change }, fold)).grain;

test('letter sheets with the grain the long way: 8 1/2 x 5 1/2 in bases fold along it, 4 1/4 x 11 in ones across it', () => {
  // Worked out in the table of collected facts from the sizes of the halves.
  // 8 1/2 x 5 1/2 in goes onto a letter sheet either way; kept upright, its short side lies along the long one of the sheet.
  expect(grained('height', 'left', { directional: true })).toBe('along');
  expect(grained('width', 'left', { directional: true })).toBe('across');
  expect(grained('height', 'left')).toBe('unknown');
  expect(grained('height', 'top')).toBe('across');
  expect(cardFold(withBase({}, 'left')).grain).toBe('unknown');
  expect(grained('height', 'none')).toBe('unknown');
});

test('where a base fits either way, the plan says how the grain runs', () => {
  const sketch = withBase({ grain: 'height', width: inches(12), height: inches(12) });
  expect(cardFold(sketch).grain).toBe('unknown');
  const batch = planBatch(batchRecipe(sketch), 2);
  expect(['along', 'across', 'both']).toContain(cardFold(sketch, batch).grain);
  // A print that has an up lies one way only.
  expect(grained('height', 'left', { width: inches(12), height: inches(12), directional: true })).toBe('along');
});

test('the score is at half the length of the flat base, and is told when it lies off the ruler', () => {
  const fold = cardFold(sampleSketch());
  expect(fold.flat).toMatchObject({ width: inches(8.5), height: inches(5.5), score: { axis: 'x', at: inches(4.25) } });
  expect(fold.scoreOnRuler).toBe(true);
  const sketch = sampleSketch();
  const odd = { ...sketch, card: { ...sketch.card, width: ticks(inches(4.25) + 254) } };
  expect(cardFold(odd).scoreOnRuler).toBe(false);
});

test('150 g/m2 is scored first, 90 lb cover is heavy; a liner leaves 1/8 in: 4 x 5 1/4 in on a US A2', () => {
  expect(cardFold(withBase({ gsm: 149 }))).toMatchObject({ scoreFirst: false, heavy: false });
  expect(cardFold(withBase({ gsm: 150 }))).toMatchObject({ scoreFirst: true, heavy: false });
  expect(cardFold(withBase({ gsm: 243 }))).toMatchObject({ scoreFirst: true, heavy: true });
  expect(cardFold(sampleSketch()).liner).toEqual({ width: inches(4), height: inches(5.25) });
});

test('relative luminance is that of WCAG 2.2: black 0, white 1, #767676 is 4.54 : 1 against white', () => {
  expect(luminance('#000000')).toBe(0);
  expect(luminance('#ffffff')).toBeCloseTo(1, 9);
  expect(1.05 / (luminance('#767676') + 0.05)).toBeCloseTo(4.54, 2);
  const look = (ground: string) => ({ look: { ...(sampleSketch().papers[0] as Paper).look, ground } });
  expect([isDark(look('#2a3350')), isDark(look('#fbf7ec'))]).toEqual([true, false]);
});
