import { copiesOf, type Kind, type Task } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { type Pace, Refill } from '../sheet/refill.js';
import { countInto, countLeaves, type Slice } from '../sheet/slice.js';
import type { Draft } from './draft.js';
import { cheaperSets } from './fewer-sheets.js';
import { draftOf, type Keeper, sliceOf } from './keeper.js';
import { grouped, type Rounded, type SliceSheet } from './rounding.js';

/** Rounds of taking out and putting back between two slices, and for one set of sheets. */
const ROUNDS_PER_SLICE = 24;
const ROUNDS_PER_SET = 120;
/** Paces of refilling from empty sheets, in turn. */
const PACES: readonly Pace[] = [
  { takenOut: 6, memory: 60 },
  { takenOut: 8, memory: 200 },
  { takenOut: 6, memory: 60 },
  { takenOut: 10, memory: 500 },
];
/** Blanks on sheets that are filled anew together, at the most; from empty sheets, where more take too long to come near. */
const MOST_REFILLED = 160;
const MOST_AFRESH = 60;
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

/** The sheets found so far. */
export interface FoundSheets {
  /** Whole sheets rounded from a linear plan over them; null while there are none. */
  rounded(): Generator<void, Rounded> | null;
  /** Takes a sheet of `stock` in. */
  learn(stock: number, slice: Slice): void;
}

/** Tries to do with fewer sheets by taking blanks out and putting them back; whatever is found is offered to the keeper. */
export class Refilling {
  #long: { readonly refill: Refill; readonly whole: readonly SliceSheet[]; readonly draft: Draft } | null = null;
  #stretch = 0;
  #fresh = 0;

  constructor(
    private readonly task: Task,
    private readonly keeper: Keeper,
    private readonly random: () => number,
    private readonly meter: Meter,
    private readonly found: FoundSheets,
  ) {}

  /** Sheets to leave as they are and sheets to fill anew: from a rounding, or from the best draft. */
  *#parted(fromPool: boolean, loose: boolean): Generator<void, Rounded> {
    const rounding = fromPool ? this.found.rounded() : null;
    if (rounding) {
      const rounded = yield* rounding;
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

  /**
   * Tries to do with fewer sheets, from empty ones, by putting all in and taking some out again, with a share of the work; each time
   * another of the paces. True when the best draft got better; false at once where there are too many blanks for it.
   */
  *afresh(work: number): Generator<void, boolean> {
    if (!this.keeper.complete || copiesOf(this.task) > MOST_AFRESH) return false;
    const area = this.task.kinds.reduce((sum, { width, height, demand }) => sum + width * height * demand, 0);
    const all = this.task.stocks.map((stock) => stock.sheets);
    const [set] = cheaperSets(this.task, all, area, this.keeper.cost, this.keeper.bound.value);
    if (!set) return false;
    const pace = PACES[this.#fresh % PACES.length] as Pace;
    this.#fresh += 1;
    const share = new Meter(Math.min(work, this.meter.budget - this.meter.spent));
    const refill = new Refill(this.task, laidOut(set, []), this.random, share, undefined, pace);
    while (!share.empty && !refill.run(ROUNDS_PER_SLICE)) yield;
    this.meter.spend(share.spent);
    return this.#refilled(refill, []);
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
    return this.#refilled(refill, whole);
  }

  /** Learns from a run, and offers what it came to, with the sheets that stayed as they were; true when that is better. */
  #refilled(refill: Refill, whole: readonly SliceSheet[]): boolean {
    const { done } = refill;
    const { stocks, roots } = refill.best;
    roots.forEach((slice, at) => {
      if (slice) this.found.learn(stocks[at] as number, slice);
    });
    if (!done) return false;
    const filled = done.roots.flatMap((slice, at) =>
      slice ? [{ stock: done.stocks[at] as number, slice, copies: 1 }] : [],
    );
    const nothing = this.task.kinds.map(() => 0);
    const draft = draftOf(this.task, grouped([...whole, ...filled]), nothing);
    return draft !== null && this.keeper.offer(draft);
  }
}
