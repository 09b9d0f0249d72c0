import { eachLeaf } from '../cut/cut-tree.js';
import type { CutJob, Trimmer } from '../cut/job.js';
import { ticks } from '../length/length.js';
import { planCuts } from '../plan/plan-cuts.js';
import type { KindPlace, NestDraft, NestTask } from './nest-draft.js';

const NONE = ticks(0);

/** A trimmer that can make every cut from edge to edge. */
export const ANY_STRAIGHT_CUT: Trimmer = {
  bladeLength: null,
  narrowestStrip: NONE,
  thinnestTrim: NONE,
  kerf: NONE,
  rulerStep: null,
  stoppedCuts: false,
};

/** The one paper and the kinds of `task` as a job of straight cuts by a trimmer that can do everything. */
export function straightJob(task: NestTask, stoppedCuts: boolean): CutJob {
  return {
    trimmer: { ...ANY_STRAIGHT_CUT, stoppedCuts },
    papers: [
      {
        id: 'sheet',
        width: ticks(task.width),
        height: ticks(task.height),
        sheets: task.sheets === Number.POSITIVE_INFINITY ? null : task.sheets,
        directional: false,
        price: null,
        margins: { top: NONE, right: NONE, bottom: NONE, left: NONE },
      },
    ],
    blanks: task.kinds.map(({ width, height, demand }, kind) => ({
      id: String(kind),
      width: ticks(width),
      height: ticks(height),
      quantity: demand,
      papers: null,
      turn: task.turns[kind] ?? false,
    })),
  };
}

/** The planner's plan as a nesting; a nesting may lie like any plan of straight cuts, and better. */
export function straightDraft(
  task: NestTask,
  stoppedCuts: boolean,
  work: number,
): { readonly draft: NestDraft; readonly work: number } {
  const plan = planCuts(straightJob(task, stoppedCuts), { work });
  const missing = task.kinds.map(() => 0);
  for (const { blank, quantity } of plan.unmade) missing[Number(blank)] = quantity;
  const sheets = plan.sheets.map(({ copies, tree, usable }) => {
    const places: KindPlace[] = [];
    eachLeaf(tree, usable, NONE, (leaf, { x, y }) => {
      if (leaf.is === 'blank') places.push({ kind: Number(leaf.blank), x, y, turned: leaf.turned });
    });
    return { copies, places };
  });
  return { draft: { sheets, missing }, work: plan.work };
}
