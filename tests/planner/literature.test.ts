import { checkPlan, leastSheets, planCuts } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import packing from '../data/cutting/bin-packing.json';
import stock from '../data/cutting/cutting-stock.json';
import { plainJob } from './plain-job.js';

/**
 * Open instances with published optima; sources and licences stand in the data files. Our sheets above the optimum are
 * named per instance, so that a worse plan fails here and a better one asks for a smaller number.
 */
const ABOVE: Readonly<Record<string, number>> = {
  Hchl9: 1,
  Class_01_40_7: 1,
  Class_02_40_1: 1,
  Class_07_40_9: 1,
  Class_08_40_6: 1,
};

const instances = [
  ...stock.instances.map((instance) => ({ ...instance, name: `cutting stock ${instance.name}` })),
  ...packing.instances.map((instance) => ({ ...instance, name: `bin packing ${instance.name}` })),
];

test.each(instances.map((instance) => [instance.name, instance] as const))('%s', (name, { sheet, items, known }) => {
  const blanks = items.map(({ w, h, demand }) => ({ w, h, count: demand }));
  const job = plainJob({ ...sheet, sheets: null }, blanks, false);
  const plan = planCuts(job);
  expect(checkPlan(job, plan)).toEqual([]);
  expect(plan.complete).toBe(true);
  const optimal = known.optimal ?? 0;
  expect(optimal).toBeGreaterThan(0);
  expect(leastSheets(job).value).toBeLessThanOrEqual(optimal);
  expect(plan.counts.sheets - optimal).toBe(ABOVE[name.split(' ').at(-1) ?? ''] ?? 0);
  if (plan.proof.fewestSheets) expect(plan.counts.sheets).toBe(optimal);
});
