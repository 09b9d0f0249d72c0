import type { CutNode } from '../cut/cut-tree.js';
import type { CutPlan } from '../cut/plan.js';
import { mayTurn, type Stock, type Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { seededRandom } from '../sheet/random.js';
import { Refill } from '../sheet/refill.js';
import { countLeaves, countsOf, cutSlice, leafSlice, pinwheelSlice, type Slice, without } from '../sheet/slice.js';
import { transposedTree } from './canonical.js';
import type { Draft } from './draft.js';
import { insertAll } from './insertion.js';
import { draftOf } from './keeper.js';
import { grouped, type SliceSheet } from './rounding.js';

/** Rounds of taking out and putting back for what does not fit any more. */
const ROUNDS = 40;

/** A plan of nearly the same job; `transposed` when the task is that job's mirror image. */
export interface Previous {
  readonly plan: CutPlan;
  readonly transposed: boolean;
}

/** Which kind of the task a blank of the earlier plan is, and its size now; missing for a blank that is gone. */
type Known = ReadonlyMap<string, { readonly kind: number; readonly width: number; readonly height: number }>;

function knownBlanks(task: Task): Known {
  const kinds = new Map(task.kinds.flatMap(({ members }, kind) => members.map(({ id }) => [id, kind] as const)));
  return new Map(
    task.job.blanks.flatMap(({ id, width, height }) => {
      const kind = kinds.get(id);
      return kind === undefined ? [] : [[id, { kind, width, height }] as const];
    }),
  );
}

/** The blanks of an earlier tree at their present sizes, in their old arrangement. */
function sliceNow(task: Task, stockIndex: number, node: CutNode, known: Known): Slice | null {
  if (node.is === 'offcut') return null;
  const made = (part: CutNode): Slice | null => sliceNow(task, stockIndex, part, known);
  if (node.is === 'pinwheel')
    return pinwheelSlice([node.top, node.right, node.bottom, node.left, node.centre].map(made));
  if (node.is === 'cut') {
    const parts = [made(node.first), made(node.second)].filter((part) => part !== null);
    return parts.length === 0 ? null : cutSlice(node.direction === 'vertical', parts);
  }
  const blank = known.get(node.blank);
  const kind = task.kinds[blank?.kind ?? -1];
  if (!blank || !kind?.papers.includes(stockIndex)) return null;
  const { kerf } = task.job.trimmer;
  const [w, h] = node.turned ? [blank.height, blank.width] : [blank.width, blank.height];
  const turned = w !== kind.width || h !== kind.height;
  if (turned && !mayTurn(kind, task.stocks[stockIndex] as Stock)) return null;
  return leafSlice(blank.kind, turned, w + kerf, h + kerf);
}

/** `slice` without as few blanks as needed to fit `width x height`: one after the other, such that most goes on. */
function fitted(slice: Slice, width: number, height: number): Slice | null {
  let left: Slice | null = slice;
  while (left && (left.w > width || left.h > height)) {
    let best: Slice | null = null;
    for (let at = 0; at < countLeaves(left); at += 1) {
      let index = 0;
      const less = without(left, () => index++ !== at);
      const over = (one: Slice): number => Math.max(0, one.w - width) + Math.max(0, one.h - height);
      if (less && (!best || over(less) < over(best) || (over(less) === over(best) && less.area > best.area)))
        best = less;
    }
    left = best;
  }
  return left;
}

/**
 * A draft for `task` made from the plan of a job that was nearly the same: its arrangement at the present sizes; what
 * does not fit any more is taken out and put elsewhere, on a new sheet if need be. Null when the trimmer's rules are in the
 * way. The drafts that a search makes anyway may be better.
 */
export function warmDraft(task: Task, { plan, transposed }: Previous, meter: Meter): Draft | null {
  const known = knownBlanks(task);
  const { kerf } = task.job.trimmer;
  const left = task.kinds.map(({ demand }) => demand);
  const used = task.stocks.map(() => 0);
  const sheets: SliceSheet[] = [];
  for (const layout of plan.sheets) {
    const stock = task.job.papers.findIndex(({ id }) => id === layout.paper);
    const size = task.stocks[stock];
    const slice = size && sliceNow(task, stock, transposed ? transposedTree(layout.tree) : layout.tree, known);
    const whole = slice && fitted(slice, size.width + kerf, size.height + kerf);
    if (!whole) continue;
    for (let copy = 0; copy < layout.copies && (used[stock] as number) < size.sheets; copy += 1) {
      meter.spend(1);
      const capped = without(whole, ({ kind }) => {
        const more = (left[kind] as number) > 0;
        if (more) left[kind] = (left[kind] as number) - 1;
        return more;
      });
      if (!capped) break;
      used[stock] = (used[stock] as number) + 1;
      sheets.push({ stock, slice: capped, copies: 1 });
    }
  }
  if (sheets.length === 0) return null;
  if (left.every((count) => count === 0)) return draftOf(task, grouped(sheets), left);
  return mended(task, sheets, used, meter);
}

/** Sheets with what is missing put back: onto them as far as it goes, the rest onto new ones. */
function mended(task: Task, sheets: readonly SliceSheet[], used: readonly number[], meter: Meter): Draft | null {
  const stocks = sheets.map(({ stock }) => stock);
  const refill = new Refill(
    task,
    { stocks, roots: sheets.map(({ slice }) => slice) },
    seededRandom(sheets.length),
    meter,
  );
  refill.run(ROUNDS);
  const filled = refill.best.roots.flatMap((slice, at): SliceSheet[] =>
    slice ? [{ stock: stocks[at] as number, slice, copies: 1 }] : [],
  );
  const left = task.kinds.map(({ demand }) => demand);
  for (const { slice } of filled)
    countsOf(slice, left.length).forEach((count, kind) => {
      left[kind] = (left[kind] as number) - count;
    });
  const draft = draftOf(task, grouped(filled), left);
  if (!draft || left.every((count) => count === 0)) return draft;
  const rest: Task = {
    ...task,
    kinds: task.kinds.map((kind, index) => ({ ...kind, demand: left[index] as number })),
    stocks: task.stocks.map((stock, index) => ({ ...stock, sheets: stock.sheets - (used[index] as number) })),
  };
  const order = task.kinds.map((_, index) => index);
  const more = insertAll(rest, { order, choose: 'least area left', split: 'largest rest' }, meter);
  return { sheets: [...draft.sheets, ...more.sheets], missing: more.missing };
}
