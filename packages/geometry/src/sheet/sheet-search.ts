import { valuableSlice } from './bounded-table.js';
import type { Task } from './kinds.js';
import type { Meter } from './meter.js';
import { seededRandom } from './random.js';
import { Refill } from './refill.js';
import { countsOf, type Slice } from './slice.js';

/** Places for cuts on a side of the tables: now and then, and else. */
const MANY_PLACES = 60;
const FEW_PLACES = 30;

/** Search for one sheet of most value; keeps the best. */
export class SheetSearch {
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
  tryOut(meter: Meter, rounds: number): void {
    const random = seededRandom(this.task.kinds.length * 31 + 1);
    const demands = this.task.kinds.map(({ demand }) => demand);
    for (let round = 0; round < rounds && !meter.empty; round += 1) {
      const shaken = round === 0 ? this.values : this.values.map((value) => value * (0.85 + 0.3 * random()));
      const { best, work } = valuableSlice(this.task, 0, demands, shaken, round % 4 === 0 ? MANY_PLACES : FEW_PLACES);
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
