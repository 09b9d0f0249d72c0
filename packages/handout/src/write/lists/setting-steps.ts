import { type Length, type StepOptions, stepList, type TrimStep } from '@trimwell/geometry';
import type { BatchPlan, PaperPlan } from '@trimwell/sketch';
import { type CutStage, copiesIn, cutStages } from '../../page/cut-stages.js';

/** A step of the batch, and where its layout stands: in the plan of which paper, at which place. */
export interface BatchStep {
  readonly paper: string;
  readonly layout: number;
  readonly step: TrimStep;
}

/** What is done without moving the guide. */
export type SettingRun =
  | { readonly do: 'cut'; readonly setting: Length; readonly steps: readonly BatchStep[] }
  /** No setting: margins are cut off, or a whole sheet is one piece. */
  | { readonly do: 'before'; readonly steps: readonly BatchStep[] }
  /** The centres of `count` copies of a piece are cut out with a knife. */
  | { readonly do: 'knife'; readonly piece: string; readonly count: number };

interface Stage {
  readonly of: PaperPlan;
  readonly stage: CutStage;
}

/** The steps of stages that are cut together: their layouts share settings, whatever paper they are of. */
function stepsTogether(stages: readonly Stage[], options: StepOptions): readonly BatchStep[] {
  const [first] = stages;
  if (!first) return [];
  const where = stages.flatMap(({ of, stage }) => stage.layouts.map((layout) => ({ paper: of.paper, layout })));
  const joined = { ...first.stage.plan, sheets: stages.flatMap(({ stage }) => stage.plan.sheets) };
  // All papers of a batch are cut with one trimmer, so that any of their jobs states it.
  return stepList(joined, first.of.job.trimmer, options).steps.flatMap((step) => {
    const place = where[step.sheet];
    return place ? [{ ...place, step }] : [];
  });
}

/** Steps in order, parted where the guide is moved. */
function runsOf(steps: readonly BatchStep[]): readonly SettingRun[] {
  const runs: { readonly setting: Length | null; readonly steps: BatchStep[] }[] = [];
  for (const each of steps) {
    const setting = each.step.do === 'cut' ? each.step.setting : null;
    const last = runs.at(-1);
    if (last && last.setting === setting) last.steps.push(each);
    else runs.push({ setting, steps: [each] });
  }
  return runs.map(({ setting, steps: own }) =>
    setting === null ? { do: 'before', steps: own } : { do: 'cut', setting, steps: own },
  );
}

/**
 * The work of a whole batch at the trimmer, setting by setting. All papers are cut together, so that the guide is set once
 * for everything that this length is cut for; a length comes again only where a part has to be made first. Sheets of paper
 * come before the centres of pieces, which are cut out with a knife before they are cut up.
 */
export function settingRuns(batch: BatchPlan, options: StepOptions): readonly SettingRun[] {
  const stages = batch.papers.flatMap((of) => cutStages(of.plan).map((stage): Stage => ({ of, stage })));
  const sheets = stages.filter(({ stage }) => stage.centre === null);
  const centres = stages.flatMap(({ of, stage }): readonly SettingRun[] => {
    if (stage.centre === null) return [];
    const knife = { do: 'knife', piece: stage.centre, count: copiesIn(stage) } as const;
    return [knife, ...runsOf(stepsTogether([{ of, stage }], options))];
  });
  return [...runsOf(stepsTogether(sheets, options)), ...centres];
}
