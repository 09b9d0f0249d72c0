import { applyEdits } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { blocksOf, laidOut, SAMPLES, type Sample, sampleOf, wordsOf } from '../handout/pages-kit.js';

function sample(name: string): Sample {
  const found = SAMPLES.find((each) => each.name === `${name}.json`);
  if (!found) throw new Error(`${name} is a sketch of the demo`);
  return found;
}

function words(of: Sample, language: 'en' | 'de'): string {
  const said = blocksOf(laidOut(of, { language, paper: 'a4' }).pages).map(wordsOf);
  return said.join('\n').replaceAll('\u00a0', ' ');
}

test('the supplies name envelope, weight, thickness and letter, with the advice to ask, in both languages', () => {
  const square = words(sample('star-window'), 'en');
  expect(square).toMatch(/each in its envelope about \d+ g and \d+(\.\d)? mm thick/);
  // A square letter costs more in the United States (Domestic Mail Manual 101.1.2).
  expect(square).toContain('United States: letter, perhaps with a surcharge; check with your post office');
  const metric = words(sample('tide-line'), 'en');
  expect(metric).toContain('United Kingdom: letter; check with your post office');
  const german = words(sample('tide-line'), 'de');
  expect(german).toMatch(/im Umschlag je etwa \d+ g und \d+(,\d)? mm dick/);
  expect(german).toContain('– Deutschland: Standardbrief; die Post fragen, Grenzen ändern sich');
});

test('a sketch without an envelope is told the smallest that holds it', () => {
  const { sketch } = sample('hedgerow-wreath');
  const { envelope: _envelope, ...card } = sketch.card;
  const bare = sampleOf('bare', applyEdits(sketch, [{ do: 'card', card }]));
  expect(words(bare, 'en')).toMatch(/\d+ envelopes, US A2, 4 3⁄8 × 5 3⁄4 in/);
});

test('what no letter is, is told so', () => {
  const { sketch } = sample('star-window');
  const huge = sampleOf(
    'huge',
    applyEdits(sketch, [{ do: 'alter-piece', piece: 'tag', raise: 16_256 as typeof sketch.card.width }]),
  );
  expect(words(huge, 'en')).toContain('United States: no letter, too large or too small; check with your post office');
});
