import type { Stock, Task } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { realise } from '../sheet/realise.js';
import type { Slice } from '../sheet/slice.js';
import { SUMS_PER_STEP } from './column-generation.js';
import { Cover } from './cover.js';
import { draftOf, type Keeper } from './keeper.js';
import { nearSheets } from './near-sheets.js';
import { type Column, RestProgram } from './rest-program.js';
import { grouped, type SliceSheet } from './rounding.js';

/** Share of the work that looking for more sheets may take each time, and fillings of each part that are kept in turn. */
const GATHERING_SHARE = 0.08;
const KEPT = [100, 400];
/** Prices are whole numbers of this part of a sheet. */
const WHOLE = 1_000_000;

/**
 * Plans chosen among sheets that were found elsewhere, as a small integer program; for stocks of equal cost. Whatever is found
 * is offered to the keeper.
 */
export class Choosing {
  #gathered = 0;
  /** What is known of the trimmer's rules: a group may be cut from its stock or not. */
  readonly #able = new WeakMap<Slice, boolean>();

  constructor(
    private readonly task: Task,
    private readonly keeper: Keeper,
    private readonly meter: Meter,
  ) {}

  /** What every stock costs; null when costs differ, or there is no plan yet that makes everything. */
  get #price(): number | null {
    const [first] = this.task.stocks;
    const equal = this.task.stocks.every(({ cost }) => cost === first?.cost);
    return first && equal && this.keeper.complete ? first.cost : null;
  }

  /**
   * Looks among `columns` for a plan of one sheet less than the best draft, with so large a share of all work; again where there is
   * one. True when the best draft got better.
   */
  *choose(columns: readonly Column[], part: number): Generator<void, boolean> {
    const price = this.#price;
    let better = false;
    if (price === null) return better;
    const able = columns.filter((column) => this.#canCut(column));
    while (!this.keeper.proven) {
      const found = this.#found(able, Math.round(this.keeper.cost / price) - 1, part * this.meter.budget);
      yield;
      const draft = found && draftOf(this.task, grouped(found), new Array<number>(this.task.kinds.length).fill(0));
      if (!draft || !this.keeper.offer(draft)) return better;
      better = true;
    }
    return better;
  }

  /** All plans where they are few, or are soon seen not to do; else those that look best. */
  #found(columns: readonly Column[], sheets: number, work: number): readonly SliceSheet[] | null {
    const trying = new Meter(work / 2);
    const covering = new Cover(this.task, trying).find(columns, sheets);
    this.meter.spend(trying.spent);
    if (covering.is === 'found') return covering.sheets;
    if (covering.is === 'impossible') return null;
    const guessing = new Meter(work / 2);
    const guessed = new Cover(this.task, guessing).guess(columns, sheets);
    this.meter.spend(guessing.spent);
    return guessed;
  }

  #canCut({ stock, slice }: Column): boolean {
    const known = this.#able.get(slice);
    if (known !== undefined) return known;
    const { width, height } = this.task.stocks[stock] as Stock;
    const able = realise(this.task.job.trimmer, slice, width, height) !== null;
    this.#able.set(slice, able);
    return able;
  }

  /**
   * More sheets that a plan of one sheet less than the best draft could be made of: those that waste little, in turn by `values` of the
   * kinds and by the prices of the linear plan over `columns`.
   */
  *gather(columns: readonly Column[], values: readonly number[]): Generator<void, readonly Column[]> {
    const price = this.#price;
    if (price === null) return [];
    const sheets = Math.round(this.keeper.cost / price) - 1;
    const kept = KEPT[(this.#gathered >> 1) % KEPT.length] as number;
    const share = new Meter(GATHERING_SHARE * this.meter.budget);
    const found =
      this.#gathered % 2 === 0
        ? nearSheets(this.task, values, null, sheets, kept, share)
        : nearSheets(this.task, this.#pricesOver(columns, price), WHOLE, sheets, kept, share);
    this.#gathered += 1;
    this.meter.spend(share.spent);
    yield;
    return found;
  }

  /** Prices of the kinds in the linear plan over `columns`, in parts of a sheet. */
  #pricesOver(columns: readonly Column[], cost: number): readonly number[] {
    const { kinds, stocks } = this.task;
    const program = new RestProgram(
      this.task,
      kinds.map(({ demand }) => demand),
      stocks.map(({ sheets }) => sheets),
    );
    for (const column of columns) program.add(column);
    this.meter.spend(program.solve() / SUMS_PER_STEP);
    return program.prices().map((price) => Math.round((price / cost) * WHOLE));
  }
}
