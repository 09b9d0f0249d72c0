import type { Task } from './kinds.js';
import { mayStop, waysOf } from './places.js';
import { betweenPoints, cutPoints, fewPoints, floorIndex, mergeSizes } from './points.js';
import type { Way } from './sheet-table.js';
import { cutSlice, leafSlice, pinwheelSlice, type Slice } from './slice.js';

/** A sheet that is worth much: its blanks, how many of each kind, and their value. */
export interface ValuedSlice {
  readonly slice: Slice;
  readonly counts: readonly number[];
  readonly value: number;
}

/** How each cell came about: a way, a cut, or a smaller cell. */
interface Cells {
  readonly value: Float64Array;
  readonly counts: Uint16Array;
  /** A bit for each kind that it holds, every 32nd the same; parts without a bit in common hold no kind in common. */
  readonly held: Int32Array;
  /** Index of a way, of a near part in x or y (with its far part), as `how` says. */
  readonly how: Uint8Array;
  readonly near: Int32Array;
  readonly far: Int32Array;
}

const WAY = 1;
const ACROSS = 2;
const DOWN = 3;
const SAME = 4;
const TURN = 5;

/** What is not more than this many times as much counts as equal. */
const MORE = 1 + 1e-12;
/** Places times places up to which pinwheels are looked for in every part. */
const MOST_STOPPED = 16 * 16;

/** Steps of work that looking at so many joined parts counts for. */
const JOINS_PER_STEP = 15;

/**
 * A sheet of much value that holds no kind more often than `left` says: dynamic programming over places for cuts, each
 * size of part remembering one way to fill it; where two parts together hold more than is wanted, the surplus counts for
 * nothing. With that it is a heuristic: the value is what the sheet really holds, not a proven maximum (idea as in
 * Morabito and Pureza 2010, from memory). The trimmer's rules are not looked at. Null when nothing fits. `points` bounds
 * the places on each side; cost: places^3 x kinds at the worst.
 */
export function valuableSlice(
  task: Task,
  stockIndex: number,
  left: readonly number[],
  values: readonly number[],
  points: number,
): { readonly best: ValuedSlice | null; readonly work: number } {
  const stock = task.stocks[stockIndex] as Task['stocks'][number];
  const { kerf } = task.job.trimmer;
  const ways = waysOf(task, stockIndex, (kind) => (left[kind] ?? 0) > 0);
  const places = (side: 'w' | 'h', length: number): readonly number[] => {
    const sizes = mergeSizes(ways.map((way) => ({ size: way[side], most: left[way.kind] ?? 0 })));
    return cutPoints(length, sizes, 0, points) ?? fewPoints(length, sizes, 0, points);
  };
  const xs = places('w', stock.width + kerf);
  const ys = places('h', stock.height + kerf);
  if (xs.length === 0 || ys.length === 0) return { best: null, work: 1 };
  const stopped = mayStop(task) && xs.length * ys.length <= MOST_STOPPED;
  const table = new Filling(ways, xs, ys, left, values, stopped);
  return { best: table.best(), work: 1 + table.joins / JOINS_PER_STEP };
}

class Filling {
  readonly #cells: Cells;
  readonly #kinds: number;
  readonly #betweenX: readonly Int32Array[];
  readonly #betweenY: readonly Int32Array[];
  /** The cells of the arms of each pinwheel that was better than what there was. */
  readonly #arms: (readonly number[])[] = [];
  joins = 0;

  constructor(
    private readonly ways: readonly Way[],
    private readonly xs: readonly number[],
    private readonly ys: readonly number[],
    private readonly left: readonly number[],
    private readonly values: readonly number[],
    private readonly stopped: boolean,
  ) {
    const size = xs.length * ys.length;
    this.#kinds = left.length;
    this.#cells = {
      value: new Float64Array(size),
      counts: new Uint16Array(size * left.length),
      held: new Int32Array(size),
      how: new Uint8Array(size),
      near: new Int32Array(size),
      far: new Int32Array(size),
    };
    this.#betweenX = betweenPoints(xs);
    this.#betweenY = betweenPoints(ys);
    ways.forEach(({ kind, w, h }, way) => {
      const [x, y] = [floorIndex(xs, w - 0.5) + 1, floorIndex(ys, h - 0.5) + 1];
      if (x >= xs.length || y >= ys.length) return;
      const cell = x * ys.length + y;
      if ((values[kind] as number) > (this.#cells.value[cell] as number)) this.#single(cell, way);
    });
    for (let x = 0; x < xs.length; x += 1) for (let y = 0; y < ys.length; y += 1) this.#fill(x, y);
  }

  #fill(x: number, y: number): void {
    const rows = this.ys.length;
    const cell = x * rows + y;
    const { value } = this.#cells;
    const [width, height] = [this.xs[x] as number, this.ys[y] as number];
    if (x > 0 && (value[cell - rows] as number) > (value[cell] as number)) this.#copy(cell, cell - rows);
    if (y > 0 && (value[cell - 1] as number) > (value[cell] as number)) this.#copy(cell, cell - 1);
    const inX = this.#betweenX[x] as Int32Array;
    for (let near = 0; near < x && 2 * (this.xs[near] as number) <= width; near += 1) {
      const far = inX[near] as number;
      if (far < 0) break;
      this.joins += 1;
      const sum = (value[near * rows + y] as number) + (value[far * rows + y] as number);
      if (sum > (value[cell] as number) * MORE) this.#join(cell, near * rows + y, far * rows + y, ACROSS);
    }
    const inY = this.#betweenY[y] as Int32Array;
    for (let near = 0; near < y && 2 * (this.ys[near] as number) <= height; near += 1) {
      const far = inY[near] as number;
      if (far < 0) break;
      this.joins += 1;
      const sum = (value[x * rows + near] as number) + (value[x * rows + far] as number);
      if (sum > (value[cell] as number) * MORE) this.#join(cell, x * rows + near, x * rows + far, DOWN);
    }
    if (this.stopped) this.#turn(x, y);
  }

  /** The pinwheels of a part: arms as cells, the cuts at every two places on either side. */
  #turn(x: number, y: number): void {
    const rows = this.ys.length;
    const { value } = this.#cells;
    const betweenX = (from: number, to: number): number => (this.#betweenX[to] as Int32Array)[from] as number;
    const betweenY = (from: number, to: number): number => (this.#betweenY[to] as Int32Array)[from] as number;
    const worth = (column: number, row: number): number =>
      column < 0 || row < 0 ? 0 : (value[column * rows + row] as number);
    const cell = x * rows + y;
    for (let x2 = 1; x2 < x; x2 += 1) {
      const right = betweenX(x2, x);
      if (right < 0) break;
      for (let y1 = 0; y1 < y; y1 += 1) {
        const below = betweenY(y1, y);
        if (below < 0) break;
        for (let x1 = 0; x1 < x2; x1 += 1) {
          const [wide, inX] = [betweenX(x1, x), betweenX(x1, x2)];
          for (let y2 = y1 + 1; y2 < y; y2 += 1) {
            const under = betweenY(y2, y);
            if (under < 0) break;
            this.joins += 1;
            const inY = betweenY(y1, y2);
            const sum = worth(x2, y1) + worth(x1, below) + worth(right, y2) + worth(wide, under) + worth(inX, inY);
            if (sum <= (value[cell] as number) * MORE) continue;
            const arms = [
              [x2, y1],
              [right, y2],
              [wide, under],
              [x1, below],
              [inX, inY],
            ].map(([column = -1, row = -1]) => (column < 0 || row < 0 ? -1 : column * rows + row));
            this.#joinArms(cell, arms);
          }
        }
      }
    }
  }

  #joinArms(cell: number, arms: readonly number[]): void {
    const { value, counts, held } = this.#cells;
    const total = this.left.map((most, kind) =>
      Math.min(
        most,
        arms.reduce((sum, arm) => sum + (arm < 0 ? 0 : (counts[arm * this.#kinds + kind] as number)), 0),
      ),
    );
    const sum = total.reduce((worth, count, kind) => worth + count * (this.values[kind] as number), 0);
    if (sum <= (value[cell] as number) * MORE) return;
    value[cell] = sum;
    counts.set(total, cell * this.#kinds);
    held[cell] = arms.reduce((bits, arm) => bits | (arm < 0 ? 0 : (held[arm] as number)), 0);
    this.#cells.how[cell] = TURN;
    this.#cells.near[cell] = this.#arms.length;
    this.#arms.push(arms);
  }

  #copy(cell: number, from: number): void {
    const { value, counts, held, how, near } = this.#cells;
    value[cell] = value[from] as number;
    held[cell] = held[from] as number;
    how[cell] = SAME;
    near[cell] = from;
    counts.copyWithin(cell * this.#kinds, from * this.#kinds, (from + 1) * this.#kinds);
  }

  #single(cell: number, way: number): void {
    const { value, counts, held, how, near } = this.#cells;
    const { kind } = this.ways[way] as Way;
    value[cell] = this.values[kind] as number;
    how[cell] = WAY;
    near[cell] = way;
    counts.fill(0, cell * this.#kinds, (cell + 1) * this.#kinds);
    counts[cell * this.#kinds + kind] = 1;
    held[cell] = 1 << (kind & 31);
  }

  #join(cell: number, near: number, far: number, how: number): void {
    const { value, counts, held } = this.#cells;
    const kinds = this.#kinds;
    let sum = (value[near] as number) + (value[far] as number);
    if (((held[near] as number) & (held[far] as number)) !== 0) {
      // What is more than there may be of a kind counts for nothing.
      this.joins += kinds / 4;
      for (let kind = 0; kind < kinds; kind += 1) {
        const most = this.left[kind] as number;
        const count = (counts[near * kinds + kind] as number) + (counts[far * kinds + kind] as number);
        if (count > most) sum -= (count - most) * (this.values[kind] as number);
      }
      if (sum <= (value[cell] as number) * MORE) return;
    }
    this.joins += kinds / 4;
    value[cell] = sum;
    held[cell] = (held[near] as number) | (held[far] as number);
    for (let kind = 0; kind < kinds; kind += 1) {
      const count = (counts[near * kinds + kind] as number) + (counts[far * kinds + kind] as number);
      counts[cell * kinds + kind] = Math.min(count, this.left[kind] as number);
    }
    this.#cells.how[cell] = how;
    this.#cells.near[cell] = near;
    this.#cells.far[cell] = far;
  }

  best(): ValuedSlice | null {
    const cell = this.xs.length * this.ys.length - 1;
    const open = [...this.left];
    const slice = this.#slice(cell, open);
    if (!slice) return null;
    const counts = open.map((left, kind) => (this.left[kind] as number) - left);
    return {
      slice,
      counts,
      value: counts.reduce((sum, count, kind) => sum + count * (this.values[kind] as number), 0),
    };
  }

  /** What a cell holds, as far as `open` is not used up. */
  #slice(cell: number, open: number[]): Slice | null {
    const near = this.#cells.near[cell] as number;
    switch (this.#cells.how[cell]) {
      case WAY: {
        const { kind, turned, w, h } = this.ways[near] as Way;
        if ((open[kind] as number) === 0) return null;
        open[kind] = (open[kind] as number) - 1;
        return leafSlice(kind, turned, w, h);
      }
      case SAME:
        return this.#slice(near, open);
      case ACROSS:
      case DOWN: {
        const parts = [this.#slice(near, open), this.#slice(this.#cells.far[cell] as number, open)].filter(
          (part) => part !== null,
        );
        return parts.length === 0 ? null : cutSlice(this.#cells.how[cell] === ACROSS, parts);
      }
      case TURN:
        return pinwheelSlice((this.#arms[near] ?? []).map((arm) => (arm < 0 ? null : this.#slice(arm, open))));
      default:
        return null;
    }
  }
}
