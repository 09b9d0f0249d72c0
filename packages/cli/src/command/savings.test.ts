import { type Sketch, writeSketchText } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { centreSketch, middlePiece, taggedSketch } from '../../../../tests/kit/centre-sketch.js';
import { runCommand } from '../index.js';

function off(sketch: Sketch): Sketch {
  return { ...sketch, batch: { ...sketch.batch, hiddenCentres: false } };
}

const limited = taggedSketch(2, 'as many as possible');
// A sheet of 12 x 12 in gives three of 5 x 7 in by cuts from edge to edge, and four as a pinwheel (common practice).
const pinwheel = centreSketch([middlePiece('panel', 'sprig', 5, 7)], 4);
const FILES: Readonly<Record<string, Sketch>> = {
  'off.json': off(taggedSketch(2)),
  'on.json': taggedSketch(2),
  'few.json': off({
    ...limited,
    papers: limited.papers.map((paper) => (paper.id === 'moss' ? { ...paper, sheets: 5 } : paper)),
  }),
  'pinwheel.json': off(pinwheel),
};

function trimwell(line: string, written: string[] = []) {
  const readText = async (file: string) => {
    const sketch = FILES[file];
    if (!sketch) throw new Error(`no file ${file}`);
    return writeSketchText(sketch);
  };
  return runCommand(line.split(' '), readText, async (name) => {
    written.push(name);
  });
}

test('hidden centres are used when the sketch says so, or the flag, and not otherwise', async () => {
  const [without, flag, sketch] = [
    await trimwell('plan off.json'),
    await trimwell('plan off.json --hidden-centres'),
    await trimwell('plan on.json'),
  ];
  expect(without.out).toContain('6 cards from 14 sheets');
  expect(flag.out).toContain('6 cards from 10 sheets, the fewest possible');
  expect(sketch.out).toBe(flag.out);
});

test('steps follows the flag in words and as a document', async () => {
  expect((await trimwell('steps off.json')).out).not.toContain('centre of');
  expect((await trimwell('steps off.json --hidden-centres')).out).toContain('Cut the centre of B The mat');
  const document = JSON.parse((await trimwell('steps off.json --hidden-centres --json')).out);
  expect(document.papers[1].centres).toMatchObject([{ piece: 'mat', pieces: 6, beforeStep: 1 }]);
});

test('yield follows the flag: five sheets make three cards, or five with hidden centres (by hand)', async () => {
  expect((await trimwell('yield few.json --up-to 1')).out).toContain('The sheets at hand give 3 cards');
  const { out } = await trimwell('yield few.json --up-to 6 --hidden-centres');
  expect(out).toContain('The sheets at hand give 5 cards, the most possible; runs out first: Moss card');
  expect(out).toMatch(/ {2}6 cards: .*6 Moss card.*, more than at hand\n/);
});

test('guides follows the flag, with a guide for the centre', async () => {
  const written: string[] = [];
  await trimwell('guides off.json --into folder --hidden-centres', written);
  expect(written).toContain('folder/fern-sampler-moss-centre-of-mat-2-x6.svg');
});

test('stopped cuts are used when the flag says so: four of 5 x 7 in from one sheet instead of two', async () => {
  const sprig = async (line: string) =>
    JSON.parse((await trimwell(line)).out).papers.find(({ paper }: { paper: string }) => paper === 'sprig').plan.counts;
  expect((await sprig('plan pinwheel.json --json')).sheets).toBe(2);
  expect((await sprig('plan pinwheel.json --json --stopped-cuts')).sheets).toBe(1);
});
