import type { Stock } from '../sheet/kinds.js';

/** Combinations of numbers of sheets that are tried one by one before a linear bound is taken instead. */
const MOST_COMBINATIONS = 20_000;

/** Numbers of sheets of each stock, the stocks in `order`, that hold what is needed at the least cost. */
function leastCombination(
  stocks: readonly Stock[],
  holds: readonly number[],
  order: readonly number[],
  needed: number,
): number | null {
  let best = Number.POSITIVE_INFINITY;
  let tried = 0;
  const go = (at: number, rest: number, cost: number): void => {
    tried += 1;
    if (tried > MOST_COMBINATIONS || cost >= best) return;
    if (rest <= 0) {
      best = cost;
      return;
    }
    const index = order[at];
    if (index === undefined) return;
    const [stock, hold] = [stocks[index] as Stock, holds[index] as number];
    const most = Math.min(stock.sheets, Math.ceil(rest / hold));
    // The last stock has to do all that is left.
    const least = at === order.length - 1 ? most : 0;
    for (let count = most; count >= least && tried <= MOST_COMBINATIONS; count -= 1)
      go(at + 1, rest - count * hold, cost + count * stock.cost);
  };
  go(0, needed, 0);
  return tried > MOST_COMBINATIONS ? null : best;
}

/**
 * The least cost of sheets that together hold `needed`, when one sheet of stock j holds at most `holds[j]`. For equal
 * costs whole sheets, the roomiest first; otherwise the cheapest combination of whole sheets, or where there are too
 * many the cheapest room first and the last sheet in part. Infinity when all sheets there are hold less.
 */
export function leastCost(stocks: readonly Stock[], holds: readonly number[], needed: number): number {
  if (needed <= 0) return 0;
  const order = stocks.map((_, index) => index).filter((index) => (holds[index] ?? 0) > 0);
  const [first] = stocks;
  const equal = stocks.every((stock) => stock.cost === first?.cost);
  order.sort((a, b) => {
    const [left, right] = [holds[a] ?? 0, holds[b] ?? 0];
    return equal ? right - left : (stocks[a]?.cost ?? 0) / left - (stocks[b]?.cost ?? 0) / right;
  });
  // Sums beyond 2^53 may have been rounded up on the way here; a proof must not rest on that.
  const exact = needed <= Number.MAX_SAFE_INTEGER ? needed : needed * (1 - 2 ** -40);
  const whole = equal ? null : leastCombination(stocks, holds, order, exact);
  if (whole !== null) return whole;
  let rest = exact;
  let cost = 0;
  for (const index of order) {
    const hold = holds[index] ?? 0;
    const stock = stocks[index] as Stock;
    const wanted = equal ? Math.ceil(rest / hold) : rest / hold;
    if (wanted <= stock.sheets) return cost + wanted * stock.cost;
    cost += stock.sheets * stock.cost;
    rest -= stock.sheets * hold;
  }
  return Number.POSITIVE_INFINITY;
}
