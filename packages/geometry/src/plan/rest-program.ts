import type { Stock, Task } from '../sheet/kinds.js';
import type { Slice } from '../sheet/slice.js';
import { CoveringProgram } from './linear-program.js';

/** A sheet of one stock with a group of blanks on it, and how many of each kind. */
export interface Column {
  readonly stock: number;
  readonly slice: Slice;
  readonly counts: readonly number[];
}

/** A column, and how much of it a linear plan takes. */
export interface TakenColumn {
  readonly column: Column;
  readonly amount: number;
}

/**
 * The cheapest linear plan for what is still missing, over columns that are added as they are found. A column counts only with
 * what is still missing of each kind, so that no part of a sheet is taken for more than it can be worth to a whole plan.
 */
export class RestProgram {
  readonly #rows: readonly number[];
  readonly #limited: readonly number[];
  readonly #program: CoveringProgram;
  readonly #columns: Column[] = [];
  readonly #gives: (readonly number[])[] = [];
  readonly #known = new Set<string>();
  readonly #dearest: number;

  /** `left` is missing of each kind, `sheets` are there of each stock. */
  constructor(
    private readonly task: Task,
    private readonly left: readonly number[],
    sheets: readonly number[],
  ) {
    this.#rows = left.flatMap((count, kind) => (count > 0 ? [kind] : []));
    this.#limited = task.stocks.flatMap((_, stock) => (Number.isFinite(sheets[stock]) ? [stock] : []));
    // Costs near 1, whatever the money, for the sake of the arithmetic.
    this.#dearest = Math.max(...task.stocks.map(({ cost }) => cost), 1e-9);
    // Dearer than any sheet could be worth, so that it is used only where there is no other way.
    this.#program = new CoveringProgram(
      [...this.#rows.map((kind) => left[kind] as number), ...this.#limited.map((stock) => -(sheets[stock] as number))],
      this.#rows.length + 2,
    );
  }

  /** True when the column gives something, and none that gives the same from this stock is known. */
  add(column: Column): boolean {
    const gives = this.#rows.map((kind) => Math.min(column.counts[kind] as number, this.left[kind] as number));
    const key = `${column.stock} ${gives.join()}`;
    if (this.#known.has(key) || gives.every((count) => count === 0)) return false;
    this.#known.add(key);
    this.#columns.push(column);
    this.#gives.push(gives);
    const uses = this.#limited.map((stock) => (stock === column.stock ? -1 : 0));
    this.#program.add([...gives, ...uses], (this.task.stocks[column.stock] as Stock).cost / this.#dearest);
    return true;
  }

  /** Makes the plan anew with all columns; returns the multiplications it took. */
  solve(): number {
    return this.#program.solve();
  }

  cost(): number {
    return this.#program.cost() * this.#dearest;
  }

  /** What one more of each kind would cost. */
  prices(): readonly number[] {
    const prices = this.#program.prices();
    const values = this.task.kinds.map(() => 0);
    this.#rows.forEach((kind, row) => {
      values[kind] = Math.max(0, prices[row] as number) * this.#dearest;
    });
    return values;
  }

  /** What one sheet less of each stock would cost beside its own price. */
  scarcity(): readonly number[] {
    const prices = this.#program.prices();
    const values = this.task.stocks.map(() => 0);
    this.#limited.forEach((stock, row) => {
      values[stock] = Math.max(0, prices[this.#rows.length + row] as number) * this.#dearest;
    });
    return values;
  }

  /** The columns that the plan takes. */
  taken(): readonly TakenColumn[] {
    return [...this.#program.taken()].map(([at, amount]) => ({ column: this.#columns[at] as Column, amount }));
  }

  /** The columns that cost at most `most` more than they are worth. */
  near(most: number): readonly Column[] {
    const [prices, scarcity] = [this.prices(), this.scarcity()];
    return this.#columns.filter(({ stock }, at) => {
      const gives = this.#gives[at] as readonly number[];
      const worth = gives.reduce((sum, count, row) => sum + count * (prices[this.#rows[row] as number] as number), 0);
      return (this.task.stocks[stock] as Stock).cost + (scarcity[stock] as number) - worth <= most;
    });
  }
}
