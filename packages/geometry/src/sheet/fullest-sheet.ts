import type { CutNode } from '../cut/cut-tree.js';
import { type Length, ticks } from '../length/length.js';
import { allBlocks, Packing, Surroundings } from './blocks.js';
import { valuableSlice } from './bounded-table.js';
import type { Kind, Task } from './kinds.js';
import { Meter } from './meter.js';
import { tableOf } from './places.js';
import { seededRandom } from './random.js';
import { realise } from './realise.js';
import { Refill } from './refill.js';
import { countsOf, type Slice } from './slice.js';

/** A blank that is worth something. `most` null = as many as fit; `value` is a whole number. */
export interface ValuedBlank {
  readonly width: Length;
  readonly height: Length;
  readonly value: number;
  readonly most: number | null;
  readonly turn: boolean;
}

/** The sheet of most value that was found, and what is known about better ones. */
export interface FullestSheet {
  readonly value: number;
  /** No sheet is worth more than this. */
  readonly bound: number;
  readonly proven: boolean;
  /** The cuts; leaves are named by the index of their blank. Null when nothing fits. */
  readonly tree: CutNode | null;
  readonly work: number;
}

/** Work for one sheet when none is named. */
const DEFAULT_SHEET_WORK = 20_000_000;
/** Values are whole numbers of this part of the smallest difference between two values. */
const FINE = 64;
const WEIGHINGS = 120;
const TRIES = 80;
const REFILLS = 4_000;
const TABLE = { points: 3_100, steps: 16_000_000_000 };
const SUMS_PER_STEP = 50;
/** Blocks up to which all are made, and places for cuts on a side. */
const MOST_BLOCKS = 400_000;
const MOST_PLACES = 1_200;

const NO_RULES = {
  bladeLength: null,
  narrowestStrip: ticks(0),
  thinnestTrim: ticks(0),
  kerf: ticks(0),
  rulerStep: null,
  stoppedCuts: false,
};

function taskFor(width: Length, height: Length, blanks: readonly ValuedBlank[]): Task {
  const none = ticks(0);
  const margins = { top: none, right: none, bottom: none, left: none };
  const paper = { id: 'sheet', width, height, sheets: 1, directional: false, price: null, margins };
  const kinds = blanks.map(
    (blank, index): Kind => ({
      width: blank.width,
      height: blank.height,
      turn: blank.turn,
      papers: [0],
      demand: Math.min(
        blank.most ?? Number.POSITIVE_INFINITY,
        Math.floor((width * height) / (blank.width * blank.height)),
      ),
      members: [{ id: String(index), quantity: 1 }],
    }),
  );
  return {
    job: { trimmer: NO_RULES, papers: [paper], blanks: [] },
    kinds,
    stocks: [{ paper, width, height, sheets: 1, cost: 1 }],
  };
}

/** Search for one sheet of most value; keeps the best. */
class SheetSearch {
  value = 0;
  slice: Slice | null = null;

  constructor(
    private readonly task: Task,
    private readonly values: readonly number[],
  ) {}

  worth(counts: readonly number[]): number {
    return counts.reduce((sum, count, kind) => sum + count * (this.values[kind] ?? 0), 0);
  }

  offer(slice: Slice): void {
    const counts = countsOf(slice, this.task.kinds.length);
    if (counts.some((count, kind) => count > (this.task.kinds[kind]?.demand ?? 0))) return;
    const value = this.worth(counts);
    if (value <= this.value) return;
    this.value = value;
    this.slice = slice;
  }

  /** Sheets by a table that minds the numbers, for values shaken a little. */
  tryOut(meter: Meter): void {
    const random = seededRandom(this.task.kinds.length * 31 + 1);
    const demands = this.task.kinds.map(({ demand }) => demand);
    for (let round = 0; round < TRIES && !meter.empty; round += 1) {
      const shaken = round === 0 ? this.values : this.values.map((value) => value * (0.85 + 0.3 * random()));
      const { best, work } = valuableSlice(this.task, 0, demands, shaken, round % 4 === 0 ? 60 : 30);
      meter.spend(work);
      if (best) this.offer(best.slice);
    }
  }

  /** Takes blanks out of the best sheet and puts others in. */
  refill(meter: Meter, rounds: number): void {
    const random = seededRandom(this.task.kinds.length * 37 + 5);
    const refill = new Refill(this.task, { stocks: [0], roots: [this.slice] }, random, meter, this.values);
    refill.run(rounds);
    for (const root of refill.best.roots) if (root) this.offer(root);
  }
}

/** Prices that make kinds dearer of which a sheet without limits would take too many, and the bound they give. */
interface Priced {
  readonly prices: readonly number[];
  readonly bound: number;
}

/**
 * Lagrangian prices of the limits, by subgradient steps: for any prices p >= 0, the most value of a sheet without limits
 * where each kind is worth its value less its price, and the prices of all that the limits allow, is a bound. In whole
 * numbers of 1/64.
 */
function priceLimits(search: SheetSearch, task: Task, values: readonly number[], meter: Meter): Priced | null {
  const table = tableOf(task, 0, () => true, TABLE);
  if (!table) return null;
  const demands = task.kinds.map(({ demand }) => demand);
  let best: Priced | null = null;
  let prices = values.map(() => 0);
  let stride = 1;
  for (let round = 0; round < WEIGHINGS; round += 1) {
    if (round > 0 && (meter.empty || (best && Math.floor(best.bound / FINE) <= search.value))) break;
    meter.spend(table.steps / SUMS_PER_STEP);
    const reduced = values.map((value, kind) => Math.max(0, value * FINE - (prices[kind] as number)));
    const bound = table.most(reduced) + prices.reduce((sum, price, kind) => sum + price * (demands[kind] as number), 0);
    if (!best || bound < best.bound) best = { prices, bound };
    else if (round % 6 === 5) stride *= 0.7;
    const slice = table.best();
    const counts = slice ? countsOf(slice, values.length) : values.map(() => 0);
    if (slice) search.offer(slice);
    const excess = counts.map((count, kind) => count - (demands[kind] as number));
    const moved = excess.map((over, kind) => ((prices[kind] as number) > 0 || over > 0 ? over : 0));
    const length = moved.reduce((sum, over) => sum + over * over, 0);
    if (length === 0) break;
    const step = (stride * (bound - search.value * FINE)) / length;
    prices = prices.map((price, kind) => Math.max(0, Math.round(price + step * (moved[kind] as number))));
  }
  return best;
}

/**
 * The sheet `width x height` of most value, cut edge to edge, with no more of a blank than there may be (the guillotine
 * knapsack). Without limits the answer is exact by dynamic programming (`SheetTable`). With limits a bound is taken from
 * prices of the limits, and all groups of blanks are made that could be part of a better sheet; when the work allows to make
 * them all, the answer is exact, else `bound` says how much better a sheet could still be.
 */
export function fullestSheet(
  width: Length,
  height: Length,
  blanks: readonly ValuedBlank[],
  work = DEFAULT_SHEET_WORK,
): FullestSheet {
  const fitting = blanks.map(
    (blank) =>
      (blank.width <= width && blank.height <= height) ||
      (blank.turn && blank.height <= width && blank.width <= height),
  );
  const task = taskFor(
    width,
    height,
    blanks.map((blank, index) => (fitting[index] ? blank : { ...blank, most: 0 })),
  );
  const values = blanks.map(({ value }) => value);
  const meter = new Meter(work);
  const search = new SheetSearch(task, values);
  search.tryOut(meter);
  search.refill(meter, REFILLS);
  const priced = priceLimits(search, task, values, meter);
  const all = values.reduce((sum, value, kind) => sum + value * (task.kinds[kind]?.demand ?? 0), 0);
  let bound = priced ? Math.min(all, Math.floor(priced.bound / FINE)) : all;
  if (priced && bound > search.value && tryAll(search, task, values, priced, meter)) bound = search.value;
  const tree = search.slice && realise(NO_RULES, search.slice, width, height);
  return { value: search.value, bound, proven: bound <= search.value, tree, work: Math.round(meter.spent) };
}

/** Makes all groups of blanks that a better sheet could hold; true when that could be done, and the best is known. */
function tryAll(search: SheetSearch, task: Task, values: readonly number[], { prices }: Priced, meter: Meter): boolean {
  const reduced = values.map((value, kind) => value * FINE - (prices[kind] as number));
  const allowance = prices.reduce((sum, price, kind) => sum + price * (task.kinds[kind]?.demand ?? 0), 0);
  const surroundings = Surroundings.of(task, 0, reduced, MOST_PLACES, meter);
  if (!surroundings) return false;
  const packing = new Packing(task.kinds.map(({ demand }) => demand));
  const better = (_worth: number, slice: Slice): number => {
    if (slice.kind >= 0 || slice.parts.length > 0) search.offer(slice);
    return (search.value + 1) * FINE - allowance;
  };
  return allBlocks(task, 0, reduced, surroundings, packing, better, MOST_BLOCKS, meter) !== null;
}
