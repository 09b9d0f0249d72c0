import type { CutNode } from '../cut/cut-tree.js';
import { type Length, ticks } from '../length/length.js';
import type { Kind, Task } from './kinds.js';
import { FINE, priceLimits } from './limit-prices.js';
import { Meter } from './meter.js';
import { realise } from './realise.js';
import { SheetSearch } from './sheet-search.js';
import { tryGoals } from './try-goals.js';

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
/** Tables filled before anything is known, and after goals were in vain. */
const FIRST_TRIES = 2;
const TRIES = 80;
const REFILLS = 4_000;
/** Share of the work that is left that asking for goals may take. */
const GOALS_SHARE = 0.8;

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

/**
 * The sheet `width x height` of most value, cut edge to edge, with no more of a blank than there may be (the guillotine
 * knapsack). Without limits the answer is exact by dynamic programming (`SheetTable`). With limits a bound is taken from
 * prices of the limits, and from there down sheets are looked for goal after goal (`GoalSearch`); when the work allows to
 * answer them all, the answer is exact, else `bound` says how much better a sheet could still be.
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
  search.tryOut(meter, FIRST_TRIES);
  const priced = priceLimits(search, task, values, meter);
  const all = values.reduce((sum, value, kind) => sum + value * (task.kinds[kind]?.demand ?? 0), 0);
  let bound = priced ? Math.min(all, Math.floor(priced.bound / FINE)) : all;
  if (priced && bound > search.value) {
    const share = new Meter(GOALS_SHARE * (meter.budget - meter.spent));
    bound = Math.min(bound, tryGoals(search, task, values, priced, share));
    meter.spend(share.spent);
  }
  if (bound > search.value) {
    search.tryOut(meter, TRIES);
    search.refill(meter, REFILLS);
  }
  const tree = search.slice && realise(NO_RULES, search.slice, width, height);
  return { value: search.value, bound, proven: bound <= search.value, tree, work: Math.round(meter.spent) };
}
