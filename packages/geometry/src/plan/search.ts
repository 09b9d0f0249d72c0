import { copiesOf, type Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { seededRandom } from '../sheet/random.js';
import type { Bound } from './bound.js';
import { lowerBound } from './bounds.js';
import type { Draft } from './draft.js';
import { FEW_POINTS, fillGreedily, MANY_POINTS, MORE_POINTS } from './greedy.js';
import { insertAll } from './insertion.js';
import { FIRST_RULES, repeats, rulesFor, shakenOrder } from './insertion-rules.js';
import { Keeper } from './keeper.js';
import { type Previous, warmDraft } from './warm-start.js';

/** What a search has found so far. */
export interface Finding {
  readonly draft: Draft;
  readonly bound: Bound;
  /** True when the draft makes everything and none can need less. */
  readonly proven: boolean;
  readonly work: number;
}

/** Narrows the gap between the best draft and the bound of a task; control comes back after every pass. */
export type Narrow = (task: Task, keeper: Keeper, random: () => number, meter: Meter) => Generator<void, void>;

/** Share of the work that the first rules of placing may take: less where blanks repeat. */
const PLACING_SHARE = 0.05;
const REPEATING_PLACING_SHARE = 0.015;
/** Fruitless tries, or rounds of them, after which a plan that is proven to need the fewest sheets is left as it is. */
const PATIENCE = 10;
/** Rounds of random values at the most, however much work is left. */
const MOST_ROUNDS = 2_000;
/** Placements between two slices. */
const SHAKES = 6;

function areas(task: Task): readonly number[] {
  return task.kinds.map((kind) => kind.width * kind.height);
}

/** Values near the areas: the larger and the scarcer count a little more, and chance does the rest. */
function variedValues(task: Task, random: () => number): readonly number[] {
  const power = 0.02 * random();
  return areas(task).map((area) => area ** (1 + power) * (0.8 + 0.5 * random()));
}

/**
 * Searches a plan for one task with the work of `meter`: a first valid draft at once, then better ones. Control comes back
 * after every pass, which takes a few milliseconds at usual sizes. `previous`, a plan of nearly the same job, gives a
 * first draft. The same task, work and earlier plan give the same drafts.
 */
export function* searchPlan(
  task: Task,
  meter: Meter,
  thorough: boolean,
  previous: Previous | null,
  narrow: Narrow | null,
): Generator<Finding, Finding> {
  const keeper = new Keeper(task, meter, lowerBound(task, null));
  const copies = copiesOf(task);
  const rules = rulesFor(task);
  const [first, ...others] = rules;
  const warm = previous && warmDraft(task, previous, meter);
  if (warm) keeper.offer(warm);
  if (!warm || !keeper.proven)
    keeper.offer(first ? insertAll(task, first, meter) : fillGreedily(task, areas(task), FEW_POINTS, meter));
  const finding = (): Finding => ({
    draft: keeper.draft,
    bound: keeper.bound,
    proven: keeper.proven,
    work: Math.round(meter.spent),
  });
  yield finding();
  let fruitless = 0;
  const repeating = repeats(task);
  const placing = (repeating ? REPEATING_PLACING_SHARE : PLACING_SHARE) * meter.budget;
  const offer = (draft: Draft): void => {
    fruitless = keeper.offer(draft) ? 0 : fruitless + 1;
  };
  /** Enough once nothing can need less, and many a try for fewer layouts, settings and cuts was in vain. */
  const enough = (): boolean => meter.empty || ((keeper.proven || keeper.hopeless) && fruitless >= PATIENCE);
  if (warm && !thorough && keeper.proven) return finding();
  if (first && !meter.empty) offer(fillGreedily(task, areas(task), FEW_POINTS, meter));
  yield finding();
  for (const rule of thorough ? others.slice(0, FIRST_RULES) : others) {
    if (enough() || (thorough && meter.spent > placing)) break;
    offer(insertAll(task, rule, meter));
    yield finding();
  }
  if (!thorough) return finding();
  if (!keeper.proven) keeper.raise(lowerBound(task, keeper.cost));
  yield finding();
  const random = seededRandom(copies * 7919 + task.kinds.length);
  if (!keeper.proven && narrow) for (const _ of narrow(task, keeper, random, meter)) yield finding();
  // Many copies repeat patterns; few and different blanks are placed one by one, in an order shaken a little each time.
  fruitless = 0;
  for (let round = 0; round < MOST_ROUNDS && !enough(); round += 1) {
    const before = keeper.draft;
    if (rules.length === 0 || (repeating ? round % 4 !== 3 : round % 4 === 0)) {
      const values = round === 0 ? areas(task) : variedValues(task, random);
      keeper.offer(fillGreedily(task, values, round % 3 === 0 ? MANY_POINTS : MORE_POINTS, meter));
    } else {
      const rule = rules[Math.floor(random() * rules.length)];
      for (let shake = 0; rule && shake < SHAKES && !meter.empty; shake += 1) {
        keeper.offer(insertAll(task, { ...rule, order: shakenOrder(task, random) }, meter));
      }
    }
    fruitless = keeper.draft === before ? fruitless + 1 : 0;
    yield finding();
  }
  return finding();
}
