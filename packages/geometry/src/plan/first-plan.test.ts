import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomJob } from '../../../../tests/kit/random-job.js';
import { checkPlan } from '../cut/check-plan.js';
import { firstPlan } from './first-plan.js';
import { planCuts } from './plan-cuts.js';

test('a first plan is a valid one, no better than that of the whole planner, and never falsely proven', () => {
  let alike = 0;
  fc.assert(
    fc.property(randomJob(), (job) => {
      const first = firstPlan(job, { work: 200_000 });
      const whole = planCuts(job, { work: 400_000 });
      expect(checkPlan(job, first)).toEqual([]);
      expect(whole.complete || !first.complete).toBe(true);
      if (!first.complete || !whole.complete || job.papers.some(({ price }) => price !== null)) return;
      expect(whole.counts.sheets).toBeLessThanOrEqual(first.counts.sheets);
      if (first.proof.fewestSheets) expect(first.counts.sheets).toBe(whole.counts.sheets);
      if (whole.counts.sheets === first.counts.sheets) alike += 1;
    }),
    { seed: 11, numRuns: 150 },
  );
  expect(alike).toBeGreaterThan(20);
});
