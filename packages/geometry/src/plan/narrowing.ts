import type { Kind, Task } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { type FilledSheets, Refill } from '../sheet/refill.js';
import { countInto, countLeaves, countsOf, type Slice } from '../sheet/slice.js';
import type { Bound } from './bound.js';
import { closeGap } from './closure.js';
import { type Depth, generateColumns, type PricedSheet } from './column-generation.js';
import { below, Diving } from './diving.js';
import type { Draft } from './draft.js';
import { cheaperSets } from './fewer-sheets.js';
import { draftOf, type Keeper, sliceOf } from './keeper.js';
import { grouped, type Rounded, roundSheets, type SliceSheet } from './rounding.js';

/** Ways of rounding a linear plan that are tried. */
const ROUNDINGS = 24;
/** Share of the work that they may take each time. */
const ROUNDING_SHARE = 0.02;
/** Rounds of taking out and putting back between two slices, and for one set of sheets. */
const ROUNDS_PER_SLICE = 24;
const ROUNDS_PER_SET = 120;
/** Blanks on sheets that are filled anew together, at the most. */
const MOST_REFILLED = 160;
/** Share of the work that one try of every plan may take. */
const CLOSING_SHARE = 0.3;
/** Share of the work that is left that pricing sheets may take. */
const PRICING_SHARE: Readonly<Record<Depth, number>> = { quick: 0.2, exact: 0.5 };

/** Share of the work that diving may take before something else has its turn. */
const DIVING_SHARE = 0.06;

/** Sheets among which rounding chooses, at the most. */
const MOST_POOLED = 600;

const BY_TRYING = 'every plan of fewer sheets';

/** The demand that is left when `whole` is made, and the sheets that are left. */
function restOf(
  task: Task,
  whole: readonly SliceSheet[],
): { readonly task: Task; readonly sheets: readonly number[]; readonly cost: number } {
  const made = task.kinds.map(() => 0);
  const sheets = task.stocks.map((stock) => stock.sheets);
  let cost = 0;
  for (const { stock, slice, copies } of whole) {
    const counts = task.kinds.map(() => 0);
    countInto(slice, counts);
    counts.forEach((count, kind) => {
      made[kind] = (made[kind] ?? 0) + count * copies;
    });
    sheets[stock] = (sheets[stock] ?? 0) - copies;
    cost += copies * (task.stocks[stock]?.cost ?? 0);
  }
  const kinds = task.kinds.map((kind, index): Kind => ({ ...kind, demand: kind.demand - (made[index] ?? 0) }));
  return { task: { ...task, kinds }, sheets, cost };
}

function singles(sheets: readonly SliceSheet[]): readonly SliceSheet[] {
  return sheets.flatMap((sheet) => Array.from({ length: sheet.copies }, () => ({ ...sheet, copies: 1 })));
}

/** Lays the slices of `rest` onto a set of sheets, fullest first; the other sheets stay empty. */
function laidOut(
  set: readonly number[],
  rest: readonly SliceSheet[],
): { readonly stocks: readonly number[]; readonly roots: readonly (Slice | null)[] } {
  const stocks = set.flatMap((count, stock) => Array.from({ length: count }, () => stock));
  const waiting = [...rest].sort((a, b) => b.slice.w * b.slice.h - a.slice.w * a.slice.h);
  const roots = stocks.map((stock) => {
    const at = waiting.findIndex((sheet) => sheet.stock === stock);
    return at < 0 ? null : (waiting.splice(at, 1)[0]?.slice ?? null);
  });
  return { stocks, roots };
}

/** Everything that narrows the gap between the best draft and the best bound of one task. */
export class Narrowing {
  #pool: PricedSheet[] = [];
  readonly #known = new Set<string>();
  #values: readonly number[] = [];
  #long: { readonly refill: Refill; readonly whole: readonly SliceSheet[]; readonly draft: Draft } | null = null;
  #stretch = 0;
  readonly #diving: Diving;

  constructor(
    private readonly task: Task,
    private readonly keeper: Keeper,
    private readonly random: () => number,
    private readonly meter: Meter,
  ) {
    this.#diving = new Diving(task, random, meter);
  }

  /** Column generation, and drafts rounded from it; ends early when the best draft is proven. */
  *price(depth: Depth): Generator<void, void> {
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
    yield;
    yield* this.#rounded();
    yield;
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

  #learn({ stocks, roots }: FilledSheets): void {
    roots.forEach((slice, at) => {
      if (slice) this.#add(stocks[at] as number, slice);
    });
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

  /** Sheets to leave as they are and sheets to fill anew: from a rounding, or from the best draft. */
  *#parted(fromPool: boolean, loose: boolean): Generator<void, Rounded> {
    if (fromPool && this.#pool.length > 0) {
      const rounded = yield* this.#rounded();
      return loose ? { ...rounded, ...this.#loosened(rounded.whole, rounded.rest) } : rounded;
    }
    const sheets = this.keeper.draft.sheets.flatMap(({ stock, tree, copies }): SliceSheet[] => {
      const slice = sliceOf(this.task, tree);
      return slice ? [{ stock, slice, copies }] : [];
    });
    return { ...this.#loosened(sheets, []), missing: this.keeper.draft.missing };
  }

  /** Moves sheets by chance from those that stay to those that are filled anew, as long as these are not too many. */
  #loosened(whole: readonly SliceSheet[], rest: readonly SliceSheet[]): Pick<Rounded, 'whole' | 'rest'> {
    const stay = [...singles(whole)];
    const anew = [...singles(rest)];
    let blanks = anew.reduce((sum, { slice }) => sum + countLeaves(slice), 0);
    while (stay.length > 0) {
      const at = Math.floor(this.random() * stay.length);
      const sheet = stay[at] as SliceSheet;
      blanks += countLeaves(sheet.slice);
      if (blanks > MOST_REFILLED) break;
      stay.splice(at, 1);
      anew.push(sheet);
    }
    return { whole: grouped(stay), rest: anew };
  }

  /**
   * Tries to do with fewer sheets by taking blanks out and putting them back, starting from a rounding (`fromPool`) or
   * from the best draft; `loose` moves whole sheets of a rounding in too. True when the best draft got better.
   */
  *refill(fromPool: boolean, loose: boolean): Generator<void, boolean> {
    const { whole, rest } = yield* this.#parted(fromPool, loose);
    const left = restOf(this.task, whole);
    const area = left.task.kinds.reduce((sum, { width, height, demand }) => sum + width * height * demand, 0);
    const limit = this.keeper.complete ? this.keeper.cost - left.cost : Number.MAX_SAFE_INTEGER;
    const sets = this.keeper.complete
      ? cheaperSets(left.task, left.sheets, area, limit, this.keeper.bound.value - left.cost)
      : [left.sheets.map((count) => (Number.isFinite(count) ? count : rest.length))];
    for (const set of sets) {
      const refill = new Refill(left.task, laidOut(set, singles(rest)), this.random, this.meter);
      const better = yield* this.#run(refill, whole, ROUNDS_PER_SET);
      // The run from the best draft goes on later, where it left off.
      if (!fromPool) this.#long = { refill, whole, draft: this.keeper.draft };
      if (better) return true;
    }
    return false;
  }

  /** Goes on with the last run from the best draft, for longer and longer; begins one where the draft has changed. */
  *goOn(): Generator<void, boolean> {
    const long = this.#long;
    if (!long || long.draft !== this.keeper.draft) return yield* this.refill(false, true);
    this.#stretch += 1;
    return yield* this.#run(long.refill, long.whole, ROUNDS_PER_SET * this.#stretch);
  }

  *#run(refill: Refill, whole: readonly SliceSheet[], rounds: number): Generator<void, boolean> {
    for (let round = 0; round < rounds && !this.meter.empty; round += ROUNDS_PER_SLICE) {
      if (refill.run(ROUNDS_PER_SLICE)) break;
      yield;
    }
    const { done } = refill;
    this.#learn(refill.best);
    if (!done) return false;
    const filled = done.roots.flatMap((slice, at) =>
      slice ? [{ stock: done.stocks[at] as number, slice, copies: 1 }] : [],
    );
    return this.#offer(
      [...whole, ...filled],
      this.task.kinds.map(() => 0),
    );
  }

  /** Dives for a plan that is cheaper than the best draft, with a share of the work; true when the best draft got better. */
  *dive(): Generator<void, boolean> {
    if (!this.keeper.complete) return false;
    this.#diving.show(this.#pool);
    const until = this.meter.spent + DIVING_SHARE * this.meter.budget;
    const sheets = yield* this.#diving.goOn(below(this.task, this.keeper.cost), until);
    const nothing = this.task.kinds.map(() => 0);
    return sheets !== null && this.#offer(sheets, nothing);
  }

  /**
   * Tries every plan of as many sheets as the bound says, for stocks of equal cost: it is found, or the bound rises by
   * one. Repeats while that goes on; true when the best draft is proven.
   */
  *close(): Generator<void, boolean> {
    const [first] = this.task.stocks;
    const equal = this.task.stocks.every(({ cost }) => cost === first?.cost);
    const values = this.#prices();
    while (equal && first && this.keeper.complete && !this.keeper.proven) {
      const sheets = Math.ceil(this.keeper.bound.value / first.cost - 1e-9);
      const share = new Meter((this.meter.budget - this.meter.spent) * CLOSING_SHARE);
      const closing = closeGap(this.task, values, sheets, share);
      this.meter.spend(share.spent);
      yield;
      if (closing.is === 'unknown') return false;
      if (closing.is === 'found') {
        this.#offer(
          closing.sheets.map((sheet) => ({ ...sheet, copies: 1 })),
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
