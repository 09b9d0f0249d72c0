import { type Kind, mayTurn, type Stock, type Task } from '../sheet/kinds.js';
import { tableOf } from '../sheet/places.js';
import type { Bound } from './bound.js';
import { leastCost } from './least-cost.js';

/** Kinds that are looked at one by one. */
const MOST_SINGLES = 12;

/** Stocks that some kind may be cut from. */
function usedStocks(task: Task): readonly Stock[] {
  const used = new Set(task.kinds.flatMap((kind) => kind.papers));
  return task.stocks.filter((_, index) => used.has(index));
}

function areaBound(task: Task, stocks: readonly Stock[]): Bound {
  const needed = task.kinds.reduce((sum, kind) => sum + kind.demand * kind.width * kind.height, 0);
  return {
    value: leastCost(
      stocks,
      stocks.map((stock) => stock.width * stock.height),
      needed,
    ),
    by: 'area',
  };
}

/** A dual-feasible function on whole numbers: `of(x)` over `whole`, so that sums over one bin never exceed `whole`. */
interface DualFeasible {
  readonly whole: number;
  readonly of: (x: number) => number;
}

/**
 * Functions of Fekete and Schepers (A general framework for bounds for higher-dimensional orthogonal packing problems,
 * 2004; arXiv cs/0402044): U of a threshold, and u of k = 1 to 4, on sizes in a bin of `length`.
 */
function dualFeasible(length: number, sizes: readonly number[]): readonly DualFeasible[] {
  const halves = [
    ...new Set(sizes.flatMap((size) => [size, length - size]).filter((size) => size > 0 && 2 * size <= length)),
  ];
  const thresholds = halves.sort((a, b) => a - b).slice(0, 16);
  return [
    { whole: length, of: (x) => x },
    ...thresholds.map(
      (least): DualFeasible => ({ whole: length, of: (x) => (x > length - least ? length : x >= least ? x : 0) }),
    ),
    ...[1, 2, 3, 4].map(
      (k): DualFeasible => ({
        whole: length * k,
        of: (x) => (((k + 1) * x) % length === 0 ? x * k : Math.floor(((k + 1) * x) / length) * length),
      }),
    ),
  ];
}

/** What the kinds come to under one pair of functions, in the unit of `whole`; exact in big integers where needed. */
function sheetsByProduct(task: Task, stock: Stock, across: DualFeasible, down: DualFeasible): number {
  const { kerf } = task.job.trimmer;
  const demand = task.kinds.reduce((sum, kind) => sum + kind.demand, 0);
  const exact = across.whole * down.whole * demand <= Number.MAX_SAFE_INTEGER;
  let sum = 0;
  let bigSum = 0n;
  for (const kind of task.kinds) {
    const [w, h] = [kind.width + kerf, kind.height + kerf];
    const plain = [across.of(w), down.of(h)] as const;
    const turned = mayTurn(kind, stock) ? ([across.of(h), down.of(w)] as const) : plain;
    if (exact) sum += kind.demand * Math.min(plain[0] * plain[1], turned[0] * turned[1]);
    else {
      const [a, b] = [BigInt(plain[0]) * BigInt(plain[1]), BigInt(turned[0]) * BigInt(turned[1])];
      bigSum += BigInt(kind.demand) * (a < b ? a : b);
    }
  }
  if (exact) return Math.ceil(sum / (across.whole * down.whole));
  const whole = BigInt(across.whole) * BigInt(down.whole);
  return Number((bigSum + whole - 1n) / whole);
}

/** Only for one sheet size: products of two dual-feasible functions, the lesser way round for what may be turned. */
function dualFeasibleBound(task: Task, stock: Stock): Bound {
  const { kerf } = task.job.trimmer;
  const sides = task.kinds.flatMap((kind) => [kind.width + kerf, kind.height + kerf]);
  const downs = dualFeasible(stock.height + kerf, sides);
  let best = 0;
  for (const across of dualFeasible(stock.width + kerf, sides)) {
    for (const down of downs) best = Math.max(best, sheetsByProduct(task, stock, across, down));
  }
  return { value: best <= stock.sheets ? best * stock.cost : Number.POSITIVE_INFINITY, by: 'dual-feasible functions' };
}

/**
 * For any values v >= 0 of the kinds, a plan needs at least sum(demand v) / (most value of one sheet) sheets: linear
 * programming duality in whole numbers, so nothing is rounded. `values` are whole numbers.
 */
function valueBound(task: Task, stocks: readonly Stock[], values: readonly number[], by: string): Bound | null {
  const holds: number[] = [];
  for (const stock of stocks) {
    const table = tableOf(task, task.stocks.indexOf(stock), (kind) => (values[kind] ?? 0) > 0);
    if (table === null) return null;
    holds.push(table.most(values));
  }
  return { value: leastCost(stocks, holds, neededOf(task, values)), by };
}

function neededOf(task: Task, values: readonly number[]): number {
  return task.kinds.reduce((sum, kind, index) => sum + kind.demand * (values[index] ?? 0), 0);
}

function large(kind: Kind, stock: Stock): boolean {
  return 2 * kind.width > stock.width || 2 * kind.height > stock.height;
}

/**
 * The best of the bounds on the sheets (or money) that any plan for `task` needs; Infinity when the sheets at hand cannot
 * do. `target` null gives the quick bounds only; a number adds those that need a table for one sheet, until it is reached.
 */
export function lowerBound(task: Task, target: number | null): Bound {
  const stocks = usedStocks(task);
  if (task.kinds.length === 0 || stocks.length === 0) return { value: 0, by: 'nothing to cut' };
  let best = areaBound(task, stocks);
  const consider = (make: () => Bound | null): void => {
    if (target !== null && best.value >= target) return;
    const bound = make();
    if (bound && bound.value > best.value) best = bound;
  };
  const [only, ...others] = stocks;
  const alone = only && others.length === 0 ? only : null;
  if (alone) consider(() => dualFeasibleBound(task, alone));
  if (target === null) return best;
  const areas = task.kinds.map((kind) => kind.width * kind.height);
  consider(() => valueBound(task, stocks, areas, 'most that one sheet holds'));
  for (const wanted of task.kinds.slice(0, MOST_SINGLES).keys()) {
    const single = task.kinds.map((_, index) => (index === wanted ? 1 : 0));
    consider(() => valueBound(task, stocks, single, 'most of one kind on a sheet'));
  }
  if (only) {
    const bulky = task.kinds.map((kind) => (large(kind, only) ? 1 : 0));
    consider(() => valueBound(task, stocks, bulky, 'most large blanks on a sheet'));
  }
  return best;
}
