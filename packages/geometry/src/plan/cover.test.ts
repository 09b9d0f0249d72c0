import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import type { Task } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { countsOf, cutSlice, leafSlice } from '../sheet/slice.js';
import { Cover } from './cover.js';
import type { Column } from './rest-program.js';
import type { SliceSheet } from './rounding.js';

const NONE = ticks(0);

/** Kinds of these demands, and sheets of one size of which there are so many of each stock; only numbers matter here. */
function taskOf(demands: readonly number[], sheets: readonly number[]): Task {
  const margins = { top: NONE, right: NONE, bottom: NONE, left: NONE };
  const side = ticks(100);
  return {
    job: {
      trimmer: {
        bladeLength: null,
        narrowestStrip: NONE,
        thinnestTrim: NONE,
        kerf: NONE,
        rulerStep: null,
        stoppedCuts: false,
      },
      papers: [],
      blanks: [],
    },
    kinds: demands.map((demand) => ({
      width: ticks(10),
      height: ticks(10),
      turn: false,
      papers: sheets.map((_, stock) => stock),
      demand,
      members: [],
    })),
    stocks: sheets.map((count, stock) => ({
      paper: { id: `${stock}`, width: side, height: side, sheets: count, directional: false, price: null, margins },
      width: side,
      height: side,
      sheets: count,
      cost: 1,
    })),
  };
}

function columnOf(stock: number, counts: readonly number[]): Column {
  const leaves = counts.flatMap((count, kind) => Array.from({ length: count }, () => leafSlice(kind, false, 10, 10)));
  return { stock, slice: cutSlice(true, leaves), counts };
}

/** Fewest sheets by trying, sheet after sheet, every column on every rest; Infinity when the columns cannot do. */
function fewest(columns: readonly Column[], demands: readonly number[], sheets: readonly number[]): number {
  const known = new Map<string, number>();
  const of = (left: readonly number[], stocks: readonly number[]): number => {
    if (left.every((count) => count === 0)) return 0;
    const key = `${left.join()} ${stocks.join()}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = Number.POSITIVE_INFINITY;
    for (const { stock, counts } of columns) {
      if (stocks[stock] === 0) continue;
      const rest = left.map((count, kind) => Math.max(0, count - (counts[kind] ?? 0)));
      if (rest.every((count, kind) => count === left[kind])) continue;
      const fewer = stocks.map((count, at) => (at === stock ? count - 1 : count));
      best = Math.min(best, 1 + of(rest, fewer));
    }
    known.set(key, best);
    return best;
  };
  return of(demands, sheets);
}

function expectMade(task: Task, found: readonly SliceSheet[], sheets: number): void {
  expect(found.length).toBeLessThanOrEqual(sheets);
  const counts = task.kinds.map(() => 0);
  const used = task.stocks.map(() => 0);
  for (const { stock, slice, copies } of found) {
    expect(copies).toBe(1);
    used[stock] = (used[stock] ?? 0) + 1;
    countsOf(slice, counts.length).forEach((count, kind) => {
      counts[kind] = (counts[kind] ?? 0) + count;
    });
  }
  expect(counts).toEqual(task.kinds.map(({ demand }) => demand));
  used.forEach((count, stock) => {
    expect(count).toBeLessThanOrEqual(task.stocks[stock]?.sheets ?? 0);
  });
}

const cases = fc
  .record({
    demands: fc.array(fc.integer({ min: 1, max: 4 }), { minLength: 1, maxLength: 4 }),
    // One stock without limit, or two of which there are few.
    sheets: fc.oneof(
      fc.constant([Number.POSITIVE_INFINITY]),
      fc.tuple(fc.integer({ min: 0, max: 3 }), fc.integer({ min: 0, max: 3 })),
    ),
    holds: fc.array(fc.tuple(fc.boolean(), fc.array(fc.integer({ min: 0, max: 3 }), { minLength: 4, maxLength: 4 })), {
      minLength: 1,
      maxLength: 7,
    }),
    most: fc.integer({ min: 1, max: 5 }),
  })
  .map(({ demands, sheets, holds, most }) => ({
    demands,
    sheets,
    most,
    columns: holds
      .map(([second, counts]) => ({
        stock: second && sheets.length > 1 ? 1 : 0,
        counts: counts.slice(0, demands.length),
      }))
      .filter(({ counts }) => counts.some((count) => count > 0))
      .map(({ stock, counts }) => columnOf(stock, counts)),
  }));

test('a plan of given sheets is found exactly when there is one', () => {
  const said = { impossible: 0, found: 0, unknown: 0 };
  fc.assert(
    fc.property(cases, ({ demands, sheets, columns, most }) => {
      const task = taskOf(demands, sheets);
      const covering = new Cover(task, new Meter(1e7)).find(columns, most);
      said[covering.is] += 1;
      expect(covering.is).toBe(fewest(columns, demands, sheets) <= most ? 'found' : 'impossible');
      if (covering.is === 'found') expectMade(task, covering.sheets, most);
    }),
    { numRuns: 600 },
  );
  expect(said.found).toBeGreaterThan(50);
  expect(said.impossible).toBeGreaterThan(50);
});

test('what is guessed is a plan; nothing is guessed where there is none, and seldom nothing where there is one', () => {
  const said = { there: 0, guessed: 0 };
  fc.assert(
    fc.property(cases, ({ demands, sheets, columns, most }) => {
      const task = taskOf(demands, sheets);
      const guessed = new Cover(task, new Meter(1e7)).guess(columns, most);
      const there = fewest(columns, demands, sheets) <= most;
      if (there) said.there += 1;
      if (!guessed) return;
      said.guessed += 1;
      expect(there).toBe(true);
      expectMade(task, guessed, most);
    }),
    { numRuns: 600 },
  );
  expect(said.there).toBeGreaterThan(50);
  expect(said.guessed).toBeGreaterThan(0.9 * said.there);
});

/** Nine kinds, one of each, that three sheets of three give whole, hidden among so many other groups of three. */
const hidden = fc
  .record({
    order: fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7, 8], { minLength: 9, maxLength: 9 }),
    others: fc.array(fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6, 7, 8], { minLength: 3, maxLength: 3 }), {
      minLength: 8,
      maxLength: 20,
    }),
    at: fc.nat(),
  })
  .map(({ order, others, at }) => {
    const planted = [order.slice(0, 3), order.slice(3, 6), order.slice(6)];
    const place = at % (others.length + 1);
    const groups = [...others.slice(0, place), ...planted, ...others.slice(place)];
    return groups.map((group) =>
      columnOf(
        0,
        order.map((_, kind) => (group.includes(kind) ? 1 : 0)),
      ),
    );
  });

test('a plan hidden among many sheets is found by trying, and mostly by guessing', () => {
  const task = taskOf(new Array<number>(9).fill(1), [Number.POSITIVE_INFINITY]);
  let guesses = 0;
  fc.assert(
    fc.property(hidden, (columns) => {
      const covering = new Cover(task, new Meter(1e7)).find(columns, 3);
      if (covering.is !== 'found') throw new Error(`A plan of three sheets is said to be ${covering.is}.`);
      expectMade(task, covering.sheets, 3);
      expect(new Cover(task, new Meter(1e7)).find(columns, 2).is).toBe('impossible');
      if (new Cover(task, new Meter(1e7)).guess(columns, 3)) guesses += 1;
    }),
    { numRuns: 300 },
  );
  expect(guesses).toBeGreaterThan(290);
});

test('a plan that the linear one is no way to is found all the same, and where whole sheets do not do it is said', () => {
  // Every two of three kinds on a sheet: linearly one and a half sheets do, whole ones do with two.
  const task = taskOf([1, 1, 1], [Number.POSITIVE_INFINITY]);
  const columns = [columnOf(0, [1, 1, 0]), columnOf(0, [0, 1, 1]), columnOf(0, [1, 0, 1])];
  expect(new Cover(task, new Meter(1e6)).find(columns, 1).is).toBe('impossible');
  expect(new Cover(task, new Meter(1e6)).find(columns, 2).is).toBe('found');
  // Five of each in pairs need 7.5 sheets linearly, eight in whole; that seven are too few the values show at once.
  const more = taskOf([5, 5, 5], [Number.POSITIVE_INFINITY]);
  expect(new Cover(more, new Meter(1e6)).find(columns, 7).is).toBe('impossible');
  expect(new Cover(more, new Meter(1e6)).find(columns, 8).is).toBe('found');
});

test('without the work for it nothing is said', () => {
  const task = taskOf([2, 2], [Number.POSITIVE_INFINITY]);
  const columns = [columnOf(0, [1, 1])];
  expect(new Cover(task, new Meter(0)).find(columns, 2).is).toBe('unknown');
  expect(new Cover(task, new Meter(0)).guess(columns, 2)).toBeNull();
});
