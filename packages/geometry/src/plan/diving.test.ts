import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import { type Task, taskOf } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { seededRandom } from '../sheet/random.js';
import { countsOf } from '../sheet/slice.js';
import { Diving } from './diving.js';
import type { SliceSheet } from './rounding.js';

const NONE = ticks(0);

interface Blank {
  readonly w: number;
  readonly h: number;
  readonly count: number;
}

interface Paper {
  readonly side: number;
  readonly sheets: number | null;
  readonly price: number;
}

function taskFor(papers: readonly Paper[], blanks: readonly Blank[]): Task {
  const margins = { top: NONE, right: NONE, bottom: NONE, left: NONE };
  return taskOf(
    {
      trimmer: {
        bladeLength: null,
        narrowestStrip: NONE,
        thinnestTrim: NONE,
        kerf: NONE,
        rulerStep: null,
        stoppedCuts: false,
      },
      papers: papers.map(({ side, sheets, price }, index) => ({
        id: `paper${index}`,
        width: ticks(side),
        height: ticks(side),
        sheets,
        directional: false,
        price,
        margins,
      })),
      blanks: blanks.map(({ w, h, count }, index) => ({
        id: `blank${index}`,
        width: ticks(w),
        height: ticks(h),
        quantity: count,
        papers: null,
        turn: false,
      })),
    },
    1,
  );
}

function dived(task: Task, limit: number, work = 1e6): readonly SliceSheet[] | null {
  const diving = new Diving(task, seededRandom(5), new Meter(work));
  for (let dive = 0; dive < 4; dive += 1) {
    const run = diving.dive(limit);
    let next = run.next();
    while (!next.done) next = run.next();
    if (next.value) return next.value;
  }
  return null;
}

/** Blanks cut at random out of two whole squares of 40, `copies` times over: twice so many sheets are enough. */
function cutUp(copies: number, random: () => number): readonly Blank[] {
  const blanks: Blank[] = [];
  const cut = (w: number, h: number, depth: number): void => {
    const vertical = w > h;
    const across = vertical ? w : h;
    if (depth === 0 || across < 12) {
      blanks.push({ w, h, count: copies });
      return;
    }
    const at = 4 + Math.floor(random() * (across - 8));
    cut(vertical ? at : w, vertical ? h : at, depth - 1);
    cut(vertical ? w - at : w, vertical ? h : h - at, depth - 1);
  };
  for (let sheet = 0; sheet < 2; sheet += 1) cut(40, 40, 2 + Math.floor(random() * 2));
  return blanks;
}

function expectWhole(task: Task, sheets: readonly SliceSheet[], limit: number): void {
  const made = task.kinds.map(() => 0);
  const used = task.stocks.map(() => 0);
  for (const { stock, slice, copies } of sheets) {
    const { width, height } = task.stocks[stock] as Task['stocks'][number];
    expect(slice.w <= width && slice.h <= height).toBe(true);
    used[stock] = (used[stock] ?? 0) + copies;
    countsOf(slice, made.length).forEach((count, kind) => {
      made[kind] = (made[kind] ?? 0) + copies * count;
    });
  }
  expect(made).toEqual(task.kinds.map(({ demand }) => demand));
  used.forEach((count, stock) => {
    expect(count).toBeLessThanOrEqual(task.stocks[stock]?.sheets ?? 0);
  });
  const cost = used.reduce((sum, count, stock) => sum + count * (task.stocks[stock]?.cost ?? 0), 0);
  expect(cost).toBeLessThanOrEqual(limit + 1e-6);
}

test('sheets that were cut up are put together again, mostly', () => {
  let found = 0;
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
      // A little larger than what was cut up: the sheets are full to nine tenths.
      const task = taskFor([{ side: 42, sheets: null, price: 1 }], cutUp(6, seededRandom(seed)));
      const plan = dived(task, 12);
      if (!plan) return;
      expectWhole(task, plan, 12);
      found += 1;
    }),
    { numRuns: 20, seed: 2 },
  );
  expect(found).toBeGreaterThan(11);
});

test('what cannot be is not found, whatever the work', () => {
  // Of squares larger than half a sheet one fits on each.
  const task = taskFor([{ side: 10, sheets: null, price: 1 }], [{ w: 6, h: 6, count: 5 }]);
  expect(dived(task, 4)).toBeNull();
  expectWhole(task, dived(task, 5) ?? [], 5);
});

test('dear sheets are taken only where the cheap ones run out', () => {
  const papers = [
    { side: 10, sheets: 2, price: 1 },
    { side: 12, sheets: null, price: 4 },
  ];
  const task = taskFor(papers, [
    { w: 6, h: 6, count: 2 },
    { w: 11, h: 3, count: 4 },
  ]);
  // Four strips fill a large sheet; the squares go on the two small ones.
  const plan = dived(task, 6) ?? [];
  expectWhole(task, plan, 6);
  expect(dived(task, 5)).toBeNull();
});

test('without work there is no plan', () => {
  const task = taskFor([{ side: 40, sheets: null, price: 1 }], cutUp(3, seededRandom(3)));
  expect(dived(task, 6, 0)).toBeNull();
});
