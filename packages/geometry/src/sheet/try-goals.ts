import { GoalSearch } from './goal-search.js';
import type { Task } from './kinds.js';
import { FINE, type Priced } from './limit-prices.js';
import { Meter } from './meter.js';
import { Packing } from './packing.js';
import { seededRandom } from './random.js';
import type { SheetSearch } from './sheet-search.js';

/** Share of what is left that one goal may take, and what it may take at least. */
const GOAL_SHARE = 0.4;
const LEAST_GOAL = 20_000;
/** Fillings of a part that are kept first, and how many times more when that is in vain. */
const FEW_FILLINGS = 8;
const MORE_FILLINGS = 4;
/** How far below what no sheet can be worth more than the first goal is, as a part of the gap. */
const FIRST_BELOW = 1 / 32;

/**
 * Asks for sheets that are worth nearly as much as the bound, then for less: the higher a goal, the less there is to look at. When
 * all is in vain, once more with more fillings of each part. Returns what no sheet is worth more than: a complete answer to
 * a goal says that there is none, or names the best.
 */
export function tryGoals(
  search: SheetSearch,
  task: Task,
  values: readonly number[],
  priced: Priced,
  meter: Meter,
): number {
  const { table, prices } = priced;
  const demands = task.kinds.map(({ demand }) => demand);
  const worths = values.map((value, kind) => value * FINE - (prices[kind] as number));
  const allowance = prices.reduce((sum, price, kind) => sum + price * (demands[kind] as number), 0);
  table.most(worths.map((worth) => Math.max(0, worth)));
  const goals = new GoalSearch(table, new Packing(demands), seededRandom(values.length * 41 + 3));
  let most = Math.floor(priced.bound / FINE);
  let fillings = FEW_FILLINGS;
  let below = FIRST_BELOW;
  while (!meter.empty && search.value < most) {
    const before = search.value;
    const goal = Math.max(before + 1, most - Math.ceil((most - before) * below));
    const share = new Meter(GOAL_SHARE * (meter.budget - meter.spent) + LEAST_GOAL);
    const found = goals.find({ worths, least: goal * FINE - allowance, most: fillings, allOrNone: false }, share);
    meter.spend(share.spent);
    for (const slice of found.sheets) search.offer(slice);
    if (found.complete) most = Math.max(search.value, goal - 1);
    if (search.value > before) continue;
    if (goal === before + 1 || share.empty) {
      fillings *= MORE_FILLINGS;
      below = FIRST_BELOW;
    } else below = Math.min(1, 2 * below);
  }
  return most;
}
