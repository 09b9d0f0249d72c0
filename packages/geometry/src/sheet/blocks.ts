import type { Stock, Task } from './kinds.js';
import type { Meter } from './meter.js';
import { waysOf } from './places.js';
import { cutPoints, floorIndex, mergeSizes } from './points.js';
import { SheetTable } from './sheet-table.js';
import { cutSlice, leafSlice, type Slice } from './slice.js';

/** A group of blanks in the least rectangle, as far as it can be part of a sheet that is worth enough. */
export interface Block {
  readonly slice: Slice;
  /** Counts of the kinds, packed by `Packing`. */
  readonly packed: Int32Array;
  readonly worth: number;
}

const WORD = 30;
/** Pairs of blocks that count for one step of work. */
const PAIRS_PER_STEP = 12;
/** Steps of work that looking up one group of blanks counts for. */
const OFFER = 3;

/**
 * Counts of kinds, each at most its demand, in a few whole numbers: adding two is adding the numbers, and a guard bit at
 * each kind shows where the sum is more than the demand.
 */
export class Packing {
  readonly words: number;
  readonly #places: readonly { readonly word: number; readonly shift: number; readonly mask: number }[];
  readonly #spare: Int32Array;
  readonly #guards: Int32Array;

  constructor(demands: readonly number[]) {
    let word = 0;
    let used = 0;
    this.#places = demands.map((demand) => {
      const bits = Math.ceil(Math.log2(demand + 1)) + 1;
      if (used + bits > WORD) {
        word += 1;
        used = 0;
      }
      const place = { word, shift: used, mask: 2 ** bits - 1 };
      used += bits;
      return place;
    });
    this.words = word + 1;
    this.#spare = new Int32Array(this.words);
    this.#guards = new Int32Array(this.words);
    demands.forEach((demand, kind) => {
      const { word: at, shift, mask } = this.#places[kind] as { word: number; shift: number; mask: number };
      const guard = (mask + 1) / 2;
      this.#spare[at] = (this.#spare[at] as number) + (guard - 1 - demand) * 2 ** shift;
      this.#guards[at] = (this.#guards[at] as number) + guard * 2 ** shift;
    });
  }

  /** One blank of `kind`. */
  single(kind: number): Int32Array {
    const packed = new Int32Array(this.words);
    const { word, shift } = this.#places[kind] as { word: number; shift: number };
    packed[word] = 2 ** shift;
    return packed;
  }

  pack(counts: readonly number[]): Int32Array {
    const packed = new Int32Array(this.words);
    counts.forEach((count, kind) => {
      const { word, shift } = this.#places[kind] as { word: number; shift: number };
      packed[word] = (packed[word] as number) + count * 2 ** shift;
    });
    return packed;
  }

  count(packed: Int32Array, kind: number): number {
    const { word, shift, mask } = this.#places[kind] as { word: number; shift: number; mask: number };
    return ((packed[word] as number) >> shift) & mask;
  }

  /** True when the two together are within the demand. */
  fits(a: Int32Array, b: Int32Array): boolean {
    for (let word = 0; word < this.words; word += 1) {
      const sum = (a[word] as number) + (b[word] as number) + (this.#spare[word] as number);
      if ((sum & (this.#guards[word] as number)) !== 0) return false;
    }
    return true;
  }

  add(a: Int32Array, b: Int32Array): Int32Array {
    const sum = new Int32Array(this.words);
    for (let word = 0; word < this.words; word += 1) sum[word] = (a[word] as number) + (b[word] as number);
    return sum;
  }
}

/** What a sheet can be worth at most beside a block that lies in its corner, for every size of block. */
export class Surroundings {
  readonly #xs: readonly number[];
  readonly #ys: readonly number[];
  readonly #indexX: ReadonlyMap<number, number>;
  readonly #indexY: ReadonlyMap<number, number>;
  readonly #beside: Float64Array;
  /** What the whole sheet can be worth at most. */
  readonly most: number;

  private constructor(table: SheetTable, width: number, height: number, values: readonly number[], meter: Meter) {
    this.most = table.most(values);
    this.#xs = table.xs.at(-1) === width ? table.xs : [...table.xs, width];
    this.#ys = table.ys.at(-1) === height ? table.ys : [...table.ys, height];
    this.#indexX = new Map(this.#xs.map((x, index) => [x, index]));
    this.#indexY = new Map(this.#ys.map((y, index) => [y, index]));
    const [columns, rows] = [this.#xs.length, this.#ys.length];
    meter.spend((columns * rows * (columns + rows)) / 2 / 20);
    const beside = new Float64Array(columns * rows);
    const floors = (points: readonly number[], of: readonly number[]): readonly Int32Array[] =>
      of.map((from) => Int32Array.from(of, (to) => floorIndex(points, to - from)));
    const [floorX, floorY] = [floors(table.xs, this.#xs), floors(table.ys, this.#ys)];
    const inX = Int32Array.from(this.#xs, (x) => floorIndex(table.xs, x));
    const inY = Int32Array.from(this.#ys, (y) => floorIndex(table.ys, y));
    for (let x = columns - 1; x >= 0; x -= 1) {
      for (let y = rows - 1; y >= 0; y -= 1) {
        let best = 0;
        for (let to = x + 1; to < columns; to += 1) {
          const sum =
            table.at((floorX[x] as Int32Array)[to] as number, inY[y] as number) + (beside[to * rows + y] as number);
          if (sum > best) best = sum;
        }
        for (let to = y + 1; to < rows; to += 1) {
          const sum =
            table.at(inX[x] as number, (floorY[y] as Int32Array)[to] as number) + (beside[x * rows + to] as number);
          if (sum > best) best = sum;
        }
        beside[x * rows + y] = best;
      }
    }
    this.#beside = beside;
  }

  /** For one stock; null when there are more than `limit` places for cuts on a side. Negative values count as 0. */
  static of(
    task: Task,
    stockIndex: number,
    values: readonly number[],
    limit: number,
    meter: Meter,
  ): Surroundings | null {
    const stock = task.stocks[stockIndex] as Stock;
    const { kerf } = task.job.trimmer;
    const ways = waysOf(task, stockIndex, () => true);
    const [width, height] = [stock.width + kerf, stock.height + kerf];
    const places = (side: 'w' | 'h', length: number) =>
      cutPoints(
        length,
        mergeSizes(ways.map((way) => ({ size: way[side], most: task.kinds[way.kind]?.demand ?? 0 }))),
        0,
        limit,
      );
    const [xs, ys] = [places('w', width), places('h', height)];
    if (!xs || !ys || xs.length === 0 || ys.length === 0) return null;
    const positive = values.map((value) => Math.max(0, value));
    return new Surroundings(new SheetTable(task.kinds.length, ways, xs, ys), width, height, positive, meter);
  }

  /** What can lie beside a block `w x h`, which is a sum of sides that the sheet has place for. */
  beside(w: number, h: number): number {
    const [x, y] = [this.#indexX.get(w), this.#indexY.get(h)];
    if (x === undefined || y === undefined) throw new Error('A block has a side that is no sum of sides.');
    return this.#beside[x * this.#ys.length + y] as number;
  }
}

/**
 * All groups of blanks, none more often than its demand, that can be part of a sheet worth at least `threshold`: blocks
 * joined side by side and below each other (Wang 1983), a block being dropped when it and the most that can lie beside
 * it are worth less (Viswanathan and Bagchi 1993), or when the same blanks are known in a rectangle no larger. Null
 * when there are more than `limit` of them or the work is used up: then nothing is known. The threshold may rise
 * meanwhile.
 */
export function allBlocks(
  task: Task,
  stockIndex: number,
  values: readonly number[],
  surroundings: Surroundings,
  packing: Packing,
  threshold: (worth: number, block: Slice) => number,
  limit: number,
  meter: Meter,
): readonly Block[] | null {
  const stock = task.stocks[stockIndex] as Stock;
  const { kerf } = task.job.trimmer;
  const [width, height] = [stock.width + kerf, stock.height + kerf];
  const blocks: Block[] = [];
  const known = new Map<string, Slice[]>();
  let least = threshold(0, leafSlice(-1, false, 0, 0));
  const offer = (slice: () => Slice, w: number, h: number, packed: Int32Array, worth: number): void => {
    if (worth + surroundings.beside(w, h) < least) return;
    meter.spend(OFFER);
    const key = packed.join();
    const same = known.get(key) ?? [];
    if (same.some((other) => other.w <= w && other.h <= h)) return;
    const made = slice();
    known.set(key, [...same.filter((other) => other.w < w || other.h < h), made]);
    least = threshold(worth, made);
    blocks.push({ slice: made, packed, worth });
  };
  for (const { kind, turned, w, h } of waysOf(task, stockIndex, () => true))
    offer(() => leafSlice(kind, turned, w, h), w, h, packing.single(kind), values[kind] ?? 0);
  for (let at = 0; at < blocks.length; at += 1) {
    const block = blocks[at] as Block;
    const { slice } = block;
    meter.spend(1 + at / PAIRS_PER_STEP);
    if (meter.empty || blocks.length > limit) return null;
    for (let other = 0; other <= at; other += 1) {
      const beside = blocks[other] as Block;
      const [across, down] = [slice.w + beside.slice.w <= width, slice.h + beside.slice.h <= height];
      if ((!across && !down) || !packing.fits(block.packed, beside.packed)) continue;
      const worth = block.worth + beside.worth;
      const packed = packing.add(block.packed, beside.packed);
      const [w, h] = [Math.max(slice.w, beside.slice.w), Math.max(slice.h, beside.slice.h)];
      if (across) offer(() => cutSlice(true, [slice, beside.slice]), slice.w + beside.slice.w, h, packed, worth);
      if (down) offer(() => cutSlice(false, [slice, beside.slice]), w, slice.h + beside.slice.h, packed, worth);
    }
  }
  return blocks;
}
