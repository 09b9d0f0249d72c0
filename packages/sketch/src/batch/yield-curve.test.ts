import { planCuts, QUICK_WORK } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { type PlanOne, planBatch } from './batch-plan.js';
import { batchRecipe } from './batch-recipe.js';
import { cutJobs } from './cut-jobs.js';
import { planForSheets } from './plan-for-sheets.js';
import type { BatchRecipe } from './recipe.js';
import { batchYield } from './yield.js';
import { type YieldCurveOptions, type YieldPoint, yieldCurve } from './yield-curve.js';

const quickly: PlanOne = (job) => planCuts(job, { work: QUICK_WORK });

function curveOf(recipe: BatchRecipe, options: YieldCurveOptions = {}): readonly YieldPoint[] {
  const slices = yieldCurve(recipe, { planOne: quickly, ...options });
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  return slice.value;
}

test('strips of 2 1/8 in, five from a 12 in sheet: a sheet more after 5, 10, 15 cards (by hand)', () => {
  const curve = curveOf(batchRecipe(stripSketch('2 1/8 in', { moss: 2 })), { upTo: 16, planOne: planForSheets() });
  const moss = curve.map(({ papers }) => papers.find(({ paper }) => paper === 'moss')?.sheets);
  expect(moss).toEqual([1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 3, 3, 3, 3, 3, 4]);
  expect(curve.map(({ cards }) => cards)).toEqual(moss.map((_, index) => index + 1));
  expect(curve.filter(({ atHand }) => atHand).map(({ cards }) => cards)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  expect(curve.every(({ proven }) => proven)).toBe(true);
});

test('each point is what a plan of so many cards needs; one number of cards for each slice, from the top', () => {
  const recipe = batchRecipe(sampleSketch());
  expect([...yieldCurve(recipe, { upTo: 5, planOne: quickly })].map(({ cards }) => cards)).toEqual([5, 4, 3, 2, 1]);
  for (const { cards, papers, sheets } of curveOf(recipe, { upTo: 12 })) {
    const batch = planBatch(recipe, cards, quickly);
    expect(sheets).toBeLessThanOrEqual(batch.sheets);
    expect(sheets).toBeGreaterThanOrEqual(batch.lowerBound);
    expect(papers.map(({ paper }) => paper)).toEqual(batch.papers.map(({ paper }) => paper));
    expect(papers.reduce((sum, each) => sum + each.sheets, 0)).toBe(sheets);
  }
});

test('the curve never falls, however poor the planner, and no bound is broken', () => {
  const recipe = batchRecipe(stripSketch('2 1/8 in'));
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 24, maxLength: 24 }), (wasted) => {
      // A planner that wastes sheets at some numbers of blanks, and says truthfully what it proves.
      const poor: PlanOne = (job) => {
        const plan = quickly(job);
        const sheets = plan.counts.sheets + (wasted[(job.blanks[0]?.quantity ?? 0) % 24] ?? 0);
        return { ...plan, counts: { ...plan.counts, sheets } };
      };
      const curve = curveOf(recipe, { upTo: 12, planOne: poor });
      const good = curveOf(recipe, { upTo: 12 });
      for (const [index, point] of curve.entries()) {
        expect(point.sheets).toBeGreaterThanOrEqual(curve[index - 1]?.sheets ?? 0);
        for (const [paper, { sheets }] of point.papers.entries())
          expect(sheets).toBeGreaterThanOrEqual(curve[index - 1]?.papers[paper]?.sheets ?? 0);
        expect(point.sheets).toBeGreaterThanOrEqual(good[index]?.sheets ?? 0);
        expect(point.proven && point.sheets !== good[index]?.sheets).toBe(false);
      }
    }),
    { numRuns: 30 },
  );
});

test('what the sheets at hand give on the curve is the yield', () => {
  for (const sheets of [0, 1, 3]) {
    const recipe = batchRecipe(stripSketch('2 in', { moss: sheets, ivory: 20 }));
    const enough = curveOf(recipe, { upTo: 20 }).filter(({ atHand }) => atHand);
    expect(enough.length).toBe(batchYield(recipe, { planOne: quickly })?.cards);
  }
});

test('a price changes nothing: sheets are counted, not money', () => {
  const recipe = batchRecipe(stripSketch('2 in'));
  const priced = { ...recipe, papers: recipe.papers.map((paper) => ({ ...paper, price: 0.25 })) };
  expect(curveOf(priced, { upTo: 14 })).toEqual(curveOf(recipe, { upTo: 14 }));
});

test('the curve ends where no number of sheets makes the cards', () => {
  expect(curveOf(batchRecipe(stripSketch('13 in')), { upTo: 3 })).toEqual([]);
});

test('one more sheet: of the paper that runs out five cards more, of the other none (by hand)', () => {
  const recipe = batchRecipe(stripSketch('2 1/8 in', { moss: 2, ivory: 12 }));
  const most = batchYield(recipe, { planOne: quickly, oneMore: true });
  expect(most).toMatchObject({ cards: 10, proven: true, runsOut: ['moss'] });
  expect(most?.oneMore).toEqual([
    { paper: 'ivory', cards: 10, proven: true },
    { paper: 'moss', cards: 15, proven: true },
  ]);
  expect(batchYield(recipe, { planOne: quickly })?.oneMore).toEqual([]);
});

test('with one sheet more of a paper the yield is what the sketch with that sheet gives', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 8 }), (moss, ivory) => {
      const most = batchYield(batchRecipe(stripSketch('2 1/8 in', { moss, ivory })), {
        planOne: quickly,
        oneMore: true,
      });
      const richer = batchRecipe(stripSketch('2 1/8 in', { moss: moss + 1, ivory }));
      const more = most?.oneMore.find(({ paper }) => paper === 'moss');
      expect(more?.cards).toBe(batchYield(richer, { planOne: quickly })?.cards);
      expect(more?.cards).toBeGreaterThanOrEqual(most?.cards ?? 0);
      expect(cutJobs(richer, 1).length).toBe(2);
    }),
    { numRuns: 20 },
  );
});
