import type { CutPlan } from '@trimwell/geometry';
import { centreOf } from '@trimwell/sketch';

/** Layouts that are cut before those of the next stage: all sheets of paper first, then the centres of one piece at a time. */
export interface CutStage {
  /** The piece whose centres these are; null for sheets of paper. */
  readonly centre: string | null;
  /** Places of its layouts in the plan. */
  readonly layouts: readonly number[];
  /** The plan with the layouts of this stage alone. */
  readonly plan: CutPlan;
}

/** The stages of a plan. A centre is there only once its own piece is cut; centres stand in the plan by falling area. */
export function cutStages(plan: CutPlan): readonly CutStage[] {
  const stages = new Map<string | null, number[]>([[null, []]]);
  for (const [index, { paper }] of plan.sheets.entries()) {
    const centre = centreOf(paper);
    stages.set(centre, [...(stages.get(centre) ?? []), index]);
  }
  return [...stages].map(([centre, layouts]) => ({
    centre,
    layouts,
    plan: { ...plan, sheets: layouts.flatMap((index) => plan.sheets[index] ?? []) },
  }));
}

/** How many copies of its layouts a stage cuts. */
export function copiesIn({ plan }: CutStage): number {
  return plan.sheets.reduce((sum, { copies }) => sum + copies, 0);
}
