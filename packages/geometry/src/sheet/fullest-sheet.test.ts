import fc from 'fast-check';
import { expect, test } from 'vitest';
import { eachLeaf } from '../cut/cut-tree.js';
import { ticks } from '../length/length.js';
import { rect } from '../rect/rect.js';
import { fullestSheet, type ValuedBlank } from './fullest-sheet.js';

/** The most value by trying every cut and every number of each blank. */
function byTrying(width: number, height: number, blanks: readonly ValuedBlank[]): number {
  const known = new Map<string, Map<string, readonly number[]>>();
  const all = (w: number, h: number): Map<string, readonly number[]> => {
    const key = `${w} ${h}`;
    const before = known.get(key);
    if (before) return before;
    const sets = new Map<string, readonly number[]>([[blanks.map(() => 0).join(), blanks.map(() => 0)]]);
    blanks.forEach((blank, index) => {
      if (
        (blank.most ?? 9) > 0 &&
        ((blank.width <= w && blank.height <= h) || (blank.turn && blank.height <= w && blank.width <= h))
      ) {
        const one = blanks.map((_, at) => (at === index ? 1 : 0));
        sets.set(one.join(), one);
      }
    });
    const join = (a: Map<string, readonly number[]>, b: Map<string, readonly number[]>): void => {
      for (const x of a.values())
        for (const y of b.values()) {
          const sum = x.map((count, at) => count + (y[at] ?? 0));
          if (sum.every((count, at) => count <= (blanks[at]?.most ?? Number.POSITIVE_INFINITY)))
            sets.set(sum.join(), sum);
        }
    };
    for (let at = 1; 2 * at <= w; at += 1) join(all(at, h), all(w - at, h));
    for (let at = 1; 2 * at <= h; at += 1) join(all(w, at), all(w, h - at));
    known.set(key, sets);
    return sets;
  };
  return Math.max(
    ...[...all(width, height).values()].map((counts) =>
      counts.reduce((sum, count, at) => sum + count * (blanks[at]?.value ?? 0), 0),
    ),
  );
}

const blank = fc.record({
  width: fc.integer({ min: 1, max: 5 }).map(ticks),
  height: fc.integer({ min: 1, max: 5 }).map(ticks),
  value: fc.integer({ min: 1, max: 20 }),
  most: fc.option(fc.integer({ min: 0, max: 3 }), { nil: null, freq: 3 }),
  turn: fc.boolean(),
});

test('the fullest sheet is worth what trying everything finds, and is proven', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 6 }).map(ticks),
      fc.integer({ min: 2, max: 6 }).map(ticks),
      fc.array(blank, { minLength: 1, maxLength: 3 }),
      (width, height, blanks) => {
        const full = fullestSheet(width, height, blanks);
        expect(full.value).toBe(byTrying(width, height, blanks));
        expect([full.bound, full.proven]).toEqual([full.value, true]);
        const counts = blanks.map(() => 0);
        if (full.tree)
          eachLeaf(full.tree, rect(ticks(0), ticks(0), width, height), ticks(0), (leaf, box) => {
            if (leaf.is !== 'blank') return;
            const index = Number(leaf.blank);
            const { width: w, height: h, turn } = blanks[index] as ValuedBlank;
            expect(leaf.turned && !turn).toBe(false);
            expect([box.width, box.height]).toEqual(leaf.turned ? [h, w] : [w, h]);
            counts[index] = (counts[index] ?? 0) + 1;
          });
        expect(counts.reduce((sum, count, at) => sum + count * (blanks[at]?.value ?? 0), 0)).toBe(full.value);
        expect(counts.every((count, at) => count <= (blanks[at]?.most ?? count))).toBe(true);
      },
    ),
    { numRuns: 120 },
  );
});

test('with hardly any work the bound stays above the value', () => {
  const blanks: readonly ValuedBlank[] = [7, 11, 13, 5].map((size, index) => ({
    width: ticks(size),
    height: ticks(size + index),
    value: size * size,
    most: 2,
    turn: true,
  }));
  const little = fullestSheet(ticks(40), ticks(37), blanks, 1);
  const much = fullestSheet(ticks(40), ticks(37), blanks);
  expect(much.proven).toBe(true);
  expect(little.value).toBeLessThanOrEqual(much.value);
  expect(little.bound).toBeGreaterThanOrEqual(much.value);
});
