import { GoalSearch } from '../sheet/goal-search.js';
import type { Task } from '../sheet/kinds.js';
import { Meter } from '../sheet/meter.js';
import { Packing } from '../sheet/packing.js';
import { tableOf } from '../sheet/places.js';
import { seededRandom } from '../sheet/random.js';
import { countsOf } from '../sheet/slice.js';
import { SUMS_PER_STEP } from './column-generation.js';
import { Cover, type Covering } from './cover.js';
import type { Column } from './rest-program.js';

/** Groups of blanks of one part of a sheet beyond which nothing is tried. */
const MOST_FILLINGS = 12_000;
/** Share of the work that making the groups may take: where there are too many, that is to be known soon. */
const GROUPS_SHARE = 0.3;

/**
 * Tries every plan of at most `sheets` sheets, for stocks of equal cost. With `values` of the kinds and the most V
 * that a sheet can be worth, a plan of k sheets wastes exactly k V - (what all is worth); so no sheet of it wastes more
 * than that, which leaves few groups of blanks to look at when the values are the prices of a good linear plan.
 * All of them are made, and `Cover` makes the demand of them. Whole numbers only. `unknown` when there are too many,
 * or the work is used up; the trimmer's rules are not looked at, so `found` still has to be made under them.
 */
export function closeGap(task: Task, values: readonly number[], sheets: number, meter: Meter): Covering {
  const used = task.stocks
    .map((_, stock) => stock)
    .filter((stock) => task.kinds.some((kind) => kind.papers.includes(stock)));
  const packing = new Packing(task.kinds.map(({ demand }) => demand));
  const worthOf = (counts: readonly number[]): number =>
    counts.reduce((sum, count, kind) => sum + count * (values[kind] as number), 0);
  const tables = used.flatMap((stock) => {
    const table = tableOf(task, stock, () => true);
    return table && table.xs.length > 0 && table.ys.length > 0 ? [{ stock, table }] : [];
  });
  if (tables.length < used.length) return { is: 'unknown' };
  let most = 0;
  for (const { table } of tables) {
    meter.spend(table.steps / SUMS_PER_STEP);
    most = Math.max(most, table.most(values));
  }
  const waste = sheets * most - worthOf(task.kinds.map(({ demand }) => demand));
  if (waste < 0) return { is: 'impossible' };
  const columns: Column[] = [];
  const share = new Meter(GROUPS_SHARE * (meter.budget - meter.spent));
  const goal = { worths: values, least: most - waste, most: MOST_FILLINGS, allOrNone: true };
  for (const { stock, table } of tables) {
    const found = new GoalSearch(table, packing, seededRandom(stock + 1)).find(goal, share);
    if (!found.complete) {
      meter.spend(share.spent);
      return { is: 'unknown' };
    }
    for (const slice of found.sheets) columns.push({ stock, slice, counts: countsOf(slice, task.kinds.length) });
  }
  meter.spend(share.spent);
  return new Cover(task, meter).find(columns, sheets);
}
