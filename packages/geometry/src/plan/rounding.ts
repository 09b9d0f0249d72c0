import type { Stock, Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { countInto, type Slice, without } from '../sheet/slice.js';
import { type PricedSheet, SUMS_PER_STEP } from './column-generation.js';
import { CoveringProgram } from './linear-program.js';

/** So many sheets of one stock, each with the group `slice`. */
export interface SliceSheet {
  readonly stock: number;
  readonly slice: Slice;
  readonly copies: number;
}

/** Sheets of one stock with the very same group, as copies of one. */
export function grouped(sheets: readonly SliceSheet[]): readonly SliceSheet[] {
  const groups = new Map<Slice, SliceSheet[]>();
  for (const sheet of sheets) {
    const known = groups.get(sheet.slice) ?? [];
    const at = known.findIndex(({ stock }) => stock === sheet.stock);
    const before = known[at];
    if (before) known[at] = { ...before, copies: before.copies + sheet.copies };
    else known.push(sheet);
    groups.set(sheet.slice, known);
  }
  return [...groups.values()].flat();
}

/** Whole sheets made from a linear plan: those that it takes whole, and those that rounding added. */
export interface Rounded {
  readonly whole: readonly SliceSheet[];
  readonly rest: readonly SliceSheet[];
  /** What is still missing, by kind: sheets at hand were too few. */
  readonly missing: readonly number[];
}

/** `slice` without what goes beyond `left`, which stays untouched. */
export function trimmed(slice: Slice, left: readonly number[]): Slice | null {
  const open = [...left];
  return without(slice, ({ kind }) => {
    const more = (open[kind] ?? 0) > 0;
    if (more) open[kind] = (open[kind] ?? 0) - 1;
    return more;
  });
}

/**
 * Rounds a linear plan: takes every sheet as often as it is taken whole, then again and again plans what is left over
 * the same sheets and takes the one of the largest part once more, less what is not needed ("diving"). `random` decides
 * between sheets that are taken nearly as much. Every blank is made exactly as often as wanted, unless sheets run out.
 */
export function roundSheets(task: Task, pool: readonly PricedSheet[], random: () => number, meter: Meter): Rounded {
  const left = task.kinds.map(({ demand }) => demand);
  const sheets = task.stocks.map((stock) => stock.sheets);
  const whole: SliceSheet[] = [];
  const rest: SliceSheet[] = [];
  const take = (into: SliceSheet[], { stock, slice }: PricedSheet, wanted: number): void => {
    const counts = task.kinds.map(() => 0);
    const less = trimmed(slice, left);
    if (!less) return;
    countInto(less, counts);
    const times = counts.map((count, kind) =>
      count > 0 ? Math.floor((left[kind] ?? 0) / count) : Number.POSITIVE_INFINITY,
    );
    const copies = Math.min(wanted, sheets[stock] ?? 0, ...times);
    if (copies < 1) return;
    into.push({ stock, slice: less, copies });
    sheets[stock] = (sheets[stock] ?? 0) - copies;
    counts.forEach((count, kind) => {
      left[kind] = (left[kind] ?? 0) - count * copies;
    });
  };
  for (const sheet of [...pool].sort((a, b) => b.amount - a.amount))
    if (sheet.amount >= 1) take(whole, sheet, Math.floor(sheet.amount + 1e-6));
  for (
    let round = 0;
    left.some((count) => count > 0) && round < 4 * task.kinds.length + 40 && !meter.empty;
    round += 1
  ) {
    const amounts = linearPlan(task, pool, left, sheets, meter);
    const before = left.reduce((sum, count) => sum + count, 0);
    for (const [at, amount] of amounts) if (amount >= 1) take(rest, pool[at] as PricedSheet, Math.floor(amount + 1e-6));
    const now = left.reduce((sum, count) => sum + count, 0);
    if (now < before) continue;
    const open = [...amounts].filter(([at]) => (sheets[(pool[at] as PricedSheet).stock] ?? 0) > 0);
    if (open.length === 0) break;
    const weighted = open.map(([at, amount]) => ({ at, weight: amount * (0.7 + 0.6 * random()) }));
    weighted.sort((a, b) => b.weight - a.weight || a.at - b.at);
    take(rest, pool[weighted[0]?.at ?? 0] as PricedSheet, 1);
    if (left.reduce((sum, count) => sum + count, 0) === now) break;
  }
  return { whole, rest, missing: left };
}

/** How much of each sheet of `pool` the cheapest linear plan for `left` takes. */
function linearPlan(
  task: Task,
  pool: readonly PricedSheet[],
  left: readonly number[],
  sheets: readonly number[],
  meter: Meter,
): ReadonlyMap<number, number> {
  const limited = task.stocks.flatMap((_, stock) => (Number.isFinite(sheets[stock]) ? [stock] : []));
  const dearest = Math.max(...task.stocks.map(({ cost }) => cost), 1e-9);
  const program = new CoveringProgram(
    [...left, ...limited.map((stock) => -(sheets[stock] ?? 0))],
    task.kinds.length + 2,
  );
  for (const { stock, counts } of pool) {
    const capped = counts.map((count, kind) => Math.min(count, left[kind] ?? 0));
    program.add(
      [...capped, ...limited.map((row) => (row === stock ? -1 : 0))],
      (task.stocks[stock] as Stock).cost / dearest,
    );
  }
  meter.spend(2 + program.solve() / SUMS_PER_STEP);
  return program.taken();
}
