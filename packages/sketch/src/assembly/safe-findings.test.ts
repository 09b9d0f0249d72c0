import { inches, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { flatCard } from '../../../../tests/kit/flat-card.js';
import { randomSketch } from '../../../../tests/kit/random-sketch.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { SEVERITIES } from '../check/finding.js';
import { checkSketch } from '../check/findings.js';
import { closedSize } from '../check/whole-card.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Sketch } from '../model/sketch.js';
import { assembly } from './assembly.js';
import { cardFacts } from './card-facts.js';
import { suspectsOf } from './card-findings.js';
import { safeFindings } from './safe-findings.js';

const NO_MARGINS = { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) };

function worst(sketch: Sketch): Map<string, number> {
  return new Map(
    suspectsOf(cardFacts(sketch)).map(({ code, piece, severity }) => [
      `${code} ${piece}`,
      SEVERITIES.indexOf(severity),
    ]),
  );
}

/** No mend that is offered for a piece of `sketch` brings something as bad about its card; how many are offered. */
function expectSafe(sketch: Sketch): number {
  const before = worst(sketch);
  const mends = safeFindings(cardFacts(sketch)).filter(({ fix }) => fix.length > 0);
  for (const { fix, severity } of mends)
    for (const [key, rank] of worst(applyEdits(sketch, fix)))
      expect(rank > SEVERITIES.indexOf(severity) || (before.get(key) ?? Infinity) <= rank, key).toBe(true);
  return mends.length;
}

test('no mend of a piece makes the card as a whole worse', () => {
  let mends = 0;
  fc.assert(
    fc.property(randomSketch(6), fc.integer({ min: 0, max: 4_000 }), (random, room) => {
      const { width, height } = closedSize(random);
      const envelope = { name: 'close', width: ticks(width + room), height: ticks(height + room) };
      mends += expectSafe({ ...random, card: { ...random.card, envelope } });
    }),
    { numRuns: 40, seed: 9 },
  );
  expect(mends).toBeGreaterThan(40);
});

test('without an envelope neither: no mend lets a piece stand free on the edge of something on foam', () => {
  let mends = 0;
  const raised = randomSketch(10).map((sketch) => ({
    ...sketch,
    pieces: sketch.pieces.map((piece, at) => ({ ...piece, raise: at % 3 === 0 ? inches(1 / 8) : ticks(0) })),
  }));
  fc.assert(
    fc.property(raised, (sketch) => {
      mends += expectSafe(sketch);
    }),
    { numRuns: 60, seed: 12 },
  );
  expect(mends).toBeGreaterThan(60);
});

test('where the first way to mend a piece harms the card, the next one is offered', () => {
  // The flap on its foam is hidden beside other foam; glued on top of the cover it would make the card too thick for its envelope.
  const flat = flatCard({
    pillar: { at: [1 / 2, 1, 1, 1], foam: 1 / 8 },
    flap: { at: [2.25, 1, 3 / 4, 1], foam: 1 / 8 },
    cover: { at: [3 / 4, 3 / 4, 2.5, 1.5] },
  });
  const envelope = { name: 'close', width: inches(4.25 + 3 / 64), height: inches(5.5 + 3 / 64) };
  const sketch = { ...flat, card: { ...flat.card, envelope } };
  const [first] = checkSketch(sketch);
  expect(first).toMatchObject({ code: 'hidden', piece: 'flap', fix: [{ do: 'order' }] });
  const found = safeFindings(cardFacts(sketch)).find(({ code }) => code === 'hidden');
  expect(found?.fix).toEqual([{ do: 'remove-piece', piece: 'flap' }]);
});

test('a piece is not made larger than its sheet by its mend', () => {
  const sketch = sampleSketch();
  const side = ticks(inches(4) + inches(3 / 64));
  const [model] = sketch.papers;
  if (!model) throw new Error('the sample has papers');
  const scrap = { ...model, id: 'scrap', width: side, height: inches(3), margins: NO_MARGINS };
  const papers = [...sketch.papers, scrap];
  const pieces = sketch.pieces.map((piece) =>
    piece.id === 'strip'
      ? { ...piece, from: 'scrap', x: inches(0), width: side, height: inches(2), punched: {} }
      : piece,
  );
  const found = checkSketch({ ...sketch, papers, pieces }).filter(({ piece }) => piece === 'strip');
  expect(found.map(({ code }) => code)).toContain('off-the-ruler');
  for (const { fix } of found)
    for (const edit of fix) if (edit.do === 'resize') expect(edit.width).toBeLessThanOrEqual(side);
});

test('a liner that would strain the envelope is not offered, though the envelope is tight already', () => {
  const sketch = sampleSketch();
  const [first, ...others] = sketch.papers;
  if (!first) throw new Error('the sample has papers');
  const dark = { ...first, id: 'night', look: { ...first.look, pattern: 'plain' as const, ground: '#101820' } };
  const thick = {
    ...first,
    look: { ...first.look, pattern: 'plain' as const, ground: '#ffffff' },
    caliper: inches(1 / 8),
  };
  const envelope = { name: 'close', width: inches(4 + 5 / 16), height: inches(5.75) };
  const card = { ...sketch.card, base: 'night', envelope };
  const flat: Sketch = { ...sketch, papers: [thick, dark, ...others], card, pieces: [] };
  const found = assembly(flat).findings;
  expect(found.find(({ code }) => code === 'envelope-too-tight')?.severity).toBe('worth knowing');
  expect(found.find(({ code }) => code === 'dark-inside')?.fix).toEqual([]);
});
