import type { Stock, Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { mayStop, tableOf, waysOf } from '../sheet/places.js';
import { fewPoints, mergeSizes } from '../sheet/points.js';
import { SheetTable } from '../sheet/sheet-table.js';
import { countsOf, type Slice } from '../sheet/slice.js';
import type { Bound } from './bound.js';
import { leastCost } from './least-cost.js';
import { CoveringProgram } from './linear-program.js';

/** A sheet of one stock, the group of blanks on it, and how many such sheets a linear plan takes. */
export interface PricedSheet {
  readonly stock: number;
  readonly slice: Slice;
  readonly counts: readonly number[];
  readonly amount: number;
}

/** What column generation came to. */
export interface Pricing {
  /** The best bound; null when no exact table could be made. */
  readonly bound: Bound | null;
  /** Whole-numbered values of the kinds that gave the bound, or the last ones. */
  readonly values: readonly number[];
  /** All sheets that were found, and how much of each the best linear plan takes. */
  readonly sheets: readonly PricedSheet[];
}

/** Values are whole numbers of this part of a sheet. */
const WHOLE = 1_000_000;
/** Places for cuts on a side while sheets are looked for quickly. */
const FEW_PLACES = [28, 72];
const FEW_STOPPED_PLACES = [14];
const MOST_ROUNDS: Readonly<Record<Depth, number>> = { quick: 300, exact: 300, final: 3_000 };
/** Sums of a table that count for one step of work. */
export const SUMS_PER_STEP = 50;
/** How much more than its cost a sheet must be worth to be taken in. */
const WORTH = 1 + 1e-7;

/** How far sheets are looked for: in small tables only, until no higher bound is to be had, or until none helps. */
export type Depth = 'quick' | 'exact' | 'final';

interface Tables {
  readonly stock: number;
  /** Small tables that find good sheets fast, the smallest first; they prove nothing. */
  readonly quick: readonly SheetTable[];
  readonly exact: SheetTable | null;
}

/** Tables of few places for cuts. */
function quickTables(task: Task, stockIndex: number): readonly SheetTable[] {
  const stock = task.stocks[stockIndex] as Stock;
  const { kerf } = task.job.trimmer;
  const ways = waysOf(task, stockIndex, () => true);
  const stopped = mayStop(task);
  const places = (side: 'w' | 'h', length: number, few: number): readonly number[] => {
    const sizes = mergeSizes(ways.map((way) => ({ size: way[side], most: task.kinds[way.kind]?.demand ?? 0 })));
    return fewPoints(length, sizes, 0, few);
  };
  return (stopped ? FEW_STOPPED_PLACES : FEW_PLACES).flatMap((few) => {
    const [xs, ys] = [places('w', stock.width + kerf, few), places('h', stock.height + kerf, few)];
    return xs.length > 0 && ys.length > 0 ? [new SheetTable(task.kinds.length, ways, xs, ys, stopped)] : [];
  });
}

function tablesOf(task: Task, depth: Depth): readonly Tables[] {
  const used = new Set(task.kinds.flatMap((kind) => kind.papers));
  return task.stocks.flatMap((_, stock) =>
    used.has(stock)
      ? [{ stock, quick: quickTables(task, stock), exact: depth === 'quick' ? null : tableOf(task, stock, () => true) }]
      : [],
  );
}

/**
 * The linear plan of least cost over all guillotine sheets (Gilmore and Gomory 1965), sheets being found by their
 * value: quickly first, by exact tables when that finds no more. For every set of values the tables give a bound in
 * whole numbers (Farley 1990): what all blanks are worth over what a sheet is worth at most. Ends when a bound reaches
 * `target`, when no sheet helps any more, when the linear plan shows that no bound above `least` is to be had, or when the
 * work is used up. `known` are sheets to begin with.
 */
export function* generateColumns(
  task: Task,
  known: readonly { readonly stock: number; readonly slice: Slice }[],
  target: number,
  least: number,
  depth: Depth,
  meter: Meter,
): Generator<void, Pricing> {
  const tables = tablesOf(task, depth);
  const limited = tables.filter(({ stock }) => Number.isFinite(task.stocks[stock]?.sheets));
  const dearest = Math.max(...tables.map(({ stock }) => task.stocks[stock]?.cost ?? 0), 1e-9);
  const cost = (stock: number): number => (task.stocks[stock]?.cost ?? 0) / dearest;
  const program = new CoveringProgram(
    [...task.kinds.map(({ demand }) => demand), ...limited.map(({ stock }) => -(task.stocks[stock]?.sheets ?? 0))],
    // Dearer than any sheet could be worth, so that it is used only where there is no other way.
    task.kinds.length + 2,
  );
  const columns: Omit<PricedSheet, 'amount'>[] = [];
  const seen = new Set<string>();
  const add = (stock: number, slice: Slice): boolean => {
    const counts = countsOf(slice, task.kinds.length);
    const key = `${stock} ${counts.join()}`;
    if (seen.has(key)) return false;
    seen.add(key);
    columns.push({ stock, slice, counts });
    program.add([...counts, ...limited.map((row) => (row.stock === stock ? -1 : 0))], cost(stock));
    return true;
  };
  for (const { stock, slice } of known) add(stock, slice);
  for (const { stock, quick } of tables) {
    task.kinds.forEach((_, kind) => {
      const [small] = quick;
      if (!small?.ways.some((way) => way.kind === kind)) return;
      small.most(task.kinds.map((__, other) => (other === kind ? 1 : 0)));
      const slice = small.best();
      if (slice) add(stock, slice);
    });
  }
  const proving = tables.every(({ exact }) => exact !== null);
  let bound: Bound | null = proving ? { value: 0, by: 'column generation' } : null;
  let best: readonly number[] | null = null;
  let last: readonly number[] = task.kinds.map(() => 0);
  const equal = tables.every(({ stock }) => cost(stock) === 1);
  let highest = 0;
  const enough = (): boolean =>
    depth !== 'final' && equal && Math.ceil(program.cost() - 1e-6) * dearest <= Math.max(least, bound?.value ?? 0);
  for (let round = 0; round < MOST_ROUNDS[depth] && !meter.empty; round += 1) {
    meter.spend(2 + program.solve() / SUMS_PER_STEP);
    const prices = program.prices();
    const now = task.kinds.map((_, kind) => Math.max(0, Math.round((prices[kind] ?? 0) * WHOLE)));
    last = now;
    const limits = new Map(limited.map(({ stock }, row) => [stock, Math.max(0, prices[task.kinds.length + row] ?? 0)]));
    const enters = (stock: number, most: number): boolean =>
      most > WHOLE * (cost(stock) + (limits.get(stock) ?? 0)) * WORTH;
    let helped = false;
    for (const { stock, quick } of tables) {
      for (const table of depth === 'quick' ? quick.slice(0, 1) : quick) {
        meter.spend(table.steps / SUMS_PER_STEP);
        if (!enters(stock, table.most(now))) continue;
        const slice = table.best();
        if (!slice || !add(stock, slice)) continue;
        helped = true;
        break;
      }
    }
    yield;
    if (helped) continue;
    // The linear plan is no cheaper than the best one, so no bound rises above it rounded up.
    if (!bound || depth === 'quick' || enough()) break;
    const holds: number[] = [];
    for (const { stock, exact } of tables) {
      if (!exact) continue;
      meter.spend(exact.steps / SUMS_PER_STEP);
      const most = exact.most(now);
      holds.push(most);
      if (!enters(stock, most)) continue;
      const slice = exact.best();
      if (slice && add(stock, slice)) helped = true;
    }
    const needed = now.reduce((sum, value, kind) => sum + value * (task.kinds[kind]?.demand ?? 0), 0);
    const bounded = leastCost(
      tables.map(({ stock }) => task.stocks[stock] as Stock),
      holds,
      needed,
    );
    // Values that give the same bound in whole sheets may still be nearer to the next.
    const ratio = needed / Math.max(...holds);
    if (bounded > bound.value || best === null || (bounded === bound.value && ratio > highest)) {
      bound = { ...bound, value: Math.max(bounded, bound.value) };
      best = now;
      highest = ratio;
    }
    if (bound.value >= target) break;
    if (!helped) break;
  }
  program.solve();
  const taken = program.taken();
  const sheets = columns.map((column, index) => ({ ...column, amount: taken.get(index) ?? 0 }));
  return { bound, values: best ?? last, sheets };
}
