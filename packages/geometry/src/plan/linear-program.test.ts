import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CoveringProgram } from './linear-program.js';

const column = (rows: number) =>
  fc.record({
    gives: fc.array(fc.integer({ min: 0, max: 4 }), { minLength: rows, maxLength: rows }),
    cost: fc.integer({ min: 1, max: 9 }),
  });

/**
 * Duality of linear programming proves an answer without another solver: what is taken covers every row, no column is worth more
 * than it costs at the prices, and what is taken costs what the prices say all rows are worth.
 */
test('an answer and its prices prove each other', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 5 }).chain((rows) =>
        fc.record({
          wanted: fc.array(fc.integer({ min: 0, max: 12 }), { minLength: rows, maxLength: rows }),
          columns: fc.array(column(rows), { minLength: 1, maxLength: 12 }),
          limit: fc.option(fc.integer({ min: 1, max: 6 }), { nil: null }),
        }),
      ),
      ({ wanted, columns, limit }) => {
        const rows = limit === null ? wanted : [...wanted, -limit];
        const all = columns.map(({ gives, cost }) => ({ cost, gives: limit === null ? gives : [...gives, -1] }));
        const program = new CoveringProgram(rows, 100);
        const half = Math.ceil(all.length / 2);
        for (const { gives, cost } of all.slice(0, half)) program.add(gives, cost);
        program.solve();
        for (const { gives, cost } of all.slice(half)) program.add(gives, cost);
        program.solve();
        const prices = program.prices();
        const taken = program.taken();
        for (const price of prices) expect(price).toBeGreaterThanOrEqual(-1e-7);
        for (const price of prices) expect(price).toBeLessThanOrEqual(100 + 1e-7);
        for (const { gives, cost } of all)
          expect(gives.reduce((sum, give, row) => sum + give * (prices[row] ?? 0), 0)).toBeLessThanOrEqual(cost + 1e-6);
        const given = rows.map((_, row) =>
          [...taken].reduce((sum, [at, amount]) => sum + amount * (all[at]?.gives[row] ?? 0), 0),
        );
        const short = rows.map((want, row) => Math.max(0, want - (given[row] ?? 0)));
        const cost =
          [...taken].reduce((sum, [at, amount]) => sum + amount * (all[at]?.cost ?? 0), 0) +
          100 * short.reduce((sum, amount) => sum + amount, 0);
        expect(cost).toBeCloseTo(
          rows.reduce((sum, want, row) => sum + want * (prices[row] ?? 0), 0),
          5,
        );
      },
    ),
    { numRuns: 1_000 },
  );
});

test('a cutting stock plan of old: three widths from a roll of 9', () => {
  // Sheets (2,0,0), (0,2,1), (0,0,3), (1,1,0) for 20, 10 and 20 pieces of 4, 3 and 2 1/2; by hand: 10 + 5 + 5 = 20.
  const program = new CoveringProgram([20, 10, 20], 100);
  for (const gives of [
    [2, 0, 0],
    [0, 2, 1],
    [0, 0, 3],
    [1, 1, 0],
  ])
    program.add(gives, 1);
  program.solve();
  expect([...program.taken().values()].reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(20, 9);
});
