import type { BatchPlan, Sketch } from '@trimwell/sketch';

/** What is known of the plan of the sketch that is shown. */
export interface PlanState {
  /** The newest plan and the sketch that it is of, an earlier version while a newer is looked for. Null before the first. */
  readonly made: { readonly sketch: Sketch; readonly batch: BatchPlan } | null;
  /** True while a better plan is looked for. */
  readonly searching: boolean;
  /** Why there is none; null when there is one or one is looked for. */
  readonly failure: string | null;
}

export const NO_PLAN: PlanState = { made: null, searching: true, failure: null };

/** A short name of the plan: equal plans have equal names (FNV-1a, 32 bits, of its sheets). For telling checklists apart. */
export function planName({ cards, papers }: BatchPlan): string {
  const text = JSON.stringify([cards, papers.map(({ paper, plan }) => [paper, plan.sheets])]);
  let sum = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) sum = Math.imul(sum ^ text.charCodeAt(at), 0x01000193);
  return (sum >>> 0).toString(36);
}
