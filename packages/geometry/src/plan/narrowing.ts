import type { Task } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { countsOf, type Slice } from '../sheet/slice.js';
import type { Bound } from './bound.js';
import { Choosing } from './choosing.js';
import { closeGap } from './closure.js';
import { type Depth, generateColumns, type PricedSheet } from './column-generation.js';
import { below, Diving } from './diving.js';
import type { Draft } from './draft.js';
import { draftOf, type Keeper, sliceOf } from './keeper.js';
import { Refilling } from './refilling.js';
import { grouped, type Rounded, roundSheets, type SliceSheet } from './rounding.js';

/** Ways of rounding a linear plan that are tried. */
const ROUNDINGS = 24;
/** Share of the work that they may take each time. */
const ROUNDING_SHARE = 0.02;
/** Share of the work that one try of every plan may take. */
const CLOSING_SHARE = 0.15;
/** Share of the work that one choice among the sheets found may take. */
const CHOOSING_SHARE: Readonly<Record<Depth, number>> = { quick: 0.01, exact: 0.02, final: 0.04 };
/** Share of the work that is left that pricing sheets may take. */
const PRICING_SHARE: Readonly<Record<Depth, number>> = { quick: 0.2, exact: 0.5, final: 0.3 };

/** Share of the work that diving may take before something else has its turn. */
const DIVING_SHARE = 0.06;

/** Sheets among which rounding chooses, at the most. */
const MOST_POOLED = 600;

const BY_TRYING = 'every plan of fewer sheets';

/** Everything that narrows the gap between the best draft and the best bound of one task; taking out and putting back by `refilling`. */
export class Narrowing {
  #pool: PricedSheet[] = [];
  readonly #known = new Set<string>();
  #values: readonly number[] = [];
  readonly refilling: Refilling;
  readonly #diving: Diving;
  readonly #choosing: Choosing;

  constructor(
    private readonly task: Task,
    private readonly keeper: Keeper,
    private readonly random: () => number,
    private readonly meter: Meter,
  ) {
    this.#diving = new Diving(task, random, meter);
    this.#choosing = new Choosing(task, keeper, meter);
    this.refilling = new Refilling(task, keeper, random, meter, {
      rounded: () => (this.#pool.length > 0 ? this.#rounded() : null),
      learn: (stock, slice) => this.#add(stock, slice),
    });
  }

  /** Column generation, and drafts rounded from it; ends early when the best draft is proven. */
  *price(depth: Depth): Generator<void, void> {
    yield* this.#generate(depth);
    yield;
    yield* this.#rounded();
    yield;
    yield* this.#choose(depth);
  }

  /** Column generation: sheets, values and perhaps a higher bound. */
  *#generate(depth: Depth): Generator<void, void> {
    const known = this.keeper.draft.sheets.flatMap(({ stock, tree }) => {
      const slice = sliceOf(this.task, tree);
      return slice ? [{ stock, slice }] : [];
    });
    known.push(...this.#pool);
    const target = this.keeper.complete ? this.keeper.cost : Number.POSITIVE_INFINITY;
    const share = new Meter((this.meter.budget - this.meter.spent) * PRICING_SHARE[depth]);
    const least = this.keeper.bound.value;
    const pricing = yield* generateColumns(this.task, known, target, least, depth, share);
    this.meter.spend(share.spent);
    this.#pool = [...pricing.sheets];
    for (const { stock, counts } of this.#pool) this.#known.add(`${stock} ${counts.join()}`);
    this.#values = pricing.values;
    if (pricing.bound) this.keeper.raise(pricing.bound);
  }

  /** The cheapest of many roundings, which is offered; fewer where one takes much work. */
  *#rounded(): Generator<void, Rounded> {
    const costOf = ({ whole, rest, missing }: Rounded): number =>
      [...whole, ...rest].reduce((sum, { stock, copies }) => sum + copies * (this.task.stocks[stock]?.cost ?? 0), 0) +
      missing.reduce((sum, count) => sum + count, 0) * 1e6;
    const until = this.meter.spent + ROUNDING_SHARE * this.meter.budget;
    let best = roundSheets(this.task, this.#pool, () => 0.5, this.meter);
    for (let more = 1; more < ROUNDINGS && this.meter.spent < until; more += 1) {
      yield;
      const rounded = roundSheets(this.task, this.#pool, this.random, this.meter);
      if (costOf(rounded) < costOf(best)) best = rounded;
    }
    this.#offer([...best.whole, ...best.rest], best.missing);
    return best;
  }

  /**
   * Values of the kinds to fill sheets by: the prices of the linear plan, or the areas, each a little changed by chance; in
   * all as much as the areas of all blanks.
   */
  shakenValues(): readonly number[] {
    const prices = this.#prices();
    const areas = this.task.kinds.map(({ width, height }) => width * height);
    const sum = (values: readonly number[]): number =>
      values.reduce((total, value, kind) => total + value * (this.task.kinds[kind]?.demand ?? 0), 0);
    const scale = sum(areas) / sum(prices);
    // A blank that fits anywhere has no price, yet it has to be placed.
    return prices.map(
      (value, kind) => (0.85 * value * scale + 0.15 * (areas[kind] ?? 0)) * (0.9 + 0.2 * this.random()),
    );
  }

  #prices(): readonly number[] {
    const priced = this.#values.some((value) => value > 0);
    return priced ? this.#values : this.task.kinds.map(({ width, height }) => width * height);
  }

  /** Takes the sheets of a draft in among those that plans are rounded from. */
  learn(draft: Draft): void {
    for (const { stock, tree } of draft.sheets) {
      const slice = sliceOf(this.task, tree);
      if (slice) this.#add(stock, slice);
    }
  }

  #add(stock: number, slice: Slice): void {
    if (this.#pool.length >= MOST_POOLED) return;
    const counts = countsOf(slice, this.task.kinds.length);
    const key = `${stock} ${counts.join()}`;
    if (this.#known.has(key)) return;
    this.#known.add(key);
    this.#pool.push({ stock, slice, counts, amount: 0 });
  }

  #offer(sheets: readonly SliceSheet[], missing: readonly number[]): boolean {
    const draft = draftOf(this.task, grouped(sheets), missing);
    return draft !== null && this.keeper.offer(draft);
  }

  /** Dives for a plan that is cheaper than the best draft, with a share of the work; true when the best draft got better. */
  *dive(): Generator<void, boolean> {
    if (!this.keeper.complete) return false;
    this.#diving.show(this.#pool);
    const until = this.meter.spent + DIVING_SHARE * this.meter.budget;
    const sheets = yield* this.#diving.goOn(below(this.task, this.keeper.cost), until);
    const nothing = this.task.kinds.map(() => 0);
    if (sheets !== null && this.#offer(sheets, nothing)) return true;
    return yield* this.#choose('final');
  }

  /** Chooses among all sheets found so far; see `Choosing`. */
  *#choose(depth: Depth): Generator<void, boolean> {
    return yield* this.#choosing.choose([...this.#pool, ...this.#diving.columns], CHOOSING_SHARE[depth]);
  }

  /** Looks for more sheets to choose from, and chooses; true when the best draft got better. */
  *gather(): Generator<void, boolean> {
    const columns = [...this.#pool, ...this.#diving.columns];
    this.#diving.show(yield* this.#choosing.gather(columns, this.#prices()));
    return yield* this.#choose('final');
  }

  /**
   * Tries every plan of as many sheets as the bound says, for stocks of equal cost: it is found, or the bound rises by
   * one. Repeats while that goes on; true when the best draft is proven.
   */
  *close(): Generator<void, boolean> {
    const [first] = this.task.stocks;
    const equal = this.task.stocks.every(({ cost }) => cost === first?.cost);
    if (!equal || this.keeper.proven) return this.keeper.proven;
    // The nearer the values are to the best ones, the fewer groups there are to look at.
    yield* this.#generate('final');
    if (yield* this.#choose('final')) return this.keeper.proven;
    const values = this.#prices();
    while (first && this.keeper.complete && !this.keeper.proven) {
      const sheets = Math.ceil(this.keeper.bound.value / first.cost - 1e-9);
      const share = new Meter((this.meter.budget - this.meter.spent) * CLOSING_SHARE);
      const closing = closeGap(this.task, values, sheets, share);
      this.meter.spend(share.spent);
      yield;
      if (closing.is === 'unknown') return false;
      if (closing.is === 'found') {
        this.#offer(
          closing.sheets,
          this.task.kinds.map(() => 0),
        );
        return this.keeper.proven;
      }
      const bound: Bound = { value: (sheets + 1) * first.cost, by: BY_TRYING };
      this.keeper.raise(bound);
    }
    return this.keeper.proven;
  }
}
