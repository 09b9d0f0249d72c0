import { checkPlan, fullestSheet, leastSheets, planCuts, ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import packing from '../data/cutting/bin-packing.json';
import stock from '../data/cutting/cutting-stock.json';
import limited from '../data/cutting/knapsack-constrained.json';
import unlimited from '../data/cutting/knapsack-unconstrained.json';
import { plainJob } from './plain-job.js';

/**
 * A part of the open instances with published optima (the bench `literature` runs them all). Licences, and the sources of every value,
 * stand in the data files. Where our plan is not the optimum, the difference is named, so that a worse plan fails here.
 */

interface Knapsack {
  readonly name: string;
  readonly rotation: boolean;
  readonly sheet: { readonly w: number; readonly h: number };
  readonly items: readonly (readonly number[])[];
  readonly optimal: number | null;
}

function fullest({ sheet, items, rotation }: Knapsack, work: number) {
  return fullestSheet(
    ticks(sheet.w),
    ticks(sheet.h),
    items.map(([width = 0, height = 0, value = 0, most]) => ({
      width: ticks(width),
      height: ticks(height),
      value,
      most: most ?? null,
      turn: rotation,
    })),
    work,
  );
}

function chosen<T extends { readonly name: string }>(instances: readonly T[], names: string): [string, T][] {
  return names.split(' ').map((name) => {
    const instance = instances.find((one) => one.name === name);
    if (!instance) throw new Error(`There is no instance ${name}.`);
    return [name, instance];
  });
}

/** J. E. Beasley 1985, Journal of the Operational Research Society 36:297-306; optima: G. F. Cintra et al. 2008, EJOR 191:61-85. */
const GCUT = [
  ...chosen(unlimited['gcut-unconstrained'].instances, 'gcut1 gcut4 gcut8 gcut12'),
  ...chosen(unlimited['gcut-unconstrained-rotated'].instances, 'gcut1r gcut4r gcut8r gcut12r'),
];
/** M. Hifi & V. Zissimopoulos 1996, EJOR 91:553-564, and the authors named in the file. */
const CLASSICS = chosen(unlimited['small-unconstrained'].instances, 'cgcut1u cgcut3u H M1 M5 OF1u OF2u');

test.each([...GCUT, ...CLASSICS])('one sheet without limits, %s: the optimum, proven', (_name, instance) => {
  expect(fullest(instance, 20_000)).toMatchObject({ value: instance.optimal, bound: instance.optimal, proven: true });
});

/**
 * N. Christofides & C. Whitlock 1977, Operations Research 25:30-44, from memory (cgcut); J. E. Beasley 1985, Operations Research 33:49-64 (NGCUT);
 * the authors named in the file (others). Optima: Wang, Baldacci, Liu & Wei 2025, EJOR 327:735-753.
 */
const LIMITED = [
  ...chosen(limited.cgcut.instances, 'cgcut1 cgcut2 cgcut3'),
  ...chosen(limited['knapsack-constrained-small'].instances, 'NGCUT1 NGCUT5 NGCUT12 hccut03 hccut08'),
  ...chosen(
    limited['knapsack-constrained-unweighted'].instances,
    '2s A1s A4 A5 CHL1s CHL2s CHL5 CHL6 CHL7 CU1 CU10 Hchl3s Hchl6s OF1 OF2 STS2s W',
  ),
  ...chosen(limited['knapsack-constrained-weighted'].instances, '2 A1 ATP40 CHL2 CW1 STS4'),
];

test.each(LIMITED)('one sheet with limits, %s: the optimum', (_name, instance) => {
  const { value, bound, proven } = fullest(instance, 3_000_000);
  expect(value).toBe(instance.optimal);
  expect(bound).toBeGreaterThanOrEqual(value);
  if (proven) expect(bound).toBe(value);
});

interface Packing {
  readonly sheet: { readonly w: number; readonly h: number };
  readonly items: readonly { readonly w: number; readonly h: number; readonly demand: number }[];
}

/** Our sheets above the least known: the plan is valid and complete, its bound is no higher than what is known to be enough. */
function sheetsAbove({ sheet, items }: Packing, turn: boolean, best: number): number {
  const job = plainJob(
    { ...sheet, sheets: null },
    items.map(({ w, h, demand }) => ({ w, h, count: demand })),
    turn,
  );
  const plan = planCuts(job);
  expect(checkPlan(job, plan)).toEqual([]);
  expect(plan.complete).toBe(true);
  expect(best).toBeGreaterThan(0);
  expect(leastSheets(job, 1, 400_000).value).toBeLessThanOrEqual(best);
  if (plan.proof.fewestSheets) expect(plan.counts.sheets).toBe(best);
  return plan.counts.sheets - best;
}

/** E. Silva, F. Alvelos & J. M. Valério de Carvalho 2010, EJOR 205:699-708. */
const STOCK = chosen(
  stock.instances,
  'A5 CHL2 CHL5 CHL7 CU1 CU2 CW2 HH Hchl3s Hchl4s Hchl6s Hchl8s OF1 OF2 STS2 STS4 W 2 3',
);

test.each(STOCK)('cutting stock, %s: the optimum', (_name, instance) => {
  expect(sheetsAbove(instance, false, instance.known.optimal ?? 0)).toBe(0);
});

/** J. O. Berkey & P. Y. Wang 1987, JORS 38:423-429 (classes 1-6); S. Martello & D. Vigo 1998, Management Science 44:388-399 (7-10). */
const PACKING = chosen(
  packing.instances,
  [
    'Class_01_20_1 Class_01_40_7 Class_02_40_1 Class_03_20_8 Class_04_20_2 Class_05_40_3 Class_06_20_7',
    'Class_07_20_3 Class_07_40_9 Class_08_40_6 Class_09_20_9 Class_10_20_1 Class_10_20_9',
  ].join(' '),
);
const ABOVE: Readonly<Record<string, number>> = { Class_02_40_1: 1 };

test.each(PACKING)('bin packing, oriented, %s', (name, instance) => {
  const { optimal, upper } = instance.known;
  expect(sheetsAbove(instance, false, optimal ?? upper ?? 0)).toBeLessThanOrEqual(ABOVE[name] ?? 0);
});

test.each(PACKING.slice(0, 6))('bin packing, turned, %s', (name, instance) => {
  const { optimal, upper } = instance.knownRotated;
  expect(sheetsAbove(instance, true, optimal ?? upper ?? 0)).toBeLessThanOrEqual(ABOVE[`${name} turned`] ?? 0);
});
