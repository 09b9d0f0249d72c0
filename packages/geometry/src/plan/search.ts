import type { Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { mayStop } from '../sheet/places.js';
import { seededRandom } from '../sheet/random.js';
import type { Bound } from './bound.js';
import { lowerBound } from './bounds.js';
import type { Draft } from './draft.js';
import { correctValues, fillGreedily } from './greedy.js';
import { insertAll } from './insertion.js';
import { insertionRules, shakenOrder } from './insertion-rules.js';
import { Keeper } from './keeper.js';
import { Narrowing } from './narrowing.js';
import { type Previous, warmDraft } from './warm-start.js';

/** What a search has found so far. */
export interface Finding {
  readonly draft: Draft;
  readonly bound: Bound;
  readonly work: number;
}

/** Copies beyond which placing one by one is too slow; patterns repeat instead. */
const MOST_INSERTED = 1_200;
/** Places for cuts on a side: in the first pass, and in those after it. */
const FEW_POINTS = 14;
const MANY_POINTS = 40;
/** Rules of placing that are tried before anything is looked into. */
const FIRST_RULES = 20;
/** Share of the work that they may take. */
const PLACING_SHARE = 0.05;
/** Fruitless tries, or rounds of them, after which a plan that is proven to need the fewest sheets is left as it is. */
const PATIENCE = 10;
/** Rounds of random values at the most, however much work is left. */
const MOST_ROUNDS = 2_000;
/** Copies of a kind, on average, from which on repeating patterns is tried before placing one by one. */
const REPEATING = 3;
/** Placements between two slices. */
const SHAKES = 6;
/** Placements in one round at the most. */
const MOST_SHAKES = 12;
/** Round after which sheets are priced exactly, when nothing simpler has helped; closing comes one round later. */
const EXACT_ROUND = 1;
/** Every so many rounds after that there is a dive. */
const DIVING_ROUNDS = 2;
/** Runs of taking out and putting back before anything is priced. */
const FIRST_RUNS = 4;
/** Refillings that leave alone whatever a linear plan takes whole. */
const TIGHT_ROUNDS = 3;
/** Fillings in a row that learn from each other. */
const CORRECTIONS = 6;
/** Share of the work that goes into fewer sheets before the rest goes into fewer layouts, settings and cuts. */
const NARROWING_SHARE = 0.85;

function areas(task: Task): readonly number[] {
  return task.kinds.map((kind) => kind.width * kind.height);
}

/** Values near the areas: the larger and the scarcer count a little more, and chance does the rest. */
function variedValues(task: Task, random: () => number): readonly number[] {
  const power = 0.02 * random();
  return areas(task).map((area) => area ** (1 + power) * (0.8 + 0.5 * random()));
}

/** Narrows the gap between the best draft and the bound until there is none, or the work for it is used up. */
function* narrow(task: Task, keeper: Keeper, random: () => number, meter: Meter): Generator<void, void> {
  const narrowing = new Narrowing(task, keeper, random, meter);
  const repeating = copiesOf(task) >= REPEATING * task.kinds.length;
  // Where hardly two blanks are alike, taking out and putting back does best; where they repeat, a linear plan does.
  if (!repeating) for (let run = 0; run < FIRST_RUNS && !keeper.proven; run += 1) yield* narrowing.goOn();
  if (keeper.proven) return;
  if (!keeper.hopeless) yield* narrowing.price('quick');
  const rules = copiesOf(task) <= MOST_INSERTED ? insertionRules(task) : [];
  let tried = FIRST_RULES;
  let values = narrowing.shakenValues();
  let draft = keeper.draft;
  for (
    let round = 0;
    round < MOST_ROUNDS && !keeper.proven && !keeper.hopeless && meter.spent < NARROWING_SHARE * meter.budget;
    round += 1
  ) {
    if (round % 2 === 0) yield* narrowing.refill(true, round >= TIGHT_ROUNDS);
    else yield* narrowing.goOn();
    if (keeper.proven) return;
    if (round === EXACT_ROUND) yield* narrowing.price('exact');
    // The groups that closing makes know no pinwheels.
    if (round === EXACT_ROUND + 1 && !mayStop(task) && (yield* narrowing.close())) return;
    if (round > EXACT_ROUND && round % DIVING_ROUNDS === 0) yield* narrowing.dive();
    if (keeper.proven) return;
    // Placing one by one costs little where blanks are few, and finds what the others do not.
    const until = meter.spent + PLACING_SHARE * meter.budget;
    for (let shake = 0; shake < MOST_SHAKES && rules.length > 0 && !keeper.proven && meter.spent < until; shake += 1) {
      const inTurn = shake % 2 === 0;
      const rule = rules[inTurn ? tried % rules.length : Math.floor(random() * rules.length)];
      if (inTurn) tried += 1;
      if (rule) keeper.offer(insertAll(task, inTurn ? rule : { ...rule, order: shakenOrder(task, random) }, meter));
      if (shake % SHAKES === SHAKES - 1) yield;
    }
    if (keeper.proven) return;
    if (repeating || round % 4 === 3) {
      // By the prices of the linear plan, then corrected by what each filling did badly.
      values = round % CORRECTIONS === 0 ? narrowing.shakenValues() : correctValues(task, draft, values, random);
      const repeats = round % 2 === 0 ? Number.POSITIVE_INFINITY : 1;
      draft = fillGreedily(task, values, round % 4 === 0 ? MANY_POINTS : FEW_POINTS * 2, meter, repeats);
      keeper.offer(draft);
      narrowing.learn(draft);
    }
    yield;
  }
}

function copiesOf(task: Task): number {
  return task.kinds.reduce((sum, kind) => sum + kind.demand, 0);
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
): Generator<Finding, Finding> {
  const keeper = new Keeper(task, meter, lowerBound(task, null));
  const copies = copiesOf(task);
  const rules = copies <= MOST_INSERTED ? insertionRules(task) : [];
  const [first, ...others] = rules;
  const warm = previous && warmDraft(task, previous, meter);
  if (warm) keeper.offer(warm);
  if (!warm || !keeper.proven)
    keeper.offer(first ? insertAll(task, first, meter) : fillGreedily(task, areas(task), FEW_POINTS, meter));
  const finding = (): Finding => ({ draft: keeper.draft, bound: keeper.bound, work: Math.round(meter.spent) });
  yield finding();
  let fruitless = 0;
  const offer = (draft: Draft): void => {
    fruitless = keeper.offer(draft) ? 0 : fruitless + 1;
  };
  /** Enough once nothing can need less, and many a try for fewer layouts, settings and cuts was in vain. */
  const enough = (): boolean => meter.empty || ((keeper.proven || keeper.hopeless) && fruitless >= PATIENCE);
  if (warm && !thorough && keeper.proven) return finding();
  if (first && !meter.empty) offer(fillGreedily(task, areas(task), FEW_POINTS, meter));
  yield finding();
  for (const rule of thorough ? others.slice(0, FIRST_RULES) : others) {
    if (enough() || (thorough && meter.spent > PLACING_SHARE * meter.budget)) break;
    offer(insertAll(task, rule, meter));
    yield finding();
  }
  if (!thorough) return finding();
  if (!keeper.proven) keeper.raise(lowerBound(task, keeper.cost));
  yield finding();
  const random = seededRandom(copies * 7919 + task.kinds.length);
  if (!keeper.proven) for (const _ of narrow(task, keeper, random, meter)) yield finding();
  // Many copies repeat patterns; few and different blanks are placed one by one, in an order shaken a little each time.
  const repeating = copies >= REPEATING * task.kinds.length;
  fruitless = 0;
  for (let round = 0; round < MOST_ROUNDS && !enough(); round += 1) {
    const before = keeper.draft;
    if (rules.length === 0 || (repeating ? round % 4 !== 3 : round % 4 === 0)) {
      const values = round === 0 ? areas(task) : variedValues(task, random);
      keeper.offer(fillGreedily(task, values, round % 3 === 0 ? MANY_POINTS : FEW_POINTS * 2, meter));
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
