import { valuableSlice } from '../sheet/bounded-table.js';
import type { Stock, Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { countInto } from '../sheet/slice.js';
import { SUMS_PER_STEP } from './column-generation.js';
import { type Column, RestProgram, type TakenColumn } from './rest-program.js';
import { type SliceSheet, trimmed } from './rounding.js';

/** Places for cuts on a side while sheets are looked for: quickly, and where that does not do. */
const FEW_PLACES = 28;
const ALL_PLACES = 250;
/** Sheets looked for at one point of a dive, at the most. */
const MOST_FOUND = 80;
/** How much more than its cost a sheet must be worth to be taken in. */
const WORTH = 1 + 1e-4;
/** Share of a sheet by which the linear plan is to stay below the limit before the large table is left alone. */
const MARGIN = 0.1;
/** Share of a sheet that a column may cost more than it is worth to be tried further down. */
const NEAR = 0.3;
/** Sheets that are tried at one point of a dive. */
const BRANCHES = 3;
/** Sheets of a dive that are fixed in vain, at the most; then another dive is begun. */
const MOST_FAILURES = 24;
const TINY = 1e-6;
/** Dives in one turn: where they end at once, more of them are in vain. */
const MOST_DIVES = 8;
/** Part of a sheet's price that makes a plan cheaper where prices differ. */
const CHEAPER = 1e-3;

/** A point of a dive: what is fixed, what that costs, and what is left. */
interface Point {
  readonly fixed: readonly SliceSheet[];
  readonly cost: number;
  readonly left: readonly number[];
  readonly sheets: readonly number[];
}

/** The linear plan for the rest of a point. */
interface Relaxed {
  readonly cost: number;
  readonly taken: readonly TakenColumn[];
  readonly near: readonly Column[];
}

/**
 * Plans of whole sheets by diving with column generation: the linear plan is made, one of the sheets it takes most of is
 * fixed, and for what is left sheets are priced anew that hold no kind more often than it is still missing. A sheet is
 * fixed only if the linear plan of the rest stays within the limit; otherwise another one is tried ("strong diving", as in
 * Sadykov, Vanderbeck, Pessoa, Tahiri and Uchoa 2019, INFORMS Journal on Computing 31:251-267, from memory). Finds what rounding over fixed sheets cannot;
 * proves nothing.
 */
export class Diving {
  readonly #columns: Column[] = [];
  readonly #known = new Set<string>();
  #dives = 0;
  #failures = 0;
  #begun: { readonly run: Generator<void, readonly SliceSheet[] | null>; readonly limit: number } | null = null;

  constructor(
    private readonly task: Task,
    private readonly random: () => number,
    private readonly meter: Meter,
  ) {}

  /** Shows columns that were found elsewhere. */
  show(columns: readonly Column[]): void {
    for (const column of columns) this.#remember(column);
  }

  /** All columns shown and found. */
  get columns(): readonly Column[] {
    return this.#columns;
  }

  #remember(column: Column): void {
    const key = `${column.stock} ${column.counts.join()}`;
    if (this.#known.has(key)) return;
    this.#known.add(key);
    this.#columns.push({ stock: column.stock, slice: column.slice, counts: column.counts });
  }

  /**
   * Dives, one after the other, until one finds sheets that make everything for at most `limit`, or so much work is `spent`
   * in all (null); goes on where it left off when it is called again with the same limit.
   */
  *goOn(limit: number, spent: number): Generator<void, readonly SliceSheet[] | null> {
    for (let dives = 0; dives < MOST_DIVES && this.meter.spent < spent && !this.meter.empty; ) {
      if (this.#begun?.limit !== limit) this.#begun = { run: this.dive(limit), limit };
      const { value, done } = this.#begun.run.next();
      if (done) {
        this.#begun = null;
        dives += 1;
      }
      if (value) return value;
      if (!done) yield;
    }
    return null;
  }

  /** Sheets that make everything for at most `limit`; null when this dive finds none. */
  *dive(limit: number): Generator<void, readonly SliceSheet[] | null> {
    const { task } = this;
    const sheets = task.stocks.map((stock) => stock.sheets);
    const point: Point = { fixed: [], cost: 0, left: task.kinds.map(({ demand }) => demand), sheets };
    const relaxed = yield* this.#relax(point, this.#columns, limit);
    this.#dives += 1;
    this.#failures = 0;
    return yield* this.#descend(point, relaxed, limit);
  }

  /** Fixes sheets from `point` on until nothing is left, each so that the rest stays within the limit; null in vain. */
  *#descend(point: Point, { taken, near }: Relaxed, limit: number): Generator<void, readonly SliceSheet[] | null> {
    if (point.left.every((count) => count === 0)) return point.fixed;
    for (const { column, amount } of this.#weighted(taken).slice(0, BRANCHES)) {
      if (this.meter.empty || this.#failures > MOST_FAILURES) return null;
      const fixed = this.#fix(point, column, Math.max(1, Math.floor(amount + TINY)));
      if (!fixed) continue;
      const relaxed = yield* this.#relax(fixed, near, limit);
      const done = fixed.cost + relaxed.cost <= limit + TINY ? yield* this.#descend(fixed, relaxed, limit) : null;
      if (done) return done;
      this.#failures += 1;
    }
    return null;
  }

  /** What is taken whole comes first, then what is taken most of; chance decides between sheets that are taken nearly as much. */
  #weighted(taken: readonly TakenColumn[]): readonly TakenColumn[] {
    const weighted = taken.map((one) => {
      const whole = one.amount - Math.floor(one.amount + TINY) < TINY;
      const chance = this.#dives === 1 ? 1 : 0.7 + 0.6 * this.random();
      return { one, weight: whole ? 2 : Math.min(1, one.amount) * chance };
    });
    return weighted.sort((a, b) => b.weight - a.weight).map(({ one }) => one);
  }

  /** The point with up to `most` more sheets of `column`, less what is not needed; null when there is no sheet left. */
  #fix(point: Point, { stock, slice }: Column, most: number): Point | null {
    const less = trimmed(slice, point.left);
    if (!less) return null;
    const counts = this.task.kinds.map(() => 0);
    countInto(less, counts);
    const times = counts.map((count, kind) =>
      count > 0 ? Math.floor((point.left[kind] as number) / count) : Number.POSITIVE_INFINITY,
    );
    const copies = Math.min(most, point.sheets[stock] as number, ...times);
    if (copies < 1) return null;
    return {
      fixed: [...point.fixed, { stock, slice: less, copies }],
      cost: point.cost + copies * (this.task.stocks[stock] as Stock).cost,
      left: point.left.map((count, kind) => count - copies * (counts[kind] as number)),
      sheets: point.sheets.map((count, at) => (at === stock ? count - copies : count)),
    };
  }

  /**
   * The linear plan for the rest of `point`: sheets are looked for in small tables as long as that helps, in large ones only while
   * the plan is not well below the limit.
   */
  *#relax(point: Point, columns: readonly Column[], limit: number): Generator<void, Relaxed> {
    const { task, meter } = this;
    const stocks = task.stocks.flatMap((_, stock) =>
      (point.sheets[stock] as number) > 0 &&
      task.kinds.some(({ papers }, kind) => (point.left[kind] as number) > 0 && papers.includes(stock))
        ? [stock]
        : [],
    );
    if (stocks.length === 0) {
      const missing = point.left.some((count) => count > 0);
      return { cost: missing ? Number.POSITIVE_INFINITY : 0, taken: [], near: [] };
    }
    const cheapest = Math.min(...stocks.map((stock) => (task.stocks[stock] as Stock).cost));
    const enough = limit - point.cost - MARGIN * cheapest;
    const program = new RestProgram(task, point.left, point.sheets);
    for (const column of columns) program.add(column);
    for (let found = 0; found < MOST_FOUND; found += 1) {
      meter.spend(2 + program.solve() / SUMS_PER_STEP);
      if (meter.empty) break;
      let helped = this.#priced(point, program, stocks, FEW_PLACES);
      if (!helped && program.cost() > enough) {
        yield;
        helped = this.#priced(point, program, stocks, ALL_PLACES);
      }
      yield;
      if (!helped) break;
    }
    const near = program.near(NEAR * Math.max(...stocks.map((stock) => (task.stocks[stock] as Stock).cost)));
    return { cost: program.cost(), taken: program.taken(), near };
  }

  /** Adds the sheet of most value of each stock, where it is worth more than it costs; true when one was new. */
  #priced(point: Point, program: RestProgram, stocks: readonly number[], places: number): boolean {
    const [prices, scarcity] = [program.prices(), program.scarcity()];
    let helped = false;
    for (const stock of stocks) {
      const { best, work } = valuableSlice(this.task, stock, point.left, prices, places);
      this.meter.spend(work);
      const cost = (this.task.stocks[stock] as Stock).cost + (scarcity[stock] as number);
      if (!best || best.value <= cost * WORTH) continue;
      const column = { stock, slice: best.slice, counts: best.counts };
      if (!program.add(column)) continue;
      this.#remember(column);
      helped = true;
    }
    return helped;
  }
}

/** The most that a plan may cost to be cheaper than `cost`: a sheet less, or a little less where prices differ. */
export function below({ stocks }: Task, cost: number): number {
  const [first = 1] = stocks.map((stock) => stock.cost);
  return cost - (stocks.every((stock) => stock.cost === first) ? first : CHEAPER * first);
}
