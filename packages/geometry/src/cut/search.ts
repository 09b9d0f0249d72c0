import { assemblePlan, compareScores, planScore } from './assemble.js';
import { type Bound, lowerBound } from './bounds.js';
import type { CutNode } from './cut-tree.js';
import type { Draft } from './draft.js';
import { fillGreedily } from './greedy.js';
import { type InsertionRule, insertAll } from './insertion.js';
import type { Task } from './kinds.js';
import { Meter } from './meter.js';
import { seededRandom } from './random.js';

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
/** Fruitless tries, or rounds of them, after which a plan that is proven to need the fewest sheets is left as it is. */
const PATIENCE = 10;
/** Rounds of random values at the most, however much work is left. */
const MOST_ROUNDS = 2_000;

const CHOOSE: readonly InsertionRule['choose'][] = ['least area left', 'least short side left', 'least long side left'];
const SPLIT: readonly InsertionRule['split'][] = [
  'largest rest',
  'shorter side first',
  'longer side first',
  'vertical',
  'horizontal',
];

/** Orders of the kinds: by area, longer side, shorter side, width, height, and least demand first. */
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

function rulesOf(task: Task): readonly InsertionRule[] {
  return ordersOf(task).flatMap((order) =>
    CHOOSE.flatMap((choose) => SPLIT.map((split) => ({ order, choose, split }))),
  );
}

function areas(task: Task): readonly number[] {
  return task.kinds.map((kind) => kind.width * kind.height);
}

/** Values near the areas: the larger and the scarcer count a little more, and chance does the rest. */
function variedValues(task: Task, random: () => number): readonly number[] {
  const power = 0.02 * random();
  return areas(task).map((area) => area ** (1 + power) * (0.8 + 0.5 * random()));
}

/** Steps that judging one copy of a draft counts for: naming, normalising and ordering its cuts. */
const JUDGING = 12;

/** Copies of a kind, on average, from which on repeating patterns is tried before placing one by one. */
const REPEATING = 3;
/** Placements between two slices. */
const SHAKES = 6;

/** The kinds by falling area, each area first made up to a quarter larger or smaller by chance. */
function shaken(task: Task, random: () => number): readonly number[] {
  const weight = task.kinds.map((kind) => kind.width * kind.height * (0.75 + 0.5 * random()));
  return task.kinds.map((_, index) => index).sort((a, b) => (weight[b] ?? 0) - (weight[a] ?? 0) || a - b);
}

/** Keeps the best draft of a task. */
class Keeper {
  draft: Draft | null = null;
  #score: readonly number[] = [];

  constructor(
    private readonly task: Task,
    private readonly meter: Meter,
    private readonly bound: () => Bound,
  ) {}

  /** True when `draft` is better than the best so far, and is kept. What is worse at first sight is not looked at twice. */
  offer(draft: Draft): boolean {
    if (this.draft && compareScores(roughScore(this.task, draft), this.#score) > 0) return false;
    this.meter.spend(JUDGING * draft.sheets.reduce((sum, { tree }) => sum + countLeaves(tree), 0));
    const score = planScore(this.task, assemblePlan(this.task, draft, this.bound(), 1, 0));
    if (this.draft && compareScores(score, this.#score) >= 0) return false;
    this.draft = draft;
    this.#score = score;
    return true;
  }

  /** What the best draft so far costs. */
  get cost(): number {
    return this.#score[1] ?? Number.POSITIVE_INFINITY;
  }

  /** True when nothing is unmade and no plan needs less. */
  get proven(): boolean {
    return (this.#score[0] ?? 1) === 0 && (this.#score[1] ?? Number.POSITIVE_INFINITY) <= this.bound().value;
  }
}

/** The first two figures of a score: what is unmade, and the cost. */
function roughScore(task: Task, draft: Draft): readonly number[] {
  const unmade = draft.missing.reduce((sum, count) => sum + count, 0);
  return [unmade, draft.sheets.reduce((sum, { stock, copies }) => sum + copies * (task.stocks[stock]?.cost ?? 0), 0)];
}

function countLeaves(node: CutNode): number {
  return node.is === 'cut' ? countLeaves(node.first) + countLeaves(node.second) : 1;
}

/**
 * Searches a plan for one task with `work` steps: a first valid draft at once, then better ones. Control comes back
 * after every pass, which takes a few milliseconds at usual sizes. The same task and work give the same drafts.
 */
export function* searchPlan(task: Task, work: number, thorough: boolean): Generator<Finding, Finding> {
  const meter = new Meter(work);
  let bound = lowerBound(task, null);
  const keeper = new Keeper(task, meter, () => bound);
  const copies = task.kinds.reduce((sum, kind) => sum + kind.demand, 0);
  const rules = copies <= MOST_INSERTED ? rulesOf(task) : [];
  const [first, ...others] = rules;
  keeper.offer(first ? insertAll(task, first, meter) : fillGreedily(task, areas(task), FEW_POINTS, meter));
  const finding = (): Finding => {
    if (!keeper.draft) throw new Error('A search always has a draft after its first pass.');
    return { draft: keeper.draft, bound, work: Math.round(meter.spent) };
  };
  yield finding();
  let fruitless = 0;
  const offer = (draft: Draft): void => {
    fruitless = keeper.offer(draft) ? 0 : fruitless + 1;
  };
  /** Enough once nothing can need less, and many a try for fewer layouts, settings and cuts was in vain. */
  const enough = (): boolean => meter.empty || (keeper.proven && fruitless >= PATIENCE);
  if (first && !meter.empty) offer(fillGreedily(task, areas(task), FEW_POINTS, meter));
  yield finding();
  for (const rule of others) {
    if (enough()) break;
    offer(insertAll(task, rule, meter));
    yield finding();
  }
  if (!thorough) return finding();
  bound = lowerBound(task, keeper.cost);
  yield finding();
  const random = seededRandom(copies * 7919 + task.kinds.length);
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
        keeper.offer(insertAll(task, { ...rule, order: shaken(task, random) }, meter));
      }
    }
    fruitless = keeper.draft === before ? fruitless + 1 : 0;
    yield finding();
  }
  return finding();
}
