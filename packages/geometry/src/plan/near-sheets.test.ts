import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import { type Task, taskOf } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { countsOf } from '../sheet/slice.js';
import { nearSheets } from './near-sheets.js';

/** Kinds of one copy each, or as `demands` says, from sheets 12 x 12. */
function taskFor(sizes: readonly (readonly [number, number, number])[]): Task {
  const none = ticks(0);
  const side = ticks(12);
  return taskOf(
    {
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
          width: side,
          height: side,
          sheets: null,
          directional: false,
          price: null,
          margins: { top: none, right: none, bottom: none, left: none },
        },
      ],
      blanks: sizes.map(([width, height, quantity], index) => ({
        id: `b${index}`,
        width: ticks(width),
        height: ticks(height),
        quantity,
        papers: null,
        turn: false,
      })),
    },
    1,
  );
}

function areasOf(task: Task): readonly number[] {
  return task.kinds.map(({ width, height }) => width * height);
}

test('sheets hold no kind too often, fit, differ, and waste no more than a plan of so many sheets may', () => {
  const size = fc.tuple(fc.integer({ min: 2, max: 9 }), fc.integer({ min: 2, max: 9 }), fc.integer({ min: 1, max: 3 }));
  let some = 0;
  fc.assert(
    fc.property(fc.array(size, { minLength: 2, maxLength: 6 }), (sizes) => {
      const task = taskFor(sizes);
      const worths = areasOf(task);
      const all = task.kinds.reduce((sum, { demand }, kind) => sum + demand * (worths[kind] as number), 0);
      const sheets = Math.ceil(all / 144);
      const found = nearSheets(task, worths, 144, sheets, 50, new Meter(1e6));
      some += found.length > 0 ? 1 : 0;
      for (const { slice, counts } of found) {
        expect(counts).toEqual(countsOf(slice, task.kinds.length));
        expect([slice.w <= 12, slice.h <= 12]).toEqual([true, true]);
        counts.forEach((count, kind) => {
          expect(count).toBeLessThanOrEqual(task.kinds[kind]?.demand ?? 0);
        });
        const worth = counts.reduce((sum, count, kind) => sum + count * (worths[kind] as number), 0);
        expect(worth).toBeGreaterThanOrEqual(144 - (sheets * 144 - all));
      }
      expect(new Set(found.map(({ counts }) => counts.join())).size).toBe(found.length);
    }),
    { numRuns: 200 },
  );
  expect(some).toBeGreaterThan(50);
});

test('the groups of a plan without waste are among them', () => {
  // Two sheets are filled whole: 12 x 7 over 12 x 5, and 6 x 12 beside 6 x 12.
  const task = taskFor([
    [12, 7, 1],
    [12, 5, 1],
    [6, 12, 2],
  ]);
  const found = nearSheets(task, areasOf(task), null, 2, 50, new Meter(1e6));
  const ids = (counts: readonly number[]): string =>
    counts
      .map((count, kind) => `${count} of ${task.kinds[kind]?.members[0]?.id}`)
      .sort()
      .join();
  expect(found.map(({ counts }) => ids(counts)).sort()).toEqual(
    ['0 of b0,0 of b1,2 of b2', '0 of b2,1 of b0,1 of b1'].sort(),
  );
});
