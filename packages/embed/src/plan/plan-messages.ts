import type { BatchPlan, Sketch } from '@trimwell/sketch';

/** What a sketch of the page asks of the planner. */
export interface PlanQuestion {
  /** Who asks: one number for each sketch on the page. */
  readonly asker: number;
  /** Counts the questions of one asker; answers to an earlier one are dropped. */
  readonly question: number;
  readonly sketch: Sketch;
}

/** An asker that wants no more answers. */
export interface PlanLeave {
  readonly asker: number;
  readonly leave: true;
}

export type PlanAnswer = { readonly asker: number; readonly question: number } & (
  | {
      readonly kind: 'plan';
      readonly batch: BatchPlan;
      /** False while the planner is still looking for a better one. */
      readonly done: boolean;
      /** True when the number of cards is the most that was found for the sheets at hand. */
      readonly most: boolean;
    }
  | { readonly kind: 'failed'; readonly message: string }
);

/** The end of a worker that the page speaks to; a test puts its own here. */
export interface PlanPort {
  onmessage: ((event: { readonly data: PlanAnswer }) => void) | null;
  onerror: ((message: string) => void) | null;
  postMessage(question: PlanQuestion | PlanLeave): void;
}
