import type { CutPlan, SheetLayout } from '../cut/plan.js';
import type { Length } from '../length/length.js';
import type { Rect } from '../rect/rect.js';
import { orderCuts } from './cut-order.js';

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

/**
 * The cuts of a plan in an order for a person at a trimmer (see `orderCuts`): all that can be done at the setting that
 * stands is done before the guide is moved; a part is cut only after the cut that made it. Layouts share settings.
 */
export function cutSteps(sheets: readonly SheetLayout[], kerf: Length): readonly CutStep[] {
  return orderCuts(sheets, kerf);
}

/** Runs of consecutive steps at one setting. */
export function countSettings(steps: readonly CutStep[]): number {
  let runs = 0;
  let setting = -1;
  for (const step of steps) {
    if (step.setting !== setting) runs += 1;
    setting = step.setting;
  }
  return runs;
}

/** The steps of a whole plan. */
export function planSteps(plan: CutPlan, kerf: Length): readonly CutStep[] {
  return cutSteps(plan.sheets, kerf);
}
