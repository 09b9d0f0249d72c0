import { copiesOf, type Task } from '../sheet/kinds.js';
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

/** Rules of placing that are tried before anything is looked into. */
export const FIRST_RULES = 20;
/** Copies beyond which placing one by one is too slow; patterns repeat instead. */
const MOST_INSERTED = 1_200;
/** Copies of a kind, on average, from which on repeating patterns is tried before placing one by one. */
const REPEATING = 3;

/** The rules to place a task by; none where there are too many blanks for that. */
export function rulesFor(task: Task): readonly InsertionRule[] {
  return copiesOf(task) <= MOST_INSERTED ? insertionRules(task) : [];
}

/** True where there are many of each kind, so that sheets repeat. */
export function repeats(task: Task): boolean {
  return copiesOf(task) >= REPEATING * task.kinds.length;
}

/** The kinds by falling area, each area first made up to a quarter larger or smaller by chance. */
export function shakenOrder(task: Task, random: () => number): readonly number[] {
  const weight = task.kinds.map((kind) => kind.width * kind.height * (0.75 + 0.5 * random()));
  return task.kinds.map((_, index) => index).sort((a, b) => (weight[b] ?? 0) - (weight[a] ?? 0) || a - b);
}
