import { flatCardBase, inches, millimetres } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { gsmOfBasisWeight } from '../model/paper-weights.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { batchWeight, cardWeight, pieceArea, sheetWeight } from './card-weight.js';

function weighing(gsm: number): Sketch {
  const sketch = sampleSketch();
  return { ...sketch, papers: sketch.papers.map((paper) => ({ ...paper, gsm })) };
}

// A US A2 base, 5 1/2 x 8 1/2 in, as worked out in the table of collected facts; a letter sheet of 20 lb bond is 5 lb / 500.
test.each([
  [65, 5.3],
  [80, 6.5],
  [100, 8.2],
  [110, 9.0],
] as const)('an A2 base of %i lb cover weighs %f g', (pounds, grams) => {
  const bare = { ...weighing(gsmOfBasisWeight(pounds, 'cover')), pieces: [] };
  expect(cardWeight(bare).grams).toBeCloseTo(grams, 1);
});

test('sheets: letter of 20 lb bond 4.536 g, A4 of 80 g/m2 4.99 g, A0 of 80 g/m2 80 g', () => {
  expect(sheetWeight(inches(8.5) * inches(11), gsmOfBasisWeight(20, 'bond'))).toBeCloseTo(4.536, 3);
  expect(sheetWeight(millimetres(210) * millimetres(297), 80)).toBeCloseTo(4.99, 2);
  expect(sheetWeight(millimetres(841) * millimetres(1189), 80)).toBeCloseTo(80, 1);
});

test('a card is the sum of its papers; copies count, and a batch is so many cards (by hand)', () => {
  const sketch = weighing(1_000);
  const plain = sketch.pieces
    .filter(({ id }) => id === 'panel-mat' || id === 'panel')
    .map((piece): Piece => (piece.id === 'panel' ? { ...piece, perCard: 3 } : piece));
  const card = cardWeight({ ...sketch, pieces: plain });
  // 8.5 x 5.5 + 4 x 5.25 + 3 x 3.75 x 5 in2, of 0.00064516 m2 each, 1000 g/m2.
  expect(card.grams).toBeCloseTo((46.75 + 21 + 56.25) * 0.64516, 9);
  expect(card.estimated).toBe(false);
  expect(card.shares.map(({ from }) => from)).toEqual(['ivory', 'moss', 'prints']);
  const { width, height } = flatCardBase(sketch.card);
  expect(card.shares[0]?.area).toBe(width * height);
  expect(batchWeight(card, 12).grams).toBeCloseTo(12 * card.grams, 9);
});

test('a mix weighs what its heaviest paper does, and a paper that does not say is an estimate', () => {
  const sketch = weighing(100);
  const heavy = {
    ...sketch,
    papers: sketch.papers.map((paper) => (paper.id === 'dots' ? { ...paper, gsm: 300 } : paper)),
  };
  const prints = (of: Sketch) => cardWeight(of).shares.find(({ from }) => from === 'prints')?.grams ?? 0;
  expect(prints(heavy)).toBeCloseTo(3 * prints(sketch), 9);
  expect(cardWeight(sampleSketch()).estimated).toBe(true);
});

test('punched edges and holes are no paper: fifteen half circles of 1/8 in stand at the edge of the strip (by hand)', () => {
  const sketch = sampleSketch();
  const strip = sketch.pieces.find(({ id }) => id === 'strip') as Piece;
  const half = (Math.PI * inches(1 / 8) ** 2) / 2;
  const whole = strip.width * (strip.height - inches(1 / 8)) + 15 * half;
  expect(Math.abs(pieceArea(sketch, strip) / whole - 1)).toBeLessThan(1e-6);
});
