import type { Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { countInto } from '../sheet/slice.js';
import { SUMS_PER_STEP } from './column-generation.js';
import { type Column, RestProgram } from './rest-program.js';
import { type SliceSheet, trimmed } from './rounding.js';

/** Values are whole numbers of this part of a sheet. */
const WHOLE = 1_000_000;
/** Steps that taking a column into a linear plan and weighing it counts for, and how many more each kind counts for. */
const WEIGHING = 3;
const KIND_WEIGHING = 0.5;

/** Columns that are guessed with, the best by the first linear plan. */
const MOST_GUESSED = 160;
/** Times that a guess takes another column than the first, at the most. */
const MOST_TURNS = 6;

/** What is still missing, with how many sheets it is to be made, and how many of each stock are left. */
interface Rest {
  readonly left: readonly number[];
  readonly sheets: number;
  readonly stocks: readonly number[];
}

/** What a rest came to. */
export type Covering =
  | { readonly is: 'impossible' }
  | { readonly is: 'found'; readonly sheets: readonly SliceSheet[] }
  | { readonly is: 'unknown' };

/**
 * Makes everything with so many sheets of given ones, each as often as wanted and less what is not needed; by branch and bound. At
 * each step a linear plan gives values of the kinds; with them, rounded to whole numbers, no sheet is worth more than V, so
 * k sheets waste k V less what is missing is worth: a sheet that wastes more is left out from here on, and where the waste is
 * less than nothing there is no plan. That is exact; the linear plan itself only guides.
 */
export class Cover {
  /** Rests that cannot be made. */
  readonly #failed = new Set<string>();

  constructor(
    private readonly task: Task,
    private readonly meter: Meter,
  ) {}

  /** Tries all plans of at most `sheets` sheets out of `columns`; `unknown` when the work is used up. */
  find(columns: readonly Column[], sheets: number): Covering {
    const found = this.#descend(this.#whole(sheets), columns);
    if (found) return { is: 'found', sheets: found };
    return this.meter.empty ? { is: 'unknown' } : { is: 'impossible' };
  }

  /**
   * Only plans near to what the linear plans take most of, the nearest first: so many times in all another column than the first is
   * taken, the next one once, the one after it twice ("limited discrepancy search", Harvey and Ginsberg 1995, from memory).
   */
  guess(columns: readonly Column[], sheets: number): readonly SliceSheet[] | null {
    const best = this.#guided(this.#whole(sheets), columns).slice(0, MOST_GUESSED);
    for (let turns = 0; turns <= MOST_TURNS && !this.meter.empty; turns += 1) {
      const found = this.#guess(this.#whole(sheets), best, turns);
      if (found) return found;
    }
    return null;
  }

  #whole(sheets: number): Rest {
    const { kinds, stocks } = this.task;
    return { left: kinds.map(({ demand }) => demand), sheets, stocks: stocks.map((stock) => stock.sheets) };
  }

  #guess(rest: Rest, columns: readonly Column[], turns: number): readonly SliceSheet[] | null {
    if (rest.left.every((count) => count === 0)) return [];
    if (rest.sheets === 0 || this.meter.empty) return null;
    const open = this.#guided(rest, columns);
    for (let at = 0; at <= turns && at < open.length; at += 1) {
      const after = this.#take(rest, open[at] as Column);
      const found = this.#guess(after.rest, open, turns - at);
      if (found) return [after.sheet, ...found];
    }
    return null;
  }

  #descend(rest: Rest, columns: readonly Column[]): readonly SliceSheet[] | null {
    if (rest.left.every((count) => count === 0)) return [];
    if (rest.sheets === 0 || this.meter.empty) return null;
    const key = `${rest.sheets} ${rest.left.join()} ${rest.stocks.join()}`;
    if (this.#failed.has(key)) return null;
    const open = this.#guided(rest, columns);
    const kind = this.#rarest(rest, open);
    for (const column of open) {
      if ((column.counts[kind] as number) === 0) continue;
      const after = this.#take(rest, column);
      const found = this.#descend(after.rest, open);
      if (found) return [after.sheet, ...found];
      if (this.meter.empty) return null;
    }
    this.#failed.add(key);
    return null;
  }

  /** The columns that a plan of `rest` can use, those that a linear plan takes most of first. */
  #guided({ left, sheets, stocks }: Rest, columns: readonly Column[]): readonly Column[] {
    const program = new RestProgram(this.task, left, stocks);
    const useful = columns.filter((column) => (stocks[column.stock] as number) > 0 && program.add(column));
    const weighing = columns.length * (WEIGHING + KIND_WEIGHING * left.length);
    this.meter.spend(weighing + program.solve() / SUMS_PER_STEP);
    const values = program.prices().map((price) => Math.round(price * WHOLE));
    const worth = (counts: readonly number[]): number =>
      counts.reduce((sum, count, kind) => sum + Math.min(count, left[kind] as number) * (values[kind] as number), 0);
    const worths = useful.map(({ counts }) => worth(counts));
    const most = worths.reduce((best, one) => Math.max(best, one), 0);
    const waste = sheets * most - worth(left);
    if (waste < 0) return [];
    const taken = new Map(program.taken().map(({ column, amount }) => [column, amount] as const));
    return useful
      .map((column, at) => ({ column, amount: taken.get(column) ?? 0, wasted: most - (worths[at] as number) }))
      .filter(({ wasted }) => wasted <= waste)
      .sort((a, b) => b.amount - a.amount || a.wasted - b.wasted)
      .map(({ column }) => column);
  }

  /** The missing kind that the fewest columns give; of equals the first. */
  #rarest({ left }: Rest, columns: readonly Column[]): number {
    let best = -1;
    let fewest = Number.POSITIVE_INFINITY;
    left.forEach((count, kind) => {
      if (count === 0) return;
      const giving = columns.reduce((sum, { counts }) => sum + ((counts[kind] as number) > 0 ? 1 : 0), 0);
      if (giving >= fewest) return;
      best = kind;
      fewest = giving;
    });
    return best;
  }

  #take({ left, sheets, stocks }: Rest, { stock, slice }: Column): { readonly sheet: SliceSheet; readonly rest: Rest } {
    const less = trimmed(slice, left);
    if (!less) throw new Error('A sheet was taken that gives nothing.');
    const gives = left.map(() => 0);
    countInto(less, gives);
    return {
      sheet: { stock, slice: less, copies: 1 },
      rest: {
        left: left.map((count, kind) => count - (gives[kind] as number)),
        sheets: sheets - 1,
        stocks: stocks.map((count, at) => (at === stock ? count - 1 : count)),
      },
    };
  }
}
