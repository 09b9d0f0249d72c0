import { type Sketch, writeSketchText } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { runCommand } from '../index.js';

const FILES: Readonly<Record<string, Sketch>> = {
  'strips.json': stripSketch('2 1/8 in'),
  'two.json': stripSketch('2 1/8 in', { moss: 2 }, { batch: { cards: 'as many as possible' } }),
  'large.json': stripSketch('13 in'),
};

function trimwell(...line: readonly string[]) {
  const readText = async (file: string) => {
    const sketch = FILES[file];
    if (!sketch) throw new Error(`no file ${file}`);
    return writeSketchText(sketch);
  };
  return runCommand(line, readText, async () => undefined);
}

test('yield says the most cards, what one more sheet gives, and the sheets in bands (by hand)', async () => {
  const { code, out } = await trimwell('yield', 'two.json', '--up-to', '12');
  expect(code).toBe(0);
  expect(out.split('\n').slice(0, 5)).toEqual([
    'Fern sampler',
    'The sheets at hand give 10 cards, the most possible; runs out first: Moss card',
    '  with one more sheet of Moss card: 15 cards, 5 more',
    'Sheets for so many cards:',
    '  1 to 2 cards: 2 sheets (1 Ivory card, 1 Moss card), the fewest',
  ]);
  expect(out).toContain('\n  11 to 12 cards: 9 sheets (6 Ivory card, 3 Moss card), the fewest, more than at hand\n');
});

test('yield as JSON has the curve, and no most where nothing is limited', async () => {
  const found = JSON.parse((await trimwell('yield', 'strips.json', '--up-to', '3', '--json')).out);
  expect(found).toEqual({
    trimwellYield: 1,
    most: null,
    curve: [1, 2, 3].map((cards) => ({
      cards,
      papers: [
        { paper: 'ivory', sheets: Math.ceil(cards / 2) },
        { paper: 'moss', sheets: 1 },
      ],
      sheets: Math.ceil(cards / 2) + 1,
      proven: true,
      atHand: true,
    })),
  });
  const limited = JSON.parse((await trimwell('yield', 'two.json', '--up-to', '1', '--json')).out);
  expect(limited.most).toMatchObject({
    cards: 10,
    proven: true,
    runsOut: ['moss'],
    oneMore: [{ paper: 'moss', cards: 15 }],
  });
});

test('yield ends with 1 when not a single card can be made', async () => {
  const { code, out } = await trimwell('yield', 'large.json', '--up-to', '2');
  expect(code).toBe(1);
  expect(out).toContain('No number of sheets makes a card.');
});
