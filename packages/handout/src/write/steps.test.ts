import { inches, performSteps, stepList } from '@trimwell/geometry';
import { batchRecipe, planBatch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { BLADE_CAUTION } from './cautions.js';
import { writeSteps } from './steps-json.js';
import { partName, stepsText } from './steps-text.js';

const sketch = sampleSketch();
const batch = planBatch(batchRecipe(sketch), 6);

test('the text says the caution before the first cut, and every paper, setting and blank', () => {
  const text = stepsText(sketch, batch);
  const lines = text.split('\n');
  expect(lines.indexOf(BLADE_CAUTION)).toBe(1);
  expect(text.endsWith('\n')).toBe(true);
  for (const { paper, job, plan } of batch.papers) {
    const name = sketch.papers.find(({ id }) => id === paper)?.name ?? '';
    const head = lines.findIndex((line) => line.startsWith(`${name}: ${plan.counts.sheets} sheet`));
    expect(head).toBeGreaterThan(1);
    const end = lines.findIndex((line, index) => index > head && !line.startsWith('  '));
    const own = lines.slice(head, end);
    expect(own.filter((line) => line.includes('Set the guide to'))).toHaveLength(plan.counts.settings);
    const { steps, turns } = stepList(plan, job.trimmer);
    expect(own.filter((line) => /^ {2}\d+\. /.test(line))).toHaveLength(steps.length);
    expect(own.filter((line) => line.includes('Turn the work by a quarter.'))).toHaveLength(turns);
  }
  // The panel mat is B: all six of 4 x 5 1/4 in come off.
  const mats = [...text.matchAll(/set aside (\d+) of B, /g)].reduce((sum, [, count]) => sum + Number(count), 0);
  expect(mats).toBe(6);
});

test('lengths are inches with exact fractions, and never rounded in silence', () => {
  const text = stepsText(sketch, batch);
  expect(text).toMatch(/Set the guide to 5 1⁄4 in\./);
  expect(text).not.toContain('≈');
});

test('a stack of one says no stack, a larger one says how many at once', () => {
  expect(stepsText(sketch, batch, { stack: 1 })).not.toContain('at once');
  expect(stepsText(sketch, batch, { stack: 2 })).toContain('2 at once');
});

test('the document holds the same steps, performable, with the letters of the drawing', () => {
  const document = JSON.parse(JSON.stringify(writeSteps(sketch, batch, { stack: 3 })));
  expect(document).toMatchObject({ trimwellSteps: 1, ticksPerInch: inches(1), cards: 6, complete: true, stack: 3 });
  expect(document.caution).toBe(BLADE_CAUTION);
  batch.papers.forEach(({ paper, job, plan }, index) => {
    const told = document.papers[index];
    expect(told).toMatchObject({ paper, settings: plan.counts.settings, unmade: [] });
    expect(told.leastSettings).toBeLessThanOrEqual(told.settings);
    expect(told.fewestSettings).toBe(told.leastSettings === told.settings);
    expect(
      performSteps(job, plan, { stack: 3, settings: told.settings, turns: told.turns, steps: told.steps }),
    ).toEqual([]);
  });
  expect(JSON.stringify(document)).toMatch(/"blank":"panel-mat","turned":(true|false),"label":"B"/);
});

test('a part is named by its sheet and a small letter', () => {
  expect([partName(0, 0), partName(1, 27)]).toEqual(['1a', '2ab']);
});
