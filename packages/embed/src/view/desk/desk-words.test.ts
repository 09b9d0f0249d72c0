import { applyEdit, batchRecipe, expectSketch, planBatch, type Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleDocument } from '../../../../../tests/kit/sample-document.js';
import { resultText, unmadeTexts } from './desk-words.js';

function told(sketch: Sketch) {
  const batch = planBatch(batchRecipe(sketch), Number(sketch.batch.cards));
  return {
    result: resultText({ made: { sketch, batch }, searching: false, failure: null }),
    unmade: unmadeTexts(batch, sketch),
  };
}

function wished(cards: number, sheets: number): Sketch {
  const document = sampleDocument();
  const papers = document.papers.map((paper) => ({ ...paper, sheets }));
  return expectSketch({ ...document, papers, batch: { ...document.batch, cards } });
}

test('what is made is told with its sheets', () => {
  const { result, unmade } = told(wished(2, 20));
  expect(result).toMatch(/^2 cards from \d+ sheets\. /);
  expect(unmade).toEqual([]);
});

test('what the paper does not give is never told as cards from sheets', () => {
  const { result, unmade } = told(wished(100, 1));
  expect(result).toMatch(/^100 cards cannot all be made from this paper\. Tick/);
  expect(unmade.length).toBeGreaterThan(0);
  expect(told(wished(1, 0)).result).toBe('1 card cannot be made from this paper.');
});

test('a piece that several papers of a mix lack is missing once', () => {
  const sketch = wished(60, 0);
  const [first, second] = sketch.papers;
  const piece = sketch.pieces[0];
  if (!first || !second || !piece) throw new Error('the sample has papers and pieces');
  const mix = { id: 'both', name: 'Both', papers: [first.id, second.id] };
  const mixed = applyEdit(applyEdit(sketch, { do: 'set-mix', mix }), { do: 'cut-from', piece: piece.id, from: 'both' });
  const { unmade } = told(mixed);
  expect(unmade.filter((text) => text.includes(` of ${piece.name} `))).toEqual([
    `Not made: 60 of ${piece.name} (out of sheets).`,
  ]);
});
