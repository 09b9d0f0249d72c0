import type { BatchPlan, BatchRecipe, NearMisses, OneMore, Sketch } from '@trimwell/sketch';
import type { Offer } from './trial.js';

/** `quick` while something is being dragged: a first good plan; `full` when it has settled: all the work allowed. */
export type Pace = 'quick' | 'full';

/** What the session asks of the planner. */
export interface PlanQuestion {
  readonly revision: number;
  readonly recipe: BatchRecipe;
  readonly pace: Pace;
  /** The sketch at rest, to look for near misses in at the end; without it none are looked for. */
  readonly sketch?: Sketch;
}

/** Cards on the yield ruler. */
export const RULER_CARDS = 24;

/** Sheets that 1, 2, 3 … cards need: the bands of the yield ruler; empty until computed. */
export type Curve = readonly number[];

/** The most cards that the sheets at hand give, or null when every paper is unlimited. */
export interface Limit {
  readonly cards: number;
  readonly proven: boolean;
  readonly runsOut: readonly string[];
}

/** What is known of the plan of the sketch on the table. */
export interface PlanView {
  /** The newest plan, or null before the first. */
  readonly batch: BatchPlan | null;
  /** True while `batch` answers an earlier sketch than the one shown. */
  readonly stale: boolean;
  /** True while the planner is still looking for a better plan. */
  readonly searching: boolean;
  readonly limit: Limit | null;
  readonly curve: Curve;
  /** What one sheet more of each limited paper would give; empty until known, and where nothing is limited. */
  readonly oneMore: readonly OneMore[];
  /** The near misses of the sketch shown; null until they are known. */
  readonly offer: Offer | null;
  /** Why there is no plan, in the planner's words; null when there is one. */
  readonly failure: string | null;
}

/** What the planner answers; several answers to one question, each better than the last, `done` with the final plan. */
export type PlanAnswer =
  | { readonly revision: number; readonly kind: 'plan'; readonly batch: BatchPlan; readonly done: boolean }
  | { readonly revision: number; readonly kind: 'limit'; readonly limit: Limit | null }
  | { readonly revision: number; readonly kind: 'curve'; readonly curve: Curve }
  | { readonly revision: number; readonly kind: 'one more'; readonly oneMore: readonly OneMore[] }
  | { readonly revision: number; readonly kind: 'near misses'; readonly found: NearMisses }
  | { readonly revision: number; readonly kind: 'failed'; readonly message: string };

/** The end of a worker that the session speaks to; a test puts its own here. */
export interface PlanPort {
  onmessage: ((event: { readonly data: PlanAnswer }) => void) | null;
  postMessage(question: PlanQuestion): void;
  terminate(): void;
}
