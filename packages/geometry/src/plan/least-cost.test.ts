import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import type { Stock } from '../sheet/kinds.js';
import { leastCost } from './least-cost.js';

function stockOf(cost: number, sheets: number): Stock {
  const none = ticks(0);
  const margins = { top: none, right: none, bottom: none, left: none };
  const paper = { id: 'a', width: ticks(1), height: ticks(1), sheets, directional: false, price: cost, margins };
  return { paper, width: ticks(1), height: ticks(1), sheets, cost };
}

test('the least cost is that of the cheapest combination of whole sheets, by trying all of them', () => {
  const stock = fc.record({
    cost: fc.integer({ min: 0, max: 9 }),
    sheets: fc.integer({ min: 0, max: 4 }),
    hold: fc.integer({ min: 0, max: 12 }),
  });
  fc.assert(
    fc.property(fc.array(stock, { minLength: 1, maxLength: 3 }), fc.integer({ min: 0, max: 60 }), (stocks, needed) => {
      let least = Number.POSITIVE_INFINITY;
      const go = (at: number, room: number, cost: number): void => {
        const one = stocks[at];
        if (!one) {
          if (room >= needed) least = Math.min(least, cost);
          return;
        }
        for (let count = 0; count <= one.sheets; count += 1)
          go(at + 1, room + count * one.hold, cost + count * one.cost);
      };
      go(0, 0, 0);
      const found = leastCost(
        stocks.map(({ cost, sheets }) => stockOf(cost, sheets)),
        stocks.map(({ hold }) => hold),
        needed,
      );
      expect(found).toBe(least);
    }),
    { numRuns: 3_000 },
  );
});
