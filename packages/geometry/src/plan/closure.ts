import { GoalSearch } from '../sheet/goal-search.js';
import type { Stock, Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { Packing } from '../sheet/packing.js';
import { tableOf } from '../sheet/places.js';
import { seededRandom } from '../sheet/random.js';
import { countsOf, type Slice } from '../sheet/slice.js';
import { SUMS_PER_STEP } from './column-generation.js';

/** Groups of blanks of one part of a sheet beyond which nothing is tried. */
const MOST_FILLINGS = 12_000;

/** Steps of work that looking up a rest counts for, and trying one pattern. */
const LOOK_UP = 5;
const TRY = 0.3;

/** What trying every plan of so many sheets came to: it cannot be, here it is, or nothing is known. */
export type Closing =
  | { readonly is: 'impossible' }
  | { readonly is: 'found'; readonly sheets: readonly { readonly stock: number; readonly slice: Slice }[] }
  | { readonly is: 'unknown' };

interface Pattern {
  readonly stock: number;
  readonly slice: Slice;
  /** Counts of the kinds, packed by `Packing`. */
  readonly packed: Int32Array;
  readonly waste: number;
}

/** Patterns by the kinds they hold, for a search of an exact partition of the demand. */
class Partition {
  readonly #failed = new Set<string>();
  readonly #chosen: Pattern[] = [];
  readonly #used: number[];

  constructor(
    private readonly task: Task,
    private readonly packing: Packing,
    private readonly byKind: readonly (readonly Pattern[])[],
    private readonly meter: Meter,
  ) {
    this.#used = task.stocks.map(() => 0);
  }

  /** The patterns that make up `rest` with `sheets` sheets wasting `waste` in all; null when there are none. */
  find(rest: Int32Array, sheets: number, waste: number): readonly Pattern[] | null {
    if (rest.every((word) => word === 0)) return this.#chosen;
    if (sheets === 0 || this.meter.empty) return null;
    this.meter.spend(LOOK_UP);
    const key = `${sheets} ${rest.join()} ${this.#used.join()}`;
    if (this.#failed.has(key)) return null;
    const first = this.byKind.findIndex((_, kind) => this.packing.count(rest, kind) > 0);
    for (const pattern of this.byKind[first] ?? []) {
      this.meter.spend(TRY);
      if (pattern.waste > waste) break;
      const { stock, packed } = pattern;
      if ((this.#used[stock] as number) >= (this.task.stocks[stock] as Stock).sheets) continue;
      if (!this.#within(packed, rest)) continue;
      this.#chosen.push(pattern);
      this.#used[stock] = (this.#used[stock] as number) + 1;
      const found = this.find(
        rest.map((word, at) => word - (packed[at] as number)),
        sheets - 1,
        waste - pattern.waste,
      );
      if (found) return found;
      this.#chosen.pop();
      this.#used[stock] = (this.#used[stock] as number) - 1;
    }
    this.#failed.add(key);
    return null;
  }

  #within(packed: Int32Array, rest: Int32Array): boolean {
    for (let kind = 0; kind < this.task.kinds.length; kind += 1) {
      if (this.packing.count(packed, kind) > this.packing.count(rest, kind)) return false;
    }
    return true;
  }
}

/**
 * Tries every plan of at most `sheets` sheets, for stocks of equal cost. With `values` of the kinds and the most V
 * that a sheet can be worth, a plan of k sheets wastes exactly k V - (what all is worth); so no sheet of it wastes more
 * than that, which leaves few groups of blanks to look at when the values are the prices of a good linear plan.
 * All of them are made, and the demand is partitioned into them. Whole numbers only. `unknown` when there are too many,
 * or the work is used up; the trimmer's rules are not looked at, so `found` still has to be made under them.
 */
export function closeGap(task: Task, values: readonly number[], sheets: number, meter: Meter): Closing {
  const used = task.stocks
    .map((_, stock) => stock)
    .filter((stock) => task.kinds.some((kind) => kind.papers.includes(stock)));
  const packing = new Packing(task.kinds.map(({ demand }) => demand));
  const worthOf = (counts: readonly number[]): number =>
    counts.reduce((sum, count, kind) => sum + count * (values[kind] as number), 0);
  const tables = used.flatMap((stock) => {
    const table = tableOf(task, stock, () => true);
    return table && table.xs.length > 0 && table.ys.length > 0 ? [{ stock, table }] : [];
  });
  if (tables.length < used.length) return { is: 'unknown' };
  let most = 0;
  for (const { table } of tables) {
    meter.spend(table.steps / SUMS_PER_STEP);
    most = Math.max(most, table.most(values));
  }
  const waste = sheets * most - worthOf(task.kinds.map(({ demand }) => demand));
  if (waste < 0) return { is: 'impossible' };
  const patterns: Pattern[] = [];
  const goal = { worths: values, least: most - waste, most: MOST_FILLINGS, allOrNone: true };
  for (const { stock, table } of tables) {
    const found = new GoalSearch(table, packing, seededRandom(stock + 1)).find(goal, meter);
    if (!found.complete) return { is: 'unknown' };
    for (const slice of found.sheets) {
      const counts = countsOf(slice, task.kinds.length);
      patterns.push({ stock, slice, packed: packing.pack(counts), waste: most - worthOf(counts) });
    }
  }
  patterns.sort((a, b) => a.waste - b.waste);
  const byKind = task.kinds.map((_, kind) => patterns.filter(({ packed }) => packing.count(packed, kind) > 0));
  const partition = new Partition(task, packing, byKind, meter);
  const found = partition.find(packing.pack(task.kinds.map(({ demand }) => demand)), sheets, waste);
  if (found) return { is: 'found', sheets: found.map(({ stock, slice }) => ({ stock, slice })) };
  return meter.empty ? { is: 'unknown' } : { is: 'impossible' };
}
