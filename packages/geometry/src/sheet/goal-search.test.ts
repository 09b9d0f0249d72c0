import fc from 'fast-check';
import { expect, test } from 'vitest';
import { GoalSearch } from './goal-search.js';
import { Meter } from './meter.js';
import { Packing } from './packing.js';
import { seededRandom } from './random.js';
import { SheetTable, type Way } from './sheet-table.js';
import { countsOf, type Slice } from './slice.js';

interface Case {
  readonly width: number;
  readonly height: number;
  readonly kinds: readonly { readonly w: number; readonly h: number; readonly worth: number; readonly most: number }[];
  readonly least: number;
}

const kind = fc.record({
  w: fc.integer({ min: 1, max: 4 }),
  h: fc.integer({ min: 1, max: 4 }),
  worth: fc.integer({ min: -2, max: 12 }),
  most: fc.integer({ min: 1, max: 3 }),
});

const oneCase: fc.Arbitrary<Case> = fc.record({
  width: fc.integer({ min: 2, max: 6 }),
  height: fc.integer({ min: 2, max: 6 }),
  kinds: fc.array(kind, { minLength: 1, maxLength: 3 }),
  least: fc.integer({ min: 1, max: 40 }),
});

/** All numbers of the kinds that some cuts give out of a part, by trying every cut. */
function byTrying({ width, height, kinds }: Case): ReadonlySet<string> {
  const known = new Map<string, ReadonlySet<string>>();
  const all = (w: number, h: number): ReadonlySet<string> => {
    const before = known.get(`${w} ${h}`);
    if (before) return before;
    const sets = new Set([kinds.map(() => 0).join()]);
    kinds.forEach((one, index) => {
      if (one.w <= w && one.h <= h) sets.add(kinds.map((_, at) => (at === index ? 1 : 0)).join());
    });
    const join = (a: ReadonlySet<string>, b: ReadonlySet<string>): void => {
      for (const x of a)
        for (const y of b) {
          const other = y.split(',');
          const sum = x.split(',').map((count, at) => Number(count) + Number(other[at]));
          if (sum.every((count, at) => count <= (kinds[at]?.most ?? 0))) sets.add(sum.join());
        }
    };
    for (let at = 1; 2 * at <= w; at += 1) join(all(at, h), all(w - at, h));
    for (let at = 1; 2 * at <= h; at += 1) join(all(w, at), all(w, h - at));
    known.set(`${w} ${h}`, sets);
    return sets;
  };
  return all(width, height);
}

function worthOf(counts: readonly number[], { kinds }: Case): number {
  return counts.reduce((sum, count, at) => sum + count * (kinds[at]?.worth ?? 0), 0);
}

function search(
  one: Case,
  most: number,
  work = 1e6,
): { readonly sheets: readonly Slice[]; readonly complete: boolean } {
  const { width, height, kinds, least } = one;
  const ways = kinds.flatMap(({ w, h }, index): Way[] =>
    w <= width && h <= height ? [{ kind: index, turned: false, w, h }] : [],
  );
  const places = (length: number): readonly number[] => Array.from({ length }, (_, index) => index + 1);
  const table = new SheetTable(kinds.length, ways, places(width), places(height));
  table.most(kinds.map(({ worth }) => Math.max(0, worth)));
  const packing = new Packing(kinds.map((every) => every.most));
  return new GoalSearch(table, packing, seededRandom(1)).find(
    { worths: kinds.map(({ worth }) => worth), least, most, allOrNone: false },
    new Meter(work),
  );
}

test('with room for all fillings it finds all numbers of the kinds that reach the goal, and says so', () => {
  let reached = 0;
  fc.assert(
    fc.property(oneCase, (one) => {
      const { sheets, complete } = search(one, 100_000);
      expect(complete).toBe(true);
      const wanted = [...byTrying(one)].filter((key) => worthOf(key.split(',').map(Number), one) >= one.least);
      expect(sheets.map((slice) => countsOf(slice, one.kinds.length).join()).sort()).toEqual(wanted.sort());
      for (const { w, h } of sheets) expect(w <= one.width && h <= one.height).toBe(true);
      reached += wanted.length > 1 ? 1 : 0;
    }),
    { numRuns: 300, seed: 7 },
  );
  expect(reached).toBeGreaterThan(40);
});

test('with room for one filling of each part it finds less, and does not say that it is all', () => {
  let short = 0;
  fc.assert(
    fc.property(oneCase, (one) => {
      const [few, all] = [search(one, 1), search(one, 100_000)];
      const [best] = few.sheets;
      if (best) expect(worthOf(countsOf(best, one.kinds.length), one)).toBeGreaterThanOrEqual(one.least);
      if (few.complete) expect(few.sheets.length).toBe(all.sheets.length);
      else short += 1;
    }),
    { numRuns: 300, seed: 8 },
  );
  expect(short).toBeGreaterThan(40);
});

test('with room for a few fillings it is complete only when it found all', () => {
  let complete = 0;
  fc.assert(
    fc.property(oneCase, fc.integer({ min: 1, max: 12 }), (one, most) => {
      const [few, all] = [search(one, most), search(one, 100_000)];
      if (!few.complete) return;
      expect(few.sheets.length).toBe(all.sheets.length);
      complete += 1;
    }),
    { numRuns: 600, seed: 9 },
  );
  expect(complete).toBeGreaterThan(100);
});

test('without work it is not complete', () => {
  const one: Case = { width: 6, height: 6, kinds: [{ w: 2, h: 3, worth: 5, most: 3 }], least: 10 };
  expect(search(one, 100).sheets).toHaveLength(2);
  expect(search(one, 100).complete).toBe(true);
  expect(search(one, 100, 0).complete).toBe(false);
});
