import { type CutPlan, checkPlan, inches, type Length, millimetres, mostSets, planCuts } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { plainJob } from './plain-job.js';

/** ISO 216:2007, A series, trimmed sizes in mm (read in a secondary copy). */
const A = [
  [841, 1189],
  [594, 841],
  [420, 594],
  [297, 420],
  [210, 297],
  [148, 210],
  [105, 148],
  [74, 105],
  [52, 74],
  [37, 52],
  [26, 37],
] as const;

/** ASME Y14.1 (ANSI A to E) and US office sizes, in inches (read in a secondary copy). */
const LETTER = [8.5, 11] as const;
const LEGAL = [8.5, 14] as const;
const TABLOID = [11, 17] as const;
const ANSI_C = [17, 22] as const;
const CRAFT = [12, 12] as const;

function fromOne(
  sheet: readonly [number, number],
  blank: readonly [number, number],
  length: (n: number) => Length,
): CutPlan {
  const job = plainJob({ w: sheet[0], h: sheet[1], sheets: 1 }, [{ w: blank[0], h: blank[1], count: 1 }], true, length);
  const plan = mostSets(job, { work: 100_000 });
  expect(checkPlan(job, plan)).toEqual([]);
  expect(plan.proof.mostSets).toBe(true);
  return plan;
}

test.each(A.slice(0, -1).map((sheet, n) => [n, sheet, A[n + 1] ?? sheet] as const))(
  'one A%i gives two of the next size',
  (_n, sheet, half) => {
    expect(fromOne(sheet, half, millimetres).sets).toBe(2);
  },
);

test('an A4 cut in half is 148.5 mm, an A5 148 mm: both halves fit (ISO 216; the half is arithmetic)', () => {
  expect(fromOne([210, 297], [148.5, 210], millimetres).sets).toBe(2);
  expect(fromOne([210, 297], [149, 210], millimetres).sets).toBe(1);
});

test('the ANSI sizes halve into each other (ASME Y14.1: A 8.5 x 11, B 11 x 17, C 17 x 22 in)', () => {
  expect(fromOne(TABLOID, LETTER, inches)).toMatchObject({ sets: 2, largestOffcut: null });
  expect(fromOne(ANSI_C, TABLOID, inches)).toMatchObject({ sets: 2, largestOffcut: null });
  expect(fromOne(LEGAL, LETTER, inches).sets).toBe(1);
});

/** Card bases per sheet, opened flat (seen stated on pages that sell paper; the counts are worked out). */
const BASES: readonly (readonly [string, readonly [number, number], readonly [number, number], number])[] = [
  ['A2, folded at the long side, from letter', LETTER, [5.5, 8.5], 2],
  ['A2, folded at the short side, from letter', LETTER, [4.25, 11], 2],
  ['A2 from 12 x 12: two, and no more whichever way they lie', CRAFT, [5.5, 8.5], 2],
  ['A7 from letter', LETTER, [7, 10], 1],
  ['A7 from 12 x 12', CRAFT, [7, 10], 1],
  ['A7 from 11 x 17', TABLOID, [7, 10], 2],
  ['A6 from letter', LETTER, [6.25, 9], 1],
  ['6 in square from 12 x 12', CRAFT, [6, 12], 2],
  ['5 in square from 12 x 12', CRAFT, [5, 10], 2],
  ['4 in square from 12 x 12', CRAFT, [4, 8], 4],
  ['3 in square from 12 x 12', CRAFT, [3, 6], 8],
  ['panels of 4 x 5 1/4 from 12 x 12 in', CRAFT, [4, 5.25], 6],
];

test.each(BASES)('%s', (name, sheet, blank, count) => {
  // The source gives one A7 base for 11 x 17; two lie side by side, since 2 x 7 and 10 are within 17 and 11.
  expect(fromOne(sheet, blank, inches).sets, name).toBe(count);
});

test('nine bases at two per sheet need five sheets, one left (common practice, no source)', () => {
  const plan = planCuts(plainJob({ w: 8.5, h: 11, sheets: null }, [{ w: 5.5, h: 8.5, count: 9 }], true, inches));
  expect(plan.counts.sheets).toBe(5);
  expect(plan.proof.fewestSheets).toBe(true);
  expect(2 * plan.counts.sheets - 9).toBe(1);
});

test('12 x 12 in is 304.8 mm, and the trade calls it 305: a plan that fills 12 in exactly fits either (common practice, no source)', () => {
  const job = (w: number, length: (n: number) => Length) =>
    plainJob({ w, h: w, sheets: 1 }, [{ w: 4 * 16256, h: 5.25 * 16256, count: 6 }], true, length);
  const exact = job(12 * 16256, (n) => n as Length);
  const trade = job(305 * 640, (n) => n as Length);
  expect([planCuts(exact).complete, planCuts(trade).complete]).toEqual([true, true]);
});
