import { type Filling, KeptFillings } from './kept-fillings.js';
import type { Meter } from './meter.js';
import type { Packing } from './packing.js';
import { betweenPoints, floorIndex } from './points.js';
import type { SheetTable } from './sheet-table.js';
import { cutSlice, leafSlice, type Slice } from './slice.js';

/** Cuts looked at, and pairs of fillings, that count for one step of work. */
const CUTS_PER_STEP = 30;
const PAIRS_PER_STEP = 4;

/** Fillings of all parts together that are kept at the most, so that room for them does not run out. */
const MOST_KEPT = 1_500_000;

/** Two parts that a part may be cut into. */
interface Cut {
  readonly vertical: boolean;
  readonly near: number;
  readonly far: number;
}

/** What the search is asked for. */
export interface Goal {
  /** What each kind is worth, at which the table was filled last (less than nothing counted as nothing there). */
  readonly worths: readonly number[];
  /** What the sheet is to be worth at least. */
  readonly least: number;
  /** Fillings of a part that are kept. */
  readonly most: number;
  /** True when sheets are of no use unless they are all: the search ends as soon as they cannot be. */
  readonly allOrNone: boolean;
}

/** What a search came to. */
export interface GoalFinding {
  /** Sheets of the goal, those worth most first; different numbers of the kinds each. */
  readonly sheets: readonly Slice[];
  /** True when these are all: then no other numbers of the kinds are worth the goal. */
  readonly complete: boolean;
}

/**
 * Looks for sheets that are worth a goal, no kind more often than its demand. What lies around a part and the part itself
 * can be worth no more than the table says without limits; a part is looked at only where both together reach the goal
 * (the bound of Viswanathan and Bagchi 1993), which leaves few parts when the goal is high. From the smallest on, each of
 * those remembers its fillings, the ones that are worth most.
 *
 * Where none had to be left out the answer is complete, since the places for cuts of a table are enough for all that can be
 * cut. That is plain for sums of sides, each used as often as there is of it. Of raster points in a length C: every one is the
 * largest sum within C - t for some sum t. If sums n and m lie side by side in such a part s, the largest sum within C - m - t
 * is a raster point r no less than n, the largest within C - r - t one no less than m, and both together are no more than s.
 */
export class GoalSearch {
  readonly #xs: readonly number[];
  readonly #ys: readonly number[];
  readonly #rows: number;
  readonly #inX: readonly Int32Array[];
  readonly #inY: readonly Int32Array[];
  readonly #ways: ReadonlyMap<number, readonly number[]>;
  readonly #marks: readonly number[];
  #around = new Float64Array(0);
  #cuts = new Map<number, Cut[]>();
  #fillings = new Map<number, readonly Filling[]>();
  #complete = true;

  constructor(
    private readonly table: SheetTable,
    private readonly packing: Packing,
    random: () => number,
  ) {
    this.#xs = table.xs;
    this.#ys = table.ys;
    this.#rows = table.ys.length;
    this.#inX = betweenPoints(table.xs);
    this.#inY = betweenPoints(table.ys);
    const ways = new Map<number, number[]>();
    table.ways.forEach(({ w, h }, way) => {
      const [x, y] = [floorIndex(this.#xs, w - 0.5) + 1, floorIndex(this.#ys, h - 0.5) + 1];
      if (x >= this.#xs.length || y >= this.#rows) return;
      const cell = x * this.#rows + y;
      ways.set(cell, [...(ways.get(cell) ?? []), way]);
    });
    this.#ways = ways;
    this.#marks = Array.from({ length: table.kinds }, () => Math.floor(random() * 2 ** 36));
  }

  /** Sheets of `goal`, as far as the work allows. */
  find(goal: Goal, meter: Meter): GoalFinding {
    this.#complete = true;
    this.#fillings = new Map();
    this.#lookAround(goal.least, meter);
    let count = 0;
    for (const cell of [...this.#cuts.keys()].sort((a, b) => a - b)) {
      if (count > MOST_KEPT) this.#complete = false;
      if (count > MOST_KEPT || (goal.allOrNone && (!this.#complete || meter.empty))) break;
      const fillings = this.#fill(cell, goal, meter);
      this.#fillings.set(cell, fillings);
      count += fillings.length;
    }
    const whole = this.#fillings.get(this.#xs.length * this.#rows - 1) ?? [];
    return { sheets: whole.map((filling) => this.#sliceOf(filling)), complete: this.#complete && !meter.empty };
  }

  /** For each part that can belong to such a sheet, what can lie around it, and how it may be cut; from the whole sheet down. */
  #lookAround(least: number, meter: Meter): void {
    const { table } = this;
    const rows = this.#rows;
    const last = this.#xs.length * rows - 1;
    const around = new Float64Array(last + 1).fill(-1);
    this.#around = around;
    around[last] = 0;
    this.#cuts = new Map();
    const reach = (cell: number, worth: number): void => {
      if (worth > (around[cell] as number)) around[cell] = worth;
    };
    for (let x = this.#xs.length - 1; x >= 0; x -= 1) {
      if (meter.empty) return;
      for (let y = rows - 1; y >= 0; y -= 1) {
        const cell = x * rows + y;
        const beside = around[cell] as number;
        if (beside < 0 || table.at(x, y) + beside < least) continue;
        const cuts: Cut[] = [];
        this.#cuts.set(cell, cuts);
        if (table.at(x - 1, y) + beside >= least && x > 0) reach(cell - rows, beside);
        if (table.at(x, y - 1) + beside >= least && y > 0) reach(cell - 1, beside);
        const inX = this.#inX[x] as Int32Array;
        const inY = this.#inY[y] as Int32Array;
        meter.spend((x + y + 2) / CUTS_PER_STEP / 2);
        for (let near = 0; near < x; near += 1) {
          const far = inX[near] as number;
          if (far < near) break;
          const [a, b] = [table.at(near, y), table.at(far, y)];
          if (a + b + beside < least) continue;
          cuts.push({ vertical: true, near: near * rows + y, far: far * rows + y });
          reach(near * rows + y, beside + b);
          reach(far * rows + y, beside + a);
        }
        for (let near = 0; near < y; near += 1) {
          const far = inY[near] as number;
          if (far < near) break;
          const [a, b] = [table.at(x, near), table.at(x, far)];
          if (a + b + beside < least) continue;
          cuts.push({ vertical: false, near: x * rows + near, far: x * rows + far });
          reach(x * rows + near, beside + b);
          reach(x * rows + far, beside + a);
        }
      }
    }
  }

  /** The fillings of a part that are worth most, the smaller parts being filled already. */
  #fill(cell: number, { worths, least, most }: Goal, meter: Meter): readonly Filling[] {
    const { packing, table } = this;
    const kept = new KeptFillings(least - (this.#around[cell] as number), most);
    for (const way of this.#ways.get(cell) ?? []) {
      const kind = table.ways[way]?.kind as number;
      const [worth, key] = [worths[kind] as number, this.#marks[kind] as number];
      const packed = packing.single(kind);
      if (worth < kept.floor || kept.knows(key, packed, null)) continue;
      kept.keep({ packed, worth, key, way, vertical: false, first: null, second: null });
    }
    for (const before of [cell - this.#rows, cell % this.#rows > 0 ? cell - 1 : -1])
      for (const filling of this.#fillings.get(before) ?? []) {
        if (filling.worth < kept.floor) break;
        if (!kept.knows(filling.key, filling.packed, null)) kept.keep(filling);
      }
    for (const { vertical, near, far } of this.#cuts.get(cell) ?? []) {
      if (meter.empty) break;
      const [left, right] = [this.#fillings.get(near), this.#fillings.get(far)];
      const [top] = right ?? [];
      if (!left || !right || !top) continue;
      for (const first of left) {
        if (first.worth + top.worth < kept.floor) break;
        for (const second of right) {
          const worth = first.worth + second.worth;
          if (worth < kept.floor) break;
          meter.spend(1 / PAIRS_PER_STEP);
          const key = first.key + second.key;
          if (kept.knows(key, first.packed, second.packed) || !packing.fits(first.packed, second.packed)) continue;
          kept.keep({ packed: packing.add(first.packed, second.packed), worth, key, way: -1, vertical, first, second });
        }
      }
    }
    const all = kept.all();
    if (kept.short) this.#complete = false;
    return all;
  }

  #sliceOf({ way, vertical, first, second }: Filling): Slice {
    if (first && second) return cutSlice(vertical, [this.#sliceOf(first), this.#sliceOf(second)]);
    const { kind, turned, w, h } = this.table.ways[way] as { kind: number; turned: boolean; w: number; h: number };
    return leafSlice(kind, turned, w, h);
  }
}
