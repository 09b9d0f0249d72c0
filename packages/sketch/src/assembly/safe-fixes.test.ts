import { inches, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomSketch } from '../../../../tests/kit/random-sketch.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { SEVERITIES } from '../check/finding.js';
import { checkSketch } from '../check/findings.js';
import { applyEdits } from '../edit/apply-edit.js';
import type { Sketch } from '../model/sketch.js';
import { assembly } from './assembly.js';
import { cardFacts, closedSize } from './card-facts.js';
import { suspectsOf } from './card-findings.js';
import { safeFixes } from './safe-fixes.js';

const NO_MARGINS = { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) };

function worst(sketch: Sketch): Map<string, number> {
  return new Map(
    suspectsOf(cardFacts(sketch)).map(({ code, piece, severity }) => [
      `${code} ${piece}`,
      SEVERITIES.indexOf(severity),
    ]),
  );
}

test('no mend of a piece makes the card as a whole worse', () => {
  let mends = 0;
  fc.assert(
    fc.property(randomSketch(6), fc.integer({ min: 0, max: 4_000 }), (random, room) => {
      const { width, height } = closedSize(random);
      const envelope = { name: 'close', width: ticks(width + room), height: ticks(height + room) };
      const sketch = { ...random, card: { ...random.card, envelope } };
      const before = worst(sketch);
      for (const { fix, severity } of safeFixes(cardFacts(sketch), checkSketch(sketch))) {
        if (fix.length === 0) continue;
        mends += 1;
        for (const [key, rank] of worst(applyEdits(sketch, fix)))
          expect(rank > SEVERITIES.indexOf(severity) || (before.get(key) ?? Infinity) <= rank, key).toBe(true);
      }
    }),
    { numRuns: 40, seed: 9 },
  );
  expect(mends).toBeGreaterThan(40);
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
