import type { CutNode } from '../cut/cut-tree.js';
import { cutAllowed, fitsOf } from '../cut/fit.js';
import { ticks } from '../length/length.js';
import { finish, freePart, placeInto } from './growing.js';
import { mayTurn, type Stock, type Task } from './kinds.js';
import type { Meter } from './meter.js';
import { cutPoints, fewPoints, mergeSizes } from './points.js';

/** The best found way to cut one sheet: what it is worth, how many of each kind, and its tree. */
export interface Pattern {
  readonly value: number;
  readonly counts: readonly number[];
  readonly tree: CutNode;
}

type Choice =
  | { readonly is: 'nothing' }
  | { readonly is: 'blank'; readonly kind: number; readonly turned: boolean }
  | { readonly is: 'cut'; readonly vertical: boolean; readonly at: number };

interface Cell {
  readonly value: number;
  readonly counts: readonly number[];
  readonly choice: Choice;
}

/** Cuts within cuts that are looked into; no sheet of paper needs as many. */
const DEEPEST = 300;

/** One kind in one direction, as the search tries it. */
interface Way {
  readonly kind: number;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
}

/**
 * Searches one sheet for the pattern of most value, no kind more often than `demand`. Parts are remembered by size; where
 * two parts together hold more of a kind than is wanted, the surplus counts for nothing. With that it is a heuristic:
 * the value is what the tree really holds, not a proven maximum (idea as in Morabito and Pureza 2010, from memory).
 * Cost: parts x cuts x kinds; `points` bounds the number of places for cuts on each side.
 */
export class PatternSearch {
  readonly #cells = new Map<number, Cell>();
  readonly #ways: readonly Way[];
  readonly #nothing: Cell;
  readonly #xs: readonly number[];
  readonly #ys: readonly number[];
  readonly #least: readonly [number, number];
  #depth = 0;

  constructor(
    private readonly task: Task,
    private readonly stock: Stock,
    private readonly index: number,
    private readonly demand: readonly number[],
    private readonly values: readonly number[],
    private readonly meter: Meter,
    points: number,
  ) {
    this.#ways = this.#allWays();
    this.#nothing = { value: 0, counts: demand.map(() => 0), choice: { is: 'nothing' } };
    this.#xs = this.#points(stock.width, 'width', points);
    this.#ys = this.#points(stock.height, 'height', points);
    this.#least = [Math.min(...this.#ways.map((way) => way.width)), Math.min(...this.#ways.map((way) => way.height))];
  }

  /** The pattern for the whole sheet. */
  best(): Pattern {
    const { width, height } = this.stock;
    const cell = this.#cell(width, height);
    const left = [...this.demand];
    return { value: cell.value, counts: cell.counts, tree: this.#tree(width, height, left) };
  }

  #allWays(): readonly Way[] {
    return this.task.kinds.flatMap((kind, index) => {
      if ((this.demand[index] ?? 0) === 0 || !kind.papers.includes(this.index)) return [];
      const plain: Way = { kind: index, turned: false, width: kind.width, height: kind.height };
      const turned: Way = { kind: index, turned: true, width: kind.height, height: kind.width };
      return mayTurn(kind, this.stock) ? [plain, turned] : [plain];
    });
  }

  #points(length: number, side: 'width' | 'height', limit: number): readonly number[] {
    const sizes = mergeSizes(this.#ways.map((way) => ({ size: way[side], most: this.demand[way.kind] ?? 0 })));
    const { kerf } = this.task.job.trimmer;
    return cutPoints(length, sizes, kerf, limit) ?? fewPoints(length, sizes, kerf, limit);
  }

  #cell(width: number, height: number): Cell {
    if (this.#depth > DEEPEST) return this.#nothing;
    if (width < this.#least[0] || height < this.#least[1]) return this.#nothing;
    const key = width * 2 ** 26 + height;
    const known = this.#cells.get(key);
    if (known) return known;
    let best = this.#nothing;
    for (const way of this.#ways) {
      const value = this.values[way.kind] ?? 0;
      this.meter.spend(1);
      if (value <= best.value || way.width > width || way.height > height) continue;
      if (fitsOf(this.task.job.trimmer, width, height, way.width, way.height).length === 0) continue;
      const counts = this.demand.map((_, kind) => (kind === way.kind ? 1 : 0));
      best = { value, counts, choice: { is: 'blank', kind: way.kind, turned: way.turned } };
    }
    // Once the budget is used up, parts are taken as they are; what was found before stands.
    this.#depth += 1;
    if (!this.meter.empty) best = this.#bestCut(width, height, true, best);
    if (!this.meter.empty) best = this.#bestCut(width, height, false, best);
    this.#depth -= 1;
    this.#cells.set(key, best);
    return best;
  }

  #bestCut(width: number, height: number, vertical: boolean, found: Cell): Cell {
    const { trimmer } = this.task.job;
    const [across, along] = vertical ? [width, height] : [height, width];
    const half = (across - trimmer.kerf) / 2;
    let best = found;
    for (const point of vertical ? this.#xs : this.#ys) {
      if (point > half) break;
      this.meter.spend(2);
      const rest = across - point - trimmer.kerf;
      const near = cutAllowed(trimmer, across, point, along);
      if (!near && !cutAllowed(trimmer, across, rest, along)) continue;
      const at = near ? point : rest;
      const first = vertical ? this.#cell(point, height) : this.#cell(width, point);
      if (first.value === 0) continue;
      const second = vertical ? this.#cell(rest, height) : this.#cell(width, rest);
      if (first.value + second.value <= best.value) continue;
      best = this.#joined(first, second, { is: 'cut', vertical, at }, best);
    }
    return best;
  }

  /** Two parts together, if they are worth more than `best`; what goes beyond the demand counts for nothing. */
  #joined(first: Cell, second: Cell, choice: Choice, best: Cell): Cell {
    this.meter.spend(1 + this.demand.length / 4);
    let value = 0;
    const counts = this.demand.map((most, kind) => {
      const count = Math.min(most, (first.counts[kind] ?? 0) + (second.counts[kind] ?? 0));
      value += count * (this.values[kind] ?? 0);
      return count;
    });
    return value > best.value ? { value, counts, choice } : best;
  }

  #tree(width: number, height: number, left: number[]): CutNode {
    const { choice } = this.#cell(width, height);
    const { kerf } = this.task.job.trimmer;
    if (choice.is === 'cut') {
      const { vertical, at } = choice;
      const rest = (vertical ? width : height) - at - kerf;
      const first = vertical ? this.#tree(at, height, left) : this.#tree(width, at, left);
      const second = vertical ? this.#tree(rest, height, left) : this.#tree(width, rest, left);
      return { is: 'cut', direction: vertical ? 'vertical' : 'horizontal', at: ticks(at), first, second };
    }
    if (choice.is === 'nothing' || (left[choice.kind] ?? 0) === 0) return { is: 'offcut' };
    left[choice.kind] = (left[choice.kind] ?? 0) - 1;
    const kind = this.task.kinds[choice.kind];
    if (!kind) throw new Error('A pattern holds a kind that the task does not.');
    const [w, h] = choice.turned ? [kind.height, kind.width] : [kind.width, kind.height];
    const [fit] = fitsOf(this.task.job.trimmer, width, height, w, h);
    if (!fit) throw new Error('A pattern holds a blank that does not fit.');
    const part = freePart(width, height);
    placeInto(part, fit, choice.kind, choice.turned, kerf);
    return finish(part);
  }
}
