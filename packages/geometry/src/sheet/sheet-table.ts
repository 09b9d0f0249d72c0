import { betweenPoints, floorIndex } from './points.js';
import type { Slice } from './slice.js';
import { cutSlice, leafSlice, pinwheelSlice } from './slice.js';

/** One kind in one direction, as a table knows it; sides with the blade's kerf. */
export interface Way {
  readonly kind: number;
  readonly turned: boolean;
  readonly w: number;
  readonly h: number;
}

/** For each point, the cuts up to its half: the index of the near part is their place, the value the far part's. */
function cutsOf(points: readonly number[]): readonly Int32Array[] {
  return points.map((point) => {
    const half = floorIndex(points, point / 2);
    return Int32Array.from({ length: half + 1 }, (_, near) => floorIndex(points, point - (points[near] as number)));
  });
}

function total(cuts: readonly Int32Array[]): number {
  return cuts.reduce((sum, list) => sum + list.length, 0);
}

/**
 * The most value that one sheet can hold when every kind may be used without limit: exact dynamic programming over the
 * given places for cuts (Gilmore and Gomory 1965; Cintra, Miyazawa, Wakabayashi and Xavier 2008), ignoring the
 * trimmer's rules, so an upper bound for any guillotine plan under them. Values are whole numbers up to 2^53 in sum,
 * so nothing is rounded. Time and room for one filling: `steps` and places x places.
 */
export class SheetTable {
  readonly #cutsX: readonly Int32Array[];
  readonly #cutsY: readonly Int32Array[];
  readonly #table: Float64Array;
  /** The cell from which on a way fits; -1 when it does not fit at all. */
  readonly #cells: readonly number[];
  #values: readonly number[] = [];
  /** Sums that one filling takes. */
  readonly steps: number;

  /** For two places, the largest place in what lies between them; -1 when there is none. */
  readonly #betweenX: readonly Int32Array[];
  readonly #betweenY: readonly Int32Array[];

  /**
   * `xs` and `ys` are the places for cuts, rising; kinds are those of `ways`, 0 to `kinds` - 1. With `stopped` a part may
   * also be cut as a pinwheel, which takes places^6 / 36 sums.
   */
  constructor(
    readonly kinds: number,
    readonly ways: readonly Way[],
    readonly xs: readonly number[],
    readonly ys: readonly number[],
    readonly stopped = false,
  ) {
    this.#betweenX = stopped ? betweenPoints(xs) : [];
    this.#betweenY = stopped ? betweenPoints(ys) : [];
    this.#cutsX = cutsOf(xs);
    this.#cutsY = cutsOf(ys);
    this.#table = new Float64Array(xs.length * ys.length);
    this.#cells = ways.map(({ w, h }) => {
      const [x, y] = [floorIndex(xs, w - 0.5) + 1, floorIndex(ys, h - 0.5) + 1];
      return x < xs.length && y < ys.length ? x * ys.length + y : -1;
    });
    this.steps = total(this.#cutsX) * ys.length + total(this.#cutsY) * xs.length;
    if (stopped) this.steps += (4 * (xs.length * ys.length) ** 3) / 36;
  }

  /** The most value of the whole sheet, for whole-numbered values of the kinds; 0 when nothing fits. */
  most(values: readonly number[]): number {
    this.#values = values;
    const table = this.#table.fill(0);
    this.ways.forEach(({ kind }, index) => {
      const cell = this.#cells[index] as number;
      if (cell >= 0) table[cell] = Math.max(table[cell] as number, values[kind] as number);
    });
    for (let x = 0; x < this.xs.length; x += 1) this.#fillColumn(x);
    return this.at(this.xs.length - 1, this.ys.length - 1);
  }

  /** All heights of one width; the narrower widths are filled already. */
  #fillColumn(x: number): void {
    const table = this.#table;
    const rows = this.ys.length;
    const here = x * rows;
    if (x > 0) {
      for (let y = 0; y < rows; y += 1) {
        const before = table[here - rows + y] as number;
        if (before > (table[here + y] as number)) table[here + y] = before;
      }
    }
    const cutsX = this.#cutsX[x] as Int32Array;
    for (let near = 0; near < cutsX.length; near += 1) {
      const left = near * rows;
      const right = (cutsX[near] as number) * rows;
      for (let y = 0; y < rows; y += 1) {
        const sum = (table[left + y] as number) + (table[right + y] as number);
        if (sum > (table[here + y] as number)) table[here + y] = sum;
      }
    }
    for (let y = 0; y < rows; y += 1) {
      let best = table[here + y] as number;
      if (y > 0 && (table[here + y - 1] as number) > best) best = table[here + y - 1] as number;
      const cutsY = this.#cutsY[y] as Int32Array;
      for (let near = 0; near < cutsY.length; near += 1) {
        const sum = (table[here + near] as number) + (table[here + (cutsY[near] as number)] as number);
        if (sum > best) best = sum;
      }
      if (this.stopped) best = Math.max(best, this.#pinwheel(x, y, best)?.sum ?? 0);
      table[here + y] = best;
    }
  }

  /** The pinwheel in a part that is worth most, if it is worth more than `least`. */
  #pinwheel(
    x: number,
    y: number,
    least: number,
  ): { readonly sum: number; readonly arms: readonly (readonly [number, number])[] } | null {
    let sum = least;
    let found: readonly (readonly [number, number])[] | null = null;
    const toX = this.#betweenX[x] as Int32Array;
    const toY = this.#betweenY[y] as Int32Array;
    for (let x2 = 1; x2 < x; x2 += 1) {
      const right = toX[x2] as number;
      if (right < 0) break;
      for (let y1 = 0; y1 < y; y1 += 1) {
        const top = this.at(x2, y1);
        const below = toY[y1] as number;
        if (top === 0 || below < 0) continue;
        for (let x1 = 0; x1 < x2; x1 += 1) {
          const left = this.at(x1, below);
          const wide = toX[x1] as number;
          const inX = (this.#betweenX[x2] as Int32Array)[x1] as number;
          for (let y2 = y1 + 1; y2 < y; y2 += 1) {
            const under = toY[y2] as number;
            if (under < 0) break;
            const inY = (this.#betweenY[y2] as Int32Array)[y1] as number;
            const all = top + left + this.at(right, y2) + this.at(wide, under) + this.at(inX, inY);
            if (all <= sum) continue;
            sum = all;
            found = [
              [x2, y1],
              [right, y2],
              [wide, under],
              [x1, below],
              [inX, inY],
            ];
          }
        }
      }
    }
    return found && { sum, arms: found };
  }

  /** The most value of the part `xs[x]` x `ys[y]` under the values asked for last; 0 for an index of -1. */
  at(x: number, y: number): number {
    return x < 0 || y < 0 ? 0 : (this.#table[x * this.ys.length + y] as number);
  }

  /** The same for a part of any size. */
  within(width: number, height: number): number {
    return this.at(floorIndex(this.xs, width), floorIndex(this.ys, height));
  }

  /** A sheet of the most value, for the values asked for last; null when it holds nothing. */
  best(): Slice | null {
    return this.#slice(this.xs.length - 1, this.ys.length - 1);
  }

  #slice(x: number, y: number): Slice | null {
    const value = this.at(x, y);
    if (value === 0) return null;
    const [width, height] = [this.xs[x] as number, this.ys[y] as number];
    const whole = this.ways.find(({ kind, w, h }) => this.#values[kind] === value && w <= width && h <= height);
    if (whole) return leafSlice(whole.kind, whole.turned, whole.w, whole.h);
    if (this.at(x - 1, y) === value) return this.#slice(x - 1, y);
    if (this.at(x, y - 1) === value) return this.#slice(x, y - 1);
    const cutsX = this.#cutsX[x] as Int32Array;
    for (let near = 0; near < cutsX.length; near += 1) {
      const far = cutsX[near] as number;
      if (this.at(near, y) + this.at(far, y) === value) return join(true, this.#slice(near, y), this.#slice(far, y));
    }
    const cutsY = this.#cutsY[y] as Int32Array;
    for (let near = 0; near < cutsY.length; near += 1) {
      const far = cutsY[near] as number;
      if (this.at(x, near) + this.at(x, far) === value) return join(false, this.#slice(x, near), this.#slice(x, far));
    }
    const pinwheel = this.stopped ? this.#pinwheel(x, y, 0) : null;
    if (pinwheel?.sum === value) return pinwheelSlice(pinwheel.arms.map(([armX, armY]) => this.#slice(armX, armY)));
    throw new Error('A cell of the table is worth more than its parts.');
  }
}

function join(vertical: boolean, near: Slice | null, far: Slice | null): Slice | null {
  return near && far ? cutSlice(vertical, [near, far]) : (near ?? far);
}
