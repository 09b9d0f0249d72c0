import type { Length } from '../length/length.js';
import { ticks } from '../length/length.js';
import type { Rect } from '../rect/rect.js';
import { splitRect } from '../rect/rect.js';
import { type CutNode, pinwheelParts } from './cut-tree.js';
import type { CutPlan, SheetLayout } from './plan.js';

/** One cut of a plan, as a person makes it: the guide is set to `setting`, and `part` of layout `sheet` is cut there. */
export interface CutStep {
  readonly sheet: number;
  /** Sheets cut alike: the same cut is made on each, or on a stack of them. */
  readonly copies: number;
  readonly direction: 'vertical' | 'horizontal';
  readonly setting: Length;
  /** The part that is cut, in the sheet's own coordinates. */
  readonly part: Rect;
}

interface Open {
  readonly step: CutStep;
  readonly after: readonly (readonly [CutNode, Rect])[];
}

function cutsAt(node: CutNode, box: Rect, sheet: number, copies: number, kerf: Length): readonly Open[] {
  if (node.is === 'cut') {
    const { direction, at, first, second } = node;
    const [near, far] = splitRect(box, direction === 'vertical' ? 'x' : 'y', at, kerf);
    const step: CutStep = { sheet, copies, direction, setting: at, part: box };
    return [
      {
        step,
        after: [
          [first, near],
          [second, far],
        ],
      },
    ];
  }
  if (node.is !== 'pinwheel') return [];
  const { x1, x2, y1, y2 } = node;
  const stopped: readonly (readonly ['vertical' | 'horizontal', Length])[] = [
    ['horizontal', y1],
    ['vertical', x2],
    ['horizontal', y2],
    ['vertical', x1],
  ];
  const steps = stopped.map(
    ([direction, setting]): Open => ({ step: { sheet, copies, direction, setting, part: box }, after: [] }),
  );
  const last = steps.pop();
  return last ? [...steps, { ...last, after: pinwheelParts(node, box) }] : steps;
}

function better(a: CutStep, b: CutStep): number {
  return b.setting - a.setting || a.sheet - b.sheet || a.part.y - b.part.y || a.part.x - b.part.x;
}

/**
 * The cuts of a plan in an order for a person at a trimmer: all that can be done at the setting that stands is done,
 * then the widest setting that is wanted next; a part is cut only after the cut that made it. Layouts share settings.
 */
export function cutSteps(sheets: readonly SheetLayout[], kerf: Length): readonly CutStep[] {
  const open: Open[] = sheets.flatMap((layout, sheet) =>
    cutsAt(layout.tree, layout.usable, sheet, layout.copies, kerf),
  );
  const steps: CutStep[] = [];
  let setting = ticks(0);
  while (open.length > 0) {
    let next = -1;
    open.forEach(({ step }, index) => {
      const best = open[next]?.step;
      if (!best) next = index;
      else if ((step.setting === setting) !== (best.setting === setting)) {
        if (step.setting === setting) next = index;
      } else if (better(step, best) < 0) next = index;
    });
    const [chosen] = open.splice(next, 1) as [Open];
    setting = chosen.step.setting;
    steps.push(chosen.step);
    const { sheet, copies } = chosen.step;
    for (const [node, box] of chosen.after) open.push(...cutsAt(node, box, sheet, copies, kerf));
  }
  return steps;
}

/** Runs of consecutive steps at one setting. */
export function countSettings(steps: readonly CutStep[]): number {
  return steps.filter((step, index) => index === 0 || step.setting !== steps[index - 1]?.setting).length;
}

/** The steps of a whole plan. */
export function planSteps(plan: CutPlan, kerf: Length): readonly CutStep[] {
  return cutSteps(plan.sheets, kerf);
}
