import { GoalSearch } from '../sheet/goal-search.js';
import type { Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { Packing } from '../sheet/packing.js';
import { tableOf } from '../sheet/places.js';
import { seededRandom } from '../sheet/random.js';
import { countsOf, type Slice } from '../sheet/slice.js';
import { SUMS_PER_STEP } from './column-generation.js';
import type { Column } from './rest-program.js';

/** What one sheet may waste, in turn, as a part of what a whole plan may. */
const PARTS_OF_WASTE = [0.1, 0.3, 0.6, 1];

/**
 * Sheets, no kind on them more often than its demand, that a plan of so many sheets can hold, for stocks of equal cost: by values of
 * the kinds with which a sheet is worth `most` at the most (null: what the tables say), the plan may waste all that its sheets could be
 * worth beyond what is wanted. Of each part of a sheet `kept` fillings are kept. Finds, and proves nothing.
 */
export function nearSheets(
  task: Task,
  worths: readonly number[],
  most: number | null,
  sheets: number,
  kept: number,
  meter: Meter,
): readonly Column[] {
  const demands = task.kinds.map(({ demand }) => demand);
  const tables = task.stocks.flatMap((_, stock) => {
    const used = task.kinds.some(({ papers }) => papers.includes(stock));
    const table = used ? tableOf(task, stock, () => true) : null;
    if (!table || table.xs.length === 0 || table.ys.length === 0) return [];
    meter.spend(table.steps / SUMS_PER_STEP);
    return [{ stock, table, value: table.most(worths) }];
  });
  const best = most ?? tables.reduce((largest, { value }) => Math.max(largest, value), 0);
  const waste = Math.max(
    0,
    sheets * best - worths.reduce((sum, worth, kind) => sum + worth * (demands[kind] as number), 0),
  );
  const packing = new Packing(demands);
  return tables.flatMap(({ stock, table }): readonly Column[] => {
    const search = new GoalSearch(table, packing, seededRandom(stock + 1));
    // The nearer to the most, the less there is to look at: from there on down as far as the work goes.
    let found: readonly Slice[] = [];
    for (const part of PARTS_OF_WASTE) {
      if (meter.empty) break;
      const goal = { worths, least: Math.floor(best - part * waste), most: kept, allOrNone: false };
      const { sheets: near } = search.find(goal, meter);
      if (near.length > 0) found = near;
      if (near.length >= kept) break;
    }
    return found.map((slice) => ({ stock, slice, counts: countsOf(slice, task.kinds.length) }));
  });
}
