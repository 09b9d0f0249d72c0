import type { CutNode } from '../cut/cut-tree.js';

/** One layout of a draft; blanks in `tree` are named by the index of their kind. */
export interface DraftSheet {
  readonly stock: number;
  readonly tree: CutNode;
  readonly copies: number;
}

/** A plan in the planner's own terms: sheets, and how many of each kind stay unmade. */
export interface Draft {
  readonly sheets: readonly DraftSheet[];
  readonly missing: readonly number[];
}
