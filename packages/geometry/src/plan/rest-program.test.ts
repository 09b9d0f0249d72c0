import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import type { Task } from '../sheet/kinds.js';
import { cutSlice, leafSlice } from '../sheet/slice.js';
import { type Column, RestProgram } from './rest-program.js';

const NONE = ticks(0);

/** Sheets of a side of 100 and kinds of a side of 10; only numbers and costs matter here. */
function taskOf(demands: readonly number[], costs: readonly number[]): Task {
  const margins = { top: NONE, right: NONE, bottom: NONE, left: NONE };
  const side = ticks(100);
  const stocks = costs.map((cost, index) => ({
    paper: { id: `${index}`, width: side, height: side, sheets: null, directional: false, price: null, margins },
    width: side,
    height: side,
    sheets: Number.POSITIVE_INFINITY,
    cost,
  }));
  const kinds = demands.map((demand, kind) => ({
    width: ticks(10),
    height: ticks(10 + kind),
    turn: false,
    papers: costs.map((_, index) => index),
    demand,
    members: [],
  }));
  const trimmer = {
    bladeLength: null,
    narrowestStrip: NONE,
    thinnestTrim: NONE,
    kerf: NONE,
    rulerStep: null,
    stoppedCuts: false,
  };
  return { job: { trimmer, papers: [], blanks: [] }, kinds, stocks };
}

function columnOf(stock: number, counts: readonly number[]): Column {
  const leaves = counts.flatMap((count, kind) =>
    Array.from({ length: count }, () => leafSlice(kind, false, 10, 10 + kind)),
  );
  return { stock, slice: cutSlice(true, leaves), counts };
}

test('a column counts only with what is still missing', () => {
  const task = taskOf([3, 3], [1]);
  const program = new RestProgram(task, [1, 3], [Number.POSITIVE_INFINITY]);
  expect(program.add(columnOf(0, [3, 0]))).toBe(true);
  program.solve();
  // Three of a kind of which one is missing are one sheet, not a third of one; the other kind is dear as long as nothing gives it.
  expect(program.prices()[0]).toBeCloseTo(1);
  expect(program.add(columnOf(0, [0, 2]))).toBe(true);
  program.solve();
  expect(program.cost()).toBeCloseTo(1 + 1.5);
});

test('a column that gives nothing, or the same as another, is not taken in', () => {
  const program = new RestProgram(taskOf([3, 3], [1, 2]), [2, 0], [9, 9]);
  expect(program.add(columnOf(0, [0, 4]))).toBe(false);
  expect(program.add(columnOf(0, [2, 1]))).toBe(true);
  expect(program.add(columnOf(0, [3, 0]))).toBe(false);
  expect(program.add(columnOf(1, [3, 0]))).toBe(true);
});

test('the sheets that are left bound the plan, and have a price then', () => {
  const program = new RestProgram(taskOf([4], [1, 5]), [4], [1, 9]);
  program.add(columnOf(0, [2]));
  program.add(columnOf(1, [2]));
  program.solve();
  expect(program.cost()).toBeCloseTo(6);
  expect(program.scarcity()).toEqual([expect.closeTo(4), 0]);
  expect(program.taken().map(({ column, amount }) => [column.stock, amount])).toEqual(
    expect.arrayContaining([
      [0, expect.closeTo(1)],
      [1, expect.closeTo(1)],
    ]),
  );
});

test('what is taken is near, and nothing that is near costs more than its worth by more', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: 1, max: 6 }), { minLength: 2, maxLength: 4 }).chain((left) =>
        fc.record({
          left: fc.constant(left),
          gives: fc.array(
            fc.array(fc.integer({ min: 0, max: 3 }), { minLength: left.length, maxLength: left.length }),
            {
              minLength: 1,
              maxLength: 10,
            },
          ),
        }),
      ),
      fc.double({ min: 0.05, max: 0.9, noNaN: true }),
      ({ left, gives }, most) => {
        const program = new RestProgram(taskOf(left, [1]), left, [Number.POSITIVE_INFINITY]);
        for (const counts of gives) if (counts.some((count) => count > 0)) program.add(columnOf(0, counts));
        program.solve();
        const prices = program.prices();
        const worth = ({ counts }: Column): number =>
          counts.reduce((sum, count, at) => sum + Math.min(count, left[at] ?? 0) * (prices[at] ?? 0), 0);
        const near = program.near(most);
        for (const column of near) expect(1 - worth(column)).toBeLessThanOrEqual(most + 1e-6);
        for (const { column } of program.taken()) expect(near).toContain(column);
      },
    ),
    { numRuns: 200, seed: 3 },
  );
});
