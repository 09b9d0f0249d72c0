import type { CutNode } from '../cut/cut-tree.js';
import type { Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { realise } from '../sheet/realise.js';
import { cutSlice, leafSlice, pinwheelSlice, type Slice } from '../sheet/slice.js';
import { assemblePlan, compareScores, planScore } from './assemble.js';
import type { Bound } from './bound.js';
import type { Draft } from './draft.js';
import type { SliceSheet } from './rounding.js';

/** Steps that judging one copy of a draft counts for: naming, normalising and ordering its cuts. */
const JUDGING = 12;

/** The first two figures of a score: what is unmade, and the cost. */
function roughScore(task: Task, draft: Draft): readonly number[] {
  const unmade = draft.missing.reduce((sum, count) => sum + count, 0);
  return [unmade, draft.sheets.reduce((sum, { stock, copies }) => sum + copies * (task.stocks[stock]?.cost ?? 0), 0)];
}

function countLeaves(node: CutNode): number {
  if (node.is === 'cut') return countLeaves(node.first) + countLeaves(node.second);
  if (node.is !== 'pinwheel') return 1;
  return [node.top, node.right, node.bottom, node.left, node.centre].reduce((sum, part) => sum + countLeaves(part), 0);
}

/** Keeps the best draft of a task. */
export class Keeper {
  #draft: Draft | null = null;
  #rough: readonly number[] = [];
  /** The whole score, once it was needed. */
  #score: readonly number[] | null = null;
  /** The best bound so far. */
  bound: Bound;

  constructor(
    private readonly task: Task,
    private readonly meter: Meter,
    bound: Bound,
  ) {
    this.bound = bound;
  }

  /** The best draft. @throws Error before any was offered. */
  get draft(): Draft {
    if (!this.#draft) throw new Error('No draft has been offered yet.');
    return this.#draft;
  }

  /**
   * True when `draft` is better than the best so far, and is kept. Only drafts that are equal in what is unmade and in
   * cost are looked at closely.
   */
  offer(draft: Draft): boolean {
    const rough = roughScore(this.task, draft);
    const before = this.#draft;
    const order = before ? compareScores(rough, this.#rough) : -1;
    if (order > 0) return false;
    if (before && order === 0) {
      this.#score ??= this.#fullScore(before);
      const score = this.#fullScore(draft);
      if (compareScores(score, this.#score) >= 0) return false;
      this.#score = score;
    } else this.#score = null;
    this.#draft = draft;
    this.#rough = rough;
    return true;
  }

  #fullScore(draft: Draft): readonly number[] {
    this.meter.spend(JUDGING * draft.sheets.reduce((sum, { tree }) => sum + countLeaves(tree), 0));
    return planScore(this.task, assemblePlan(this.task, draft, this.bound, 1, 0));
  }

  /** Raises the bound; a lower one is passed over. */
  raise(bound: Bound): void {
    if (bound.value > this.bound.value) this.bound = bound;
  }

  /** How many sheets the best draft takes. */
  get sheets(): number {
    return this.draft.sheets.reduce((sum, { copies }) => sum + copies, 0);
  }

  /** What the best draft costs. */
  get cost(): number {
    return this.#rough[1] ?? Number.POSITIVE_INFINITY;
  }

  get complete(): boolean {
    return this.#rough[0] === 0;
  }

  /** True when the sheets at hand are proven to be too few to make everything. */
  get hopeless(): boolean {
    return this.bound.value === Number.POSITIVE_INFINITY;
  }

  /** True when nothing is unmade and no plan needs less. */
  get proven(): boolean {
    return this.complete && this.cost <= this.bound.value;
  }
}

/** The draft that cuts `sheets`; null when the trimmer's rules are in the way of one of them. */
export function draftOf(task: Task, sheets: readonly SliceSheet[], missing: readonly number[]): Draft | null {
  const made = sheets.map(({ stock, slice, copies }) => {
    const { width, height } = task.stocks[stock] as { width: number; height: number };
    const tree = realise(task.job.trimmer, slice, width, height);
    return tree && { stock, tree, copies };
  });
  const whole = made.filter((sheet) => sheet !== null);
  return whole.length === made.length ? { sheets: whole, missing } : null;
}

/** The blanks of a tree as groups, without its offcuts and places; null when it has none. A pinwheel's hand is not kept. */
export function sliceOf(task: Task, node: CutNode): Slice | null {
  if (node.is === 'blank') {
    const index = Number(node.blank);
    const kind = task.kinds[index];
    if (!kind) return null;
    const { kerf } = task.job.trimmer;
    const [w, h] = node.turned ? [kind.height, kind.width] : [kind.width, kind.height];
    return leafSlice(index, node.turned, w + kerf, h + kerf);
  }
  if (node.is === 'pinwheel')
    return pinwheelSlice([node.top, node.right, node.bottom, node.left, node.centre].map((arm) => sliceOf(task, arm)));
  if (node.is !== 'cut') return null;
  const parts = [sliceOf(task, node.first), sliceOf(task, node.second)].filter((part) => part !== null);
  return parts.length === 0 ? null : cutSlice(node.direction === 'vertical', parts);
}
