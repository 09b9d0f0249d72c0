import type { Task } from '../sheet/kinds.js';
import type { InsertionRule } from './insertion.js';

const CHOOSE: readonly InsertionRule['choose'][] = ['least area left', 'least short side left', 'least long side left'];
const SPLIT: readonly InsertionRule['split'][] = [
  'largest rest',
  'shorter side first',
  'longer side first',
  'vertical',
  'horizontal',
];

/** Orders of the kinds: by area, longer side, shorter side, width and height. */
function ordersOf(task: Task): readonly (readonly number[])[] {
  const all = task.kinds.map((_, index) => index);
  const by = (of: (index: number) => number): readonly number[] => [...all].sort((a, b) => of(b) - of(a) || a - b);
  const kind = (index: number) => task.kinds[index] ?? { width: 0, height: 0, demand: 0 };
  return [
    all,
    by((index) => Math.max(kind(index).width, kind(index).height)),
    by((index) => Math.min(kind(index).width, kind(index).height)),
    by((index) => kind(index).width),
    by((index) => kind(index).height),
  ];
}

/** All rules of placing one by one, the most promising first. */
export function insertionRules(task: Task): readonly InsertionRule[] {
  return ordersOf(task).flatMap((order) =>
    CHOOSE.flatMap((choose) => SPLIT.map((split) => ({ order, choose, split }))),
  );
}

/** The kinds by falling area, each area first made up to a quarter larger or smaller by chance. */
export function shakenOrder(task: Task, random: () => number): readonly number[] {
  const weight = task.kinds.map((kind) => kind.width * kind.height * (0.75 + 0.5 * random()));
  return task.kinds.map((_, index) => index).sort((a, b) => (weight[b] ?? 0) - (weight[a] ?? 0) || a - b);
}
