import { leastSettings, type StepOptions, stepList, type TrimStep } from '@trimwell/geometry';
import type { PaperPlan } from '@trimwell/sketch';
import { copiesIn, cutStages } from './cut-stages.js';

/** The steps of one paper, stage by stage; `sheet` of each step is the place of its layout in the whole plan. */
export interface StagedSteps {
  readonly settings: number;
  readonly turns: number;
  /** The fewest settings of any order of these cuts, as far as proven. */
  readonly least: number;
  readonly stages: readonly {
    /** The piece whose centres are cut up in this stage, and how many; null for sheets of paper. */
    readonly centre: string | null;
    readonly count: number;
    readonly steps: readonly TrimStep[];
  }[];
}

/** Guide and work stay as they are from one stage to the next, so a stage may begin without setting or turning. */
function carriedOn(steps: readonly TrimStep[], last: TrimStep | undefined): readonly TrimStep[] {
  const first = steps.findIndex((step) => step.do === 'cut');
  return steps.map((step, index) => {
    if (index !== first || step.do !== 'cut' || last?.do !== 'cut') return step;
    return { ...step, set: step.setting !== last.setting, turn: step.direction !== last.direction };
  });
}

/** The steps of a plan at the trimmer: all sheets of paper, then the centres of each piece, by falling area. */
export function stagedSteps({ job, plan }: PaperPlan, options: StepOptions): StagedSteps {
  let last: TrimStep | undefined;
  const stages = cutStages(plan).map((stage) => {
    const steps = carriedOn(stepList(stage.plan, job.trimmer, options).steps, last).map((step) => ({
      ...step,
      sheet: stage.layouts[step.sheet] ?? step.sheet,
    }));
    last = steps.findLast((step) => step.do === 'cut') ?? last;
    return { centre: stage.centre, count: copiesIn(stage), steps };
  });
  const cuts = stages.flatMap(({ steps }) => steps).filter((step) => step.do === 'cut');
  return {
    settings: cuts.filter(({ set }) => set).length,
    turns: cuts.filter(({ turn }) => turn).length,
    least: leastSettings(plan.sheets, job.trimmer.kerf),
    stages,
  };
}
