import type { Length } from '../length/length.js';
import type { Rect } from '../rect/rect.js';
import type { CutNode } from './cut-tree.js';

/** One sheet layout: `copies` sheets of `paper` are cut alike, by `tree` over `usable`. */
export interface SheetLayout {
  readonly paper: string;
  readonly copies: number;
  readonly width: Length;
  readonly height: Length;
  readonly usable: Rect;
  readonly tree: CutNode;
}

/** Why a blank stays unmade. A plan never drops a blank without one of these. */
export type UnmadeReason =
  | 'out of sheets'
  | 'larger than every sheet'
  | 'longer than the blade'
  | 'off the ruler'
  | 'narrower than can be held'
  | 'trim too thin'
  | 'no paper allowed'
  | 'not found within the work budget';

export interface Unmade {
  readonly blank: string;
  readonly quantity: number;
  readonly reason: UnmadeReason;
}

/**
 * What the plan proves. `lowerBound` sheets (or money where every paper has a price) are needed at least by any plan that makes all that this
 * one makes; `fewestSheets` is true only when the plan reaches it. `by` names the argument that gave the bound.
 * `mostSets`: with `--sets most`, whether no plan makes more sets; null when that was not asked.
 */
export interface Proof {
  readonly lowerBound: number;
  readonly fewestSheets: boolean;
  readonly by: string;
  readonly mostSets: boolean | null;
}

/** `settings` counts runs of consecutive cuts at one trimmer setting in the order of the steps. */
export interface PlanCounts {
  readonly sheets: number;
  readonly layouts: number;
  readonly settings: number;
  readonly cuts: number;
}

/** The answer to a cut job: a valid cut tree for every sheet, what stays unmade and why, and what is proven. */
export interface CutPlan {
  readonly sets: number;
  readonly complete: boolean;
  readonly sheets: readonly SheetLayout[];
  readonly unmade: readonly Unmade[];
  readonly proof: Proof;
  readonly counts: PlanCounts;
  readonly largestOffcut: { readonly sheet: number; readonly width: Length; readonly height: Length } | null;
  /** Work spent, counted in the planner's own steps, the same on every machine. */
  readonly work: number;
}
