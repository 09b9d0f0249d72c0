import { writeSketchText } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { runCommand } from '../index.js';

const sketch = sampleSketch();
const files: Readonly<Record<string, string>> = {
  'sketch.json': writeSketchText(sketch),
  'clash.json': writeSketchText({ ...sketch, batch: { ...sketch.batch, cards: 2, contrast: [['greeting', 'liner']] } }),
  'most.json': writeSketchText({ ...sketch, batch: { ...sketch.batch, cards: 'as many as possible', contrast: [] } }),
};
const trimwell = (line: string) =>
  runCommand(
    line.split(' '),
    async (file) => files[file] ?? '',
    async () => {},
  );

test('mix prints the deal as text and as JSON', async () => {
  const { code, out } = await trimwell('mix sketch.json --cards 2 --json');
  expect(code).toBe(0);
  expect(JSON.parse(out)).toEqual({
    trimwellMix: 1,
    cards: 2,
    roles: ['panel', 'strip'].map((piece) => ({
      piece,
      perCard: 1,
      papers: ['sprig', 'dots'].map((paper) => ({ paper, cards: 1, blanks: 1 })),
    })),
    deal: [
      ['sprig', 'dots'],
      ['dots', 'sprig'],
    ],
    clashes: [],
    different: 2,
    looks: 2,
    allDifferent: 'yes',
    reasons: [],
  });
  expect((await trimwell('mix sketch.json --cards 2')).out).toContain('2 cards, all different');
});

test('mix ends with 1 when contrasting pieces share a paper, and with 2 when the number of cards is open', async () => {
  const { code, out } = await trimwell('mix clash.json --json');
  expect(code).toBe(1);
  expect(JSON.parse(out).clashes).toEqual(
    [0, 1].map((card) => ({ card, pieces: ['greeting', 'liner'], paper: 'ivory' })),
  );
  const open = await trimwell('mix most.json');
  expect([open.code, open.error.includes('name the number of cards')]).toEqual([2, true]);
  expect((await trimwell('mix sketch.json --cards 0')).code).toBe(2);
});
