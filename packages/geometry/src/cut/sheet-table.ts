import { mayTurn, type Stock, type Task } from './kinds.js';
import { cutPoints, mergeSizes } from './points.js';

/** Most places for cuts on a side that a table is made for. */
const MOST_POINTS = 260;
/** Most steps that filling it may take. */
const MOST_STEPS = 4_000_000;

/** One kind in one direction, the blade's kerf added to both sides. */
interface Way {
  readonly kind: number;
  readonly w: number;
  readonly h: number;
}

/** Index of the largest point not beyond `at`; -1 when there is none. */
function floorIndex(points: readonly number[], at: number): number {
  let low = 0;
  let high = points.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle] ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}

/** For each point, the cuts up to its half: the index of the near part is their place, the value the far part's. */
function cutsOf(points: readonly number[]): readonly Int32Array[] {
  return points.map((point) => {
    const half = floorIndex(points, point / 2);
    return Int32Array.from({ length: half + 1 }, (_, near) => floorIndex(points, point - (points[near] ?? 0)));
  });
}

/**
 * The most value that one sheet can hold when every kind may be used without limit: exact dynamic programming over
 * normal patterns (Gilmore and Gomory 1965; Cintra, Miyazawa, Wakabayashi and Xavier 2008), ignoring the trimmer's
 * rules, so an upper bound for any guillotine plan under them. Values are whole numbers, so nothing is rounded.
 */
export class SheetTable {
  readonly #ways: readonly Way[];
  readonly #xs: readonly number[];
  readonly #ys: readonly number[];
  readonly #cutsX: readonly Int32Array[];
  readonly #cutsY: readonly Int32Array[];
  readonly #table: Float64Array;
  #values: readonly number[] = [];

  private constructor(
    private readonly kinds: number,
    ways: readonly Way[],
    xs: readonly number[],
    ys: readonly number[],
  ) {
    this.#ways = ways;
    this.#xs = xs;
    this.#ys = ys;
    this.#cutsX = cutsOf(xs);
    this.#cutsY = cutsOf(ys);
    this.#table = new Float64Array(xs.length * ys.length);
  }

  /** A table for the kinds that `wanted` names, on one stock; null when it would be too large. */
  static of(task: Task, stockIndex: number, wanted: (kind: number) => boolean): SheetTable | null {
    const stock = task.stocks[stockIndex] as Stock;
    const { kerf } = task.job.trimmer;
    const ways = task.kinds.flatMap((kind, index): Way[] => {
      if (!wanted(index) || !kind.papers.includes(stockIndex)) return [];
      const plain = { kind: index, w: kind.width + kerf, h: kind.height + kerf };
      return mayTurn(kind, stock) ? [plain, { kind: index, w: plain.h, h: plain.w }] : [plain];
    });
    const endless = (side: 'w' | 'h') =>
      mergeSizes(ways.map((way) => ({ size: way[side], most: Number.POSITIVE_INFINITY })));
    const xs = cutPoints(stock.width + kerf, endless('w'), 0, MOST_POINTS);
    const ys = cutPoints(stock.height + kerf, endless('h'), 0, MOST_POINTS);
    if (!xs || !ys || (xs.length * ys.length * (xs.length + ys.length)) / 4 > MOST_STEPS) return null;
    return new SheetTable(task.kinds.length, ways, xs, ys);
  }

  /** The most value of the whole sheet, for whole-numbered values of the kinds. */
  most(values: readonly number[]): number {
    this.#values = values;
    const table = this.#table;
    const rows = this.#ys.length;
    for (let x = 0; x < this.#xs.length; x += 1) {
      const cutsX = this.#cutsX[x] as Int32Array;
      for (let y = 0; y < rows; y += 1) {
        let best = 0;
        for (const { kind, w, h } of this.#ways) {
          const value = values[kind] as number;
          if (value > best && w <= (this.#xs[x] as number) && h <= (this.#ys[y] as number)) best = value;
        }
        for (let near = 0; near < cutsX.length; near += 1) {
          const sum = (table[near * rows + y] as number) + this.#at(cutsX[near] as number, y);
          if (sum > best) best = sum;
        }
        const cutsY = this.#cutsY[y] as Int32Array;
        for (let near = 0; near < cutsY.length; near += 1) {
          const sum = (table[x * rows + near] as number) + this.#at(x, cutsY[near] as number);
          if (sum > best) best = sum;
        }
        table[x * rows + y] = best;
      }
    }
    return this.#at(this.#xs.length - 1, rows - 1);
  }

  #at(x: number, y: number): number {
    return x < 0 || y < 0 ? 0 : (this.#table[x * this.#ys.length + y] as number);
  }

  /** How many of each kind a sheet of the most value holds, for the values asked for last. */
  counts(): readonly number[] {
    const counts = Array.from({ length: this.kinds }, () => 0);
    const waiting: [number, number][] = [[this.#xs.length - 1, this.#ys.length - 1]];
    for (let next = waiting.pop(); next; next = waiting.pop()) waiting.push(...this.#parts(next[0], next[1], counts));
    return counts;
  }

  /** The two parts of a cell that is cut; none for a cell that is a blank (which is counted) or worth nothing. */
  #parts(x: number, y: number, counts: number[]): [number, number][] {
    const value = this.#at(x, y);
    if (value === 0) return [];
    const [width, height] = [this.#xs[x] as number, this.#ys[y] as number];
    const whole = this.#ways.find(({ kind, w, h }) => this.#values[kind] === value && w <= width && h <= height);
    if (whole) {
      counts[whole.kind] = (counts[whole.kind] ?? 0) + 1;
      return [];
    }
    for (const [near, far] of (this.#cutsX[x] as Int32Array).entries()) {
      if (this.#at(near, y) + this.#at(far, y) === value)
        return [
          [near, y],
          [far, y],
        ];
    }
    for (const [near, far] of (this.#cutsY[y] as Int32Array).entries()) {
      if (this.#at(x, near) + this.#at(x, far) === value)
        return [
          [x, near],
          [x, far],
        ];
    }
    throw new Error('A cell of the table is worth more than its parts.');
  }
}
