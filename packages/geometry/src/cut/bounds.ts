import { type Kind, mayTurn, type Stock, type Task } from './kinds.js';
import { cutPoints, mergeSizes } from './points.js';

/** The least that any plan needs, in sheets (or money), and the argument that shows it. */
export interface Bound {
  readonly value: number;
  readonly by: string;
}

/** Most places for cuts on a side that the value bound's table is made for. */
const MOST_POINTS = 260;
/** Most steps that the table may take. */
const MOST_STEPS = 4_000_000;

/**
 * The least cost of sheets that together hold `needed`, when one sheet of stock j holds at most `holds[j]`: for equal
 * costs whole sheets, the roomiest first; otherwise the cheapest room first, the last sheet in part (a linear bound).
 * Infinity when all sheets there are hold less.
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
  let rest = needed <= Number.MAX_SAFE_INTEGER ? needed : needed * (1 - 2 ** -40);
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

/** Index of the largest point not beyond `at`, for every point's complement; -1 when there is none. */
function floorIndex(points: readonly number[], at: number): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle] ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/**
 * The most value that one sheet can hold when every kind may be used without limit: exact dynamic programming over
 * normal patterns (Gilmore and Gomory 1965; Cintra, Miyazawa, Wakabayashi and Xavier 2008), ignoring the trimmer's rules,
 * so it is an upper bound for any guillotine plan under them. Null when the table would be too large.
 */
export function mostValue(task: Task, stockIndex: number, values: readonly number[]): number | null {
  const stock = task.stocks[stockIndex] as Stock;
  const { kerf } = task.job.trimmer;
  const ways = task.kinds.flatMap((kind, index) => {
    const value = values[index] ?? 0;
    if (value === 0 || !kind.papers.includes(stockIndex)) return [];
    const plain = { w: kind.width + kerf, h: kind.height + kerf, value };
    return mayTurn(kind, stock) ? [plain, { w: plain.h, h: plain.w, value }] : [plain];
  });
  const [width, height] = [stock.width + kerf, stock.height + kerf];
  const endless = (side: 'w' | 'h') =>
    mergeSizes(ways.map((way) => ({ size: way[side], most: Number.POSITIVE_INFINITY })));
  const xs = cutPoints(width, endless('w'), 0, MOST_POINTS);
  const ys = cutPoints(height, endless('h'), 0, MOST_POINTS);
  if (!xs || !ys || (xs.length * ys.length * (xs.length + ys.length)) / 4 > MOST_STEPS) return null;
  const rows = ys.length;
  const table = new Float64Array(xs.length * rows);
  const restX = (x: number, i: number): number => floorIndex(xs, (xs[x] ?? 0) - (xs[i] ?? 0));
  for (let x = 0; x < xs.length; x += 1) {
    const rests: number[] = [];
    for (let i = 0; i < x && 2 * (xs[i] ?? 0) <= (xs[x] ?? 0); i += 1) rests.push(restX(x, i));
    for (let y = 0; y < rows; y += 1) {
      let best = 0;
      for (const way of ways) if (way.value > best && way.w <= (xs[x] ?? 0) && way.h <= (ys[y] ?? 0)) best = way.value;
      for (let i = 0; i < rests.length; i += 1) {
        const rest = rests[i] ?? -1;
        const sum = (table[i * rows + y] ?? 0) + (rest < 0 ? 0 : (table[rest * rows + y] ?? 0));
        if (sum > best) best = sum;
      }
      for (let j = 0; j < y && 2 * (ys[j] ?? 0) <= (ys[y] ?? 0); j += 1) {
        const rest = floorIndex(ys, (ys[y] ?? 0) - (ys[j] ?? 0));
        const sum = (table[x * rows + j] ?? 0) + (rest < 0 ? 0 : (table[x * rows + rest] ?? 0));
        if (sum > best) best = sum;
      }
      table[x * rows + y] = best;
    }
  }
  return table.length === 0 ? 0 : (table[table.length - 1] ?? 0);
}

/**
 * For any values v >= 0 of the kinds, a plan needs at least sum(demand v) / (most value of one sheet) sheets: linear
 * programming duality in whole numbers, so nothing is rounded. `values` are whole numbers.
 */
function valueBound(task: Task, stocks: readonly Stock[], values: readonly number[], by: string): Bound | null {
  const holds: number[] = [];
  for (const stock of stocks) {
    const most = mostValue(task, task.stocks.indexOf(stock), values);
    if (most === null) return null;
    holds.push(most);
  }
  const needed = task.kinds.reduce((sum, kind, index) => sum + kind.demand * (values[index] ?? 0), 0);
  return { value: leastCost(stocks, holds, needed), by };
}

function large(kind: Kind, stock: Stock): boolean {
  return 2 * kind.width > stock.width || 2 * kind.height > stock.height;
}

/**
 * The best of the bounds on the sheets (or money) that any plan for `task` needs; Infinity when the sheets at hand cannot
 * do. `thorough` adds the bounds that need a table for one sheet.
 */
export function lowerBound(task: Task, thorough: boolean): Bound {
  const stocks = usedStocks(task);
  if (task.kinds.length === 0 || stocks.length === 0) return { value: 0, by: 'nothing to cut' };
  let best = areaBound(task, stocks);
  const consider = (bound: Bound | null): void => {
    if (bound && bound.value > best.value) best = bound;
  };
  const [only, ...others] = stocks;
  if (only && others.length === 0) consider(dualFeasibleBound(task, only));
  if (!thorough) return best;
  consider(
    valueBound(
      task,
      stocks,
      task.kinds.map((kind) => kind.width * kind.height),
      'most that one sheet holds',
    ),
  );
  const indicators = task.kinds
    .slice(0, 12)
    .map((_, wanted) => task.kinds.map((__, index) => (index === wanted ? 1 : 0)));
  for (const values of indicators) consider(valueBound(task, stocks, values, 'most of one kind on a sheet'));
  if (only)
    consider(
      valueBound(
        task,
        stocks,
        task.kinds.map((kind) => (large(kind, only) ? 1 : 0)),
        'most large blanks on a sheet',
      ),
    );
  return best;
}
