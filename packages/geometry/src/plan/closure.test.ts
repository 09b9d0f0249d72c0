import fc from 'fast-check';
import { expect, test } from 'vitest';
import type { CutJob } from '../cut/job.js';
import { ticks } from '../length/length.js';
import { taskOf } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { countsOf } from '../sheet/slice.js';
import { closeGap } from './closure.js';

interface Tiny {
  readonly width: number;
  readonly height: number;
  readonly turn: boolean;
  readonly blanks: readonly (readonly [number, number])[];
  readonly values: readonly number[];
}

const tiny: fc.Arbitrary<Tiny> = fc.record({
  width: fc.integer({ min: 3, max: 7 }),
  height: fc.integer({ min: 3, max: 7 }),
  turn: fc.boolean(),
  blanks: fc.array(fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 })), {
    minLength: 1,
    maxLength: 5,
  }),
  values: fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 5, maxLength: 5 }),
});

function jobOf({ width, height, turn, blanks }: Tiny): CutJob {
  const none = ticks(0);
  return {
    trimmer: {
      bladeLength: null,
      narrowestStrip: none,
      thinnestTrim: none,
      kerf: none,
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
        margins: { top: none, right: none, bottom: none, left: none },
      },
    ],
    blanks: blanks.map(([w, h], index) => ({
      id: `b${index}`,
      width: ticks(w),
      height: ticks(h),
      quantity: 1,
      papers: null,
      turn,
    })),
  };
}

/** Fewest sheets by trying every cut of every set of blanks; Infinity when one of them does not fit. */
function fewest({ width, height, turn, blanks }: Tiny): number {
  const known = new Map<string, boolean>();
  const gives = (w: number, h: number, set: number): boolean => {
    if (set === 0) return true;
    const key = `${w} ${h} ${set}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const members = blanks.filter((_, index) => set & (1 << index));
    const [only] = members;
    let found =
      members.length === 1 &&
      only !== undefined &&
      ((only[0] <= w && only[1] <= h) || (turn && only[1] <= w && only[0] <= h));
    for (let part = (set - 1) & set; part > 0 && !found; part = (part - 1) & set) {
      for (let at = 1; at < w && !found; at += 1) found = gives(at, h, part) && gives(w - at, h, set & ~part);
      for (let at = 1; at < h && !found; at += 1) found = gives(w, at, part) && gives(w, h - at, set & ~part);
    }
    known.set(key, found);
    return found;
  };
  const least = new Map<number, number>([[0, 0]]);
  const of = (set: number): number => {
    const before = least.get(set);
    if (before !== undefined) return before;
    let best = Number.POSITIVE_INFINITY;
    const first = set & -set;
    for (let part = set; part > 0; part = (part - 1) & set)
      if (part & first && gives(width, height, part)) best = Math.min(best, 1 + of(set & ~part));
    least.set(set, best);
    return best;
  };
  return of((1 << blanks.length) - 1);
}

test('trying every plan of so many sheets finds one exactly when there is one, whatever the values', () => {
  const said = { impossible: 0, found: 0, unknown: 0 };
  fc.assert(
    fc.property(tiny, fc.integer({ min: 1, max: 3 }), (one, sheets) => {
      const least = fewest(one);
      // Blanks that fit no sheet are sorted out before.
      fc.pre(least < Number.POSITIVE_INFINITY);
      const task = taskOf(jobOf(one), 1);
      const values = task.kinds.map((_, kind) => one.values[kind] ?? 0);
      const closing = closeGap(task, values, sheets, new Meter(1e7));
      said[closing.is] += 1;
      expect(closing.is).toBe(least <= sheets ? 'found' : 'impossible');
      if (closing.is !== 'found') return;
      expect(closing.sheets.length).toBeLessThanOrEqual(sheets);
      const counts = task.kinds.map(() => 0);
      for (const { slice } of closing.sheets) {
        expect([slice.w <= one.width, slice.h <= one.height]).toEqual([true, true]);
        countsOf(slice, counts.length).forEach((count, kind) => {
          counts[kind] = (counts[kind] ?? 0) + count;
        });
      }
      expect(counts).toEqual(task.kinds.map(({ demand }) => demand));
    }),
    { numRuns: 500 },
  );
  expect(said.impossible).toBeGreaterThan(50);
  expect(said.found).toBeGreaterThan(50);
});

test('without the work for it nothing is said', () => {
  const task = taskOf(
    jobOf({
      width: 7,
      height: 7,
      turn: true,
      blanks: [
        [2, 3],
        [3, 4],
        [1, 5],
        [2, 2],
      ],
      values: [],
    }),
    1,
  );
  expect(
    closeGap(
      task,
      task.kinds.map(({ width, height }) => width * height),
      1,
      new Meter(0),
    ).is,
  ).toBe('unknown');
});
