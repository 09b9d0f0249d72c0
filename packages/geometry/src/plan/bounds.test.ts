import fc from 'fast-check';
import { expect, test } from 'vitest';
import knapsacks from '../../../../tests/data/cutting/knapsack-unconstrained.json';
import type { CutJob } from '../cut/job.js';
import { ticks } from '../length/length.js';
import { taskOf } from '../sheet/kinds.js';
import { tableOf } from '../sheet/places.js';
import { countsOf } from '../sheet/slice.js';
import { lowerBound } from './bounds.js';
import { leastCost } from './least-cost.js';
import { planCuts } from './plan-cuts.js';

const NONE = { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) };

function plain(
  width: number,
  height: number,
  blanks: readonly (readonly [number, number, number])[],
  turn: boolean,
): CutJob {
  return {
    trimmer: {
      bladeLength: null,
      narrowestStrip: ticks(0),
      thinnestTrim: ticks(0),
      kerf: ticks(0),
      rulerStep: null,
      stoppedCuts: false,
    },
    papers: [
      {
        id: 'a',
        width: ticks(width),
        height: ticks(height),
        sheets: null,
        directional: false,
        price: null,
        margins: NONE,
      },
    ],
    blanks: blanks.map(([w, h, quantity], index) => ({
      id: `b${index}`,
      width: ticks(w),
      height: ticks(h),
      quantity,
      papers: null,
      turn,
    })),
  };
}

/**
 * The most value of one sheet against published optima of unconstrained guillotine cutting: Beasley 1985, optima of
 * Cintra, Miyazawa, Wakabayashi and Xavier 2008, and small classics; sources stand in the data file.
 */
/** More copies of a blank than any of the sheets holds. */
const WITHOUT_LIMIT = 10_000;
/** Room enough for all of them; the planner itself goes less far. */
const LARGE = { points: 1_000, steps: 400_000_000 };

const instances = Object.values(knapsacks).flatMap((family) => family.instances);

test.each(instances.map((instance) => [`${instance.name}${instance.rotation ? ' turned' : ''}`, instance] as const))(
  'the most value of one sheet, %s',
  (_name, { sheet, items, rotation, optimal }) => {
    const job = plain(
      sheet.w,
      sheet.h,
      items.map(([w = 1, h = 1]) => [w, h, WITHOUT_LIMIT] as const),
      rotation,
    );
    const task = taskOf(job, 1);
    const values = task.kinds.map((kind) =>
      Math.max(...kind.members.map(({ id }) => items[Number(id.slice(1))]?.[2] ?? 0)),
    );
    const table = tableOf(task, 0, () => true, LARGE);
    expect(table?.most(values)).toBe(optimal);
    const best = table?.best();
    const counts = best ? countsOf(best, task.kinds.length) : [];
    expect(counts.reduce((sum, count, kind) => sum + count * (values[kind] ?? 0), 0)).toBe(optimal);
    expect([(best?.w ?? 0) <= sheet.w, (best?.h ?? 0) <= sheet.h]).toEqual([true, true]);
  },
);

/** Fewest sheets for a handful of blanks, by trying every way to cut: every order, every first cut, every turn. */
function fewestByTrying(width: number, height: number, blanks: readonly (readonly [number, number])[]): number {
  const full = (1 << blanks.length) - 1;
  const known = new Map<string, boolean>();
  const fits = (w: number, h: number, set: number): boolean => {
    if (set === 0) return true;
    const key = `${w} ${h} ${set}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const members = blanks.flatMap((blank, index) => (set & (1 << index) ? [blank] : []));
    const area = members.reduce((sum, [a, b]) => sum + a * b, 0);
    let found = false;
    if (area <= w * h) {
      const [only] = members;
      if (members.length === 1 && only) found = (only[0] <= w && only[1] <= h) || (only[1] <= w && only[0] <= h);
      for (let part = (set - 1) & set; part > 0 && !found; part = (part - 1) & set) {
        for (let at = 1; at < w && !found; at += 1) found = fits(at, h, part) && fits(w - at, h, set & ~part);
        for (let at = 1; at < h && !found; at += 1) found = fits(w, at, part) && fits(w, h - at, set & ~part);
      }
    }
    known.set(key, found);
    return found;
  };
  const least = Array.from({ length: full + 1 }, () => Number.POSITIVE_INFINITY);
  least[0] = 0;
  for (let set = 1; set <= full; set += 1) {
    for (let part = set; part > 0; part = (part - 1) & set) {
      const rest = least[set & ~part] ?? Number.POSITIVE_INFINITY;
      if (rest + 1 < (least[set] ?? 0) && fits(width, height, part)) least[set] = rest + 1;
    }
  }
  return least[full] ?? Number.POSITIVE_INFINITY;
}

test('bound <= the optimum found by trying everything <= plan, and what is called proven is the optimum', () => {
  const side = fc.integer({ min: 1, max: 6 });
  fc.assert(
    fc.property(
      fc.integer({ min: 4, max: 7 }),
      fc.integer({ min: 4, max: 7 }),
      fc.array(fc.tuple(side, side), { minLength: 1, maxLength: 5 }),
      (width, height, blanks) => {
        const able = blanks.filter(([w, h]) => (w <= width && h <= height) || (h <= width && w <= height));
        const job = plain(
          width,
          height,
          able.map(([w, h]) => [w, h, 1] as const),
          true,
        );
        const optimum = able.length === 0 ? 0 : fewestByTrying(width, height, able);
        const plan = planCuts(job, { work: 150_000 });
        expect(lowerBound(taskOf(job, 1), Number.POSITIVE_INFINITY).value).toBeLessThanOrEqual(optimum);
        expect(plan.counts.sheets).toBeGreaterThanOrEqual(optimum);
        if (plan.proof.fewestSheets) expect(plan.counts.sheets).toBe(optimum);
      },
    ),
    { numRuns: 150 },
  );
});

test('the least cost takes the roomiest sheets first, and says when there are too few', () => {
  const { stocks } = taskOf(
    {
      ...plain(10, 10, [], true),
      papers: [10, 4].map((width, index) => ({
        id: `p${index}`,
        width: ticks(width),
        height: ticks(10),
        sheets: 2,
        directional: false,
        price: null,
        margins: NONE,
      })),
    },
    1,
  );
  expect(leastCost(stocks, [100, 40], 90)).toBe(1);
  expect(leastCost(stocks, [100, 40], 230)).toBe(3);
  expect(leastCost(stocks, [100, 40], 281)).toBe(Number.POSITIVE_INFINITY);
  expect(leastCost(stocks, [100, 40], 0)).toBe(0);
});
