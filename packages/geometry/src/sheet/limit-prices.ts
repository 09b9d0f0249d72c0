import type { Task } from './kinds.js';
import type { Meter } from './meter.js';
import { tableOf } from './places.js';
import type { SheetSearch } from './sheet-search.js';
import type { SheetTable } from './sheet-table.js';
import { countsOf } from './slice.js';

/** Values are whole numbers of this part of the smallest difference between two values. */
export const FINE = 64;
const WEIGHINGS = 120;
const TABLE = { points: 3_100, steps: 16_000_000_000 };
const SUMS_PER_STEP = 50;
/** Share of the work that is left that pricing may take. */
const PRICING_SHARE = 0.3;

/** Prices that make kinds dearer of which a sheet without limits would take too many, and the bound they give. */
export interface Priced {
  readonly table: SheetTable;
  readonly prices: readonly number[];
  readonly bound: number;
}

/**
 * Lagrangian prices of the limits, by subgradient steps: for any prices p >= 0, the most value of a sheet without limits
 * where each kind is worth its value less its price, and the prices of all that the limits allow, is a bound. In whole
 * numbers of 1/64.
 */
export function priceLimits(search: SheetSearch, task: Task, values: readonly number[], meter: Meter): Priced | null {
  const table = tableOf(task, 0, () => true, TABLE);
  if (!table) return null;
  const demands = task.kinds.map(({ demand }) => demand);
  const until = meter.spent + PRICING_SHARE * (meter.budget - meter.spent);
  let best: Priced | null = null;
  let prices = values.map(() => 0);
  let stride = 1;
  for (let round = 0; round < WEIGHINGS; round += 1) {
    if (round > 0 && (meter.spent > until || (best && Math.floor(best.bound / FINE) <= search.value))) break;
    meter.spend(table.steps / SUMS_PER_STEP);
    const reduced = values.map((value, kind) => Math.max(0, value * FINE - (prices[kind] as number)));
    const bound = table.most(reduced) + prices.reduce((sum, price, kind) => sum + price * (demands[kind] as number), 0);
    if (!best || bound < best.bound) best = { table, prices, bound };
    else if (round % 6 === 5) stride *= 0.7;
    const slice = table.best();
    const counts = slice ? countsOf(slice, values.length) : values.map(() => 0);
    if (slice) search.offer(slice);
    const excess = counts.map((count, kind) => count - (demands[kind] as number));
    const moved = excess.map((over, kind) => ((prices[kind] as number) > 0 || over > 0 ? over : 0));
    const length = moved.reduce((sum, over) => sum + over * over, 0);
    if (length === 0) break;
    const step = (stride * (bound - search.value * FINE)) / length;
    prices = prices.map((price, kind) => Math.max(0, Math.round(price + step * (moved[kind] as number))));
  }
  return best;
}
