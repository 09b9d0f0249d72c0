import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomJob } from '../../../../tests/kit/random-job.js';
import { checkPlan } from '../cut/check-plan.js';
import type { CutJob } from '../cut/job.js';
import { inches, ticks } from '../length/length.js';
import { planCuts, QUICK_WORK } from './plan-cuts.js';

/** Strips and panels on one paper of 12 x 12 in, by hand: 3 sheets of nine 4 x 4 in panels, 2 of six 12 x 2 in strips. */
function panelsAndStrips(strip: number): CutJob {
  const none = ticks(0);
  return {
    trimmer: {
      bladeLength: inches(12),
      narrowestStrip: inches(1 / 4),
      thinnestTrim: inches(1 / 16),
      kerf: none,
      rulerStep: inches(1 / 16),
      stoppedCuts: false,
    },
    papers: [
      {
        id: 'moss',
        width: inches(12),
        height: inches(12),
        sheets: null,
        directional: false,
        price: null,
        margins: { top: none, right: none, bottom: none, left: none },
      },
    ],
    blanks: [
      { id: 'panel', width: inches(4), height: inches(4), quantity: 27, papers: null, turn: true },
      { id: 'strip', width: inches(12), height: inches(strip), quantity: 12, papers: null, turn: true },
    ],
  };
}

test('a warm start of the same job keeps its sheets and takes less work than a cold one', () => {
  const job = panelsAndStrips(2);
  const before = planCuts(job);
  expect(before).toMatchObject({ complete: true, counts: { sheets: 5 }, proof: { fewestSheets: true } });
  const cold = planCuts(job, { work: QUICK_WORK });
  const warm = planCuts(job, { work: QUICK_WORK, previous: before });
  expect([warm.counts.sheets, warm.counts.layouts]).toEqual([before.counts.sheets, before.counts.layouts]);
  expect(warm.work).toBeLessThan(cold.work / 4);
});

test('a blank one mark smaller keeps its place, one mark larger finds another', () => {
  const before = planCuts(panelsAndStrips(2));
  const smaller = panelsAndStrips(2 - 1 / 16);
  const less = planCuts(smaller, { work: QUICK_WORK, previous: before });
  expect(checkPlan(smaller, less)).toEqual([]);
  expect(less.counts.sheets).toBe(5);
  const larger = panelsAndStrips(2 + 1 / 16);
  const more = planCuts(larger, { work: QUICK_WORK, previous: before });
  expect(checkPlan(larger, more)).toEqual([]);
  expect(more.counts.sheets).toBe(planCuts(larger).counts.sheets);
});

test('fewer copies than the earlier plan made are all that is made', () => {
  const job = panelsAndStrips(2);
  const before = planCuts(job);
  const fewer: CutJob = { ...job, blanks: job.blanks.map((blank) => ({ ...blank, quantity: blank.quantity - 5 })) };
  const warm = planCuts(fewer, { work: QUICK_WORK, previous: before });
  expect(checkPlan(fewer, warm)).toEqual([]);
  expect(warm.complete).toBe(true);
});

test('whatever the earlier plan was of, the plan is valid and nothing is lost', () => {
  fc.assert(
    fc.property(randomJob(), randomJob(), fc.integer({ min: -60, max: 60 }), (one, other, change) => {
      const changed: CutJob = {
        ...one,
        blanks: one.blanks.map((blank, index) =>
          index === 0 ? { ...blank, width: ticks(Math.max(1, blank.width + change)) } : blank,
        ),
      };
      for (const previous of [planCuts(one, { work: QUICK_WORK }), planCuts(other, { work: QUICK_WORK })]) {
        const plan = planCuts(changed, { work: QUICK_WORK, previous });
        expect(checkPlan(changed, plan)).toEqual([]);
        expect(planCuts(changed, { work: QUICK_WORK, previous })).toEqual(plan);
      }
    }),
    { numRuns: 200 },
  );
});
