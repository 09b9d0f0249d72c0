import { type CutJob, checkPlan, inches, planCuts, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { batchRecipe } from './batch-recipe.js';
import { cutJobs } from './cut-jobs.js';
import { planForSheets } from './plan-for-sheets.js';
import { sketchTrimmer } from './recipe.js';
import { rememberPlans } from './remember-plans.js';

const recipes = [sampleSketch(), stripSketch('2 1/8 in', { moss: 2 })].map(batchRecipe);
const jobs = recipes.flatMap((recipe) => [3, 11].flatMap((cards) => cutJobs(recipe, cards).map(({ job }) => job)));

test('a plan for counting is valid, with the sheets and the completeness of the thorough one', () => {
  const counting = planForSheets();
  for (const job of jobs) {
    const [plan, thorough] = [counting(job), planCuts(job)];
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan.complete).toBe(thorough.complete);
    expect(plan.counts.sheets).toBe(thorough.counts.sheets);
    if (plan.proof.fewestSheets) expect(plan.proof.lowerBound).toBe(plan.counts.sheets);
  }
});

/** Blanks, each `width x height x quantity` in inches, from letter sheets. */
function letterJob(...blanks: readonly (readonly [number, number, number])[]): CutJob {
  const none = ticks(0);
  const margins = { top: none, right: none, bottom: none, left: none };
  const letter = {
    id: 'letter',
    width: inches(8.5),
    height: inches(11),
    sheets: null,
    directional: false,
    price: null,
  };
  return {
    trimmer: sketchTrimmer('in', []),
    papers: [{ ...letter, margins }],
    blanks: blanks.map(([width, height, quantity], index) => ({
      id: `blank-${index}`,
      width: inches(width),
      height: inches(height),
      quantity,
      papers: null,
      turn: true,
    })),
  };
}

test('where the quick plan may need a sheet too many, the thorough one decides, and no proof is made up', () => {
  const hard = [
    letterJob([3.25, 5.75, 8], [5.5, 5, 5], [5.75, 4, 11], [1.75, 4.5, 11]),
    letterJob([1.25, 6, 4], [4.25, 1.5, 13], [4, 2, 8]),
    letterJob([2.75, 3.5, 5], [5, 6.75, 4], [5.25, 3, 13], [1, 1.25, 12]),
  ];
  const counting = planForSheets();
  for (const job of hard) {
    const [plan, thorough] = [counting(job), planCuts(job)];
    expect(checkPlan(job, plan)).toEqual([]);
    expect(plan.counts.sheets).toBe(thorough.counts.sheets);
    expect(plan.proof.lowerBound).toBeLessThanOrEqual(thorough.counts.sheets);
    if (plan.proof.fewestSheets) expect(plan.proof.lowerBound).toBe(plan.counts.sheets);
  }
});

test('equal jobs are planned once', () => {
  let asked = 0;
  const planOne = rememberPlans((job) => {
    asked += 1;
    return planCuts(job, { work: 1 });
  });
  const plans = [...jobs, ...structuredClone(jobs)].map(planOne);
  expect(asked).toBe(new Set(jobs.map((job) => JSON.stringify(job))).size);
  expect(plans[0]).toBe(plans[jobs.length]);
});
