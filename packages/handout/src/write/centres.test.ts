import { inches, performSteps } from '@trimwell/geometry';
import { type BatchPlan, batchRecipe, planBatch, type Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { centreSketch, middlePiece, taggedSketch } from '../../../../tests/kit/centre-sketch.js';
import { BLADE_CAUTION, KNIFE_CAUTION } from './cautions.js';
import { batchText } from './plan-text.js';
import { sheetGuides } from './sheet-guides.js';
import { writeSteps } from './steps-json.js';
import { stepsText } from './steps-text.js';

const tagged = taggedSketch(2);
const plain: Sketch = { ...tagged, batch: { ...tagged.batch, hiddenCentres: false } };
const nested = centreSketch([
  middlePiece('mat', 'moss', 4, 5.25),
  middlePiece('panel', 'sprig', 3.75, 5),
  middlePiece('frame', 'moss', 3.25, 4.5),
  middlePiece('print', 'sprig', 3, 4.25),
  middlePiece('tag', 'moss', 2.5, 3.75),
]);

const planned = (sketch: Sketch): BatchPlan => planBatch(batchRecipe(sketch), 6);

const KNIFE =
  'ut the centre of B The mat, 3 1⁄4 × 4 1⁄2 in, out of 6 of them with a knife, on a mat, along a metal ruler, before gluing: 3⁄8 in from the left edge and 3⁄8 in from the top; it will be covered by C The panel';

test('the plan names the centre, counts real sheets, and has the knife work before the centre is cut up', () => {
  const text = batchText(tagged, planned(tagged));
  expect(text).toContain('6 cards from 10 sheets, the fewest possible');
  expect(text).toMatch(/\n {2}6 sheets \(fewest, proven by .*\) and 6 centres, 2 layouts, 2 settings, 18 cuts\n/);
  expect(text).toContain('\n  sheet 2: 6 times the centre of B The mat, 3 1⁄4 × 4 1⁄2 in: D ');
  const lines = text.split('\n');
  const knife = lines.indexOf(`    c${KNIFE}`);
  const onSheetTwo = lines.findIndex((line) => line.includes('of sheet 2'));
  expect(knife).toBeGreaterThan(0);
  expect(onSheetTwo).toBeGreaterThan(knife);
  expect(text).not.toContain('--centre-of-');
});

test('the cautions name the knife only where one is needed', () => {
  for (const write of [batchText, stepsText]) {
    expect(write(tagged, planned(tagged))).toContain(`${BLADE_CAUTION}\n${KNIFE_CAUTION}\n`);
    expect(write(plain, planned(plain))).toContain(`${BLADE_CAUTION}\n`);
    expect(write(plain, planned(plain))).not.toContain('nife');
  }
});

test('the steps cut the mats first, then have the knife work as a step, then cut the centres up', () => {
  const lines = stepsText(tagged, planned(tagged)).split('\n');
  expect(lines).toContain('  sheet 2: 6 of the centre of B The mat, 3 1⁄4 × 4 1⁄2 in');
  expect(lines.some((line) => line.startsWith('Moss card: 6 sheets, 2 settings'))).toBe(true);
  const mats = lines.findIndex((line) => line.includes('set aside 6 of B'));
  expect(lines.indexOf(`  2. C${KNIFE}.`)).toBe(mats + 1);
  expect(lines.slice(mats + 2).join('\n')).toContain('set aside 12 of D');
});

test('a centre of a piece that came from a centre waits for it: knife, cuts, knife, cuts', () => {
  const text = stepsText(nested, planned(nested));
  const at = ['set aside 6 of B', 'Cut the centre of B', 'set aside 6 of D', 'Cut the centre of D', 'set aside 6 of F'];
  const places = at.map((words) => text.indexOf(words));
  expect(Math.min(...places)).toBeGreaterThan(0);
  expect(places).toEqual([...places].sort((a, b) => a - b));
});

test.each([
  ['one centre', tagged, 1],
  ['a centre in a centre', nested, 2],
])('the steps document of %s can be performed, and says when which centres are cut out', (_, sketch, centres) => {
  const batch = planned(sketch);
  const document = JSON.parse(JSON.stringify(writeSteps(sketch, batch, { stack: 3 })));
  batch.papers.forEach(({ job, plan }, index) => {
    const { settings, turns, steps } = document.papers[index];
    expect(performSteps(job, plan, { stack: 3, settings, turns, steps })).toEqual([]);
  });
  const moss = document.papers.find(({ paper }: { paper: string }) => paper === 'moss');
  expect(moss.centres).toHaveLength(centres);
  expect(moss.centres[0]).toMatchObject({ piece: 'mat', label: 'B', pieces: 6, coveredBy: ['panel'] });
  for (const { piece, beforeStep } of moss.centres) {
    const first = moss.steps.findIndex(({ sheet }: { sheet: number }) => moss.sheets[sheet].centreOf === piece);
    expect(first).toBe(beforeStep);
    const made = moss.steps
      .slice(0, beforeStep)
      .some((step: object) => JSON.stringify(step).includes(`"blank":"${piece}"`));
    expect(made).toBe(true);
  }
});

test('the centre has a guide of its own, as large as it is', () => {
  const files = sheetGuides(tagged, planned(tagged));
  const guide = files.find(({ name }) => name === 'fern-sampler-moss-centre-of-mat-2-x6.svg');
  expect(guide?.text).toContain('width="3.25in"');
  expect(guide?.text).toContain('Moss card, the centre of B The mat');
  expect(files.some(({ name }) => name === 'fern-sampler-moss-1-x6.svg')).toBe(true);
});

test('the guide stays where it is when the centres begin at the same setting, and the work is turned (by hand)', () => {
  // Two mats of 4 x 3 in from 4 x 6 in, cut at 3 in; tags of 3 x 2 1/2 in from centres of 3 1/2 x 2 1/2 in, cut at 3 in.
  const sketch = centreSketch([
    middlePiece('mat', 'moss', 4, 3),
    middlePiece('panel', 'sprig', 4, 3),
    middlePiece('tag', 'moss', 3, 2.5),
  ]);
  const tall = sketch.papers.map((paper) => (paper.id === 'moss' ? { ...paper, height: inches(6) } : paper));
  const batch = planned({ ...sketch, papers: tall });
  const document = JSON.parse(JSON.stringify(writeSteps(sketch, batch)));
  const moss = document.papers.find(({ paper }: { paper: string }) => paper === 'moss');
  expect(moss).toMatchObject({ settings: 1, leastSettings: 1, fewestSettings: true, turns: 1 });
  expect(moss.steps).toMatchObject([
    { sheet: 0, setting: inches(3), set: true, turn: false },
    { sheet: 1, setting: inches(3), set: false, turn: true },
  ]);
  expect(batchText(sketch, batch)).toContain('2 layouts, 1 setting, 9 cuts');
});
