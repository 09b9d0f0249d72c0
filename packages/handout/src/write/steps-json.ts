import {
  fewestSettings,
  type Given,
  type StepOptions,
  stepList,
  TICKS_PER_INCH,
  type TrimStep,
} from '@trimwell/geometry';
import type { BatchPlan, PaperPlan, Sketch } from '@trimwell/sketch';
import { labelOfBlank, labelPieces } from '../draw/labels.js';
import { BLADE_CAUTION } from './plan-text.js';

/** One paper's steps as plain data, blanks with the letters of the drawing. */
function paperSteps({ paper, job, plan }: PaperPlan, options: StepOptions, label: (blank: string) => string): object {
  const given = ({ fate, ...rest }: Given): object =>
    fate.is === 'blank' ? { fate: { ...fate, label: label(fate.blank) }, ...rest } : { fate, ...rest };
  const step = ({ gives, ...rest }: TrimStep): object => ({ ...rest, gives: gives.map(given) });
  const { settings, turns, steps } = stepList(plan, job.trimmer, options);
  const { least, proven } = fewestSettings(plan.sheets, job.trimmer.kerf);
  const sheets = plan.sheets.map(({ copies, width, height, usable }) => ({ copies, width, height, usable }));
  const { unmade } = plan;
  return {
    paper,
    settings,
    leastSettings: least,
    fewestSettings: proven,
    turns,
    sheets,
    unmade,
    steps: steps.map(step),
  };
}

/**
 * The document of a batch's steps at the trimmer, `"trimwellSteps": 1`; lengths in ticks, keys always in the same
 * order. FORMATS.md describes it.
 */
export function writeSteps(sketch: Sketch, batch: BatchPlan, options: StepOptions = {}): object {
  const labels = labelPieces(sketch);
  return {
    trimwellSteps: 1,
    ticksPerInch: TICKS_PER_INCH,
    title: sketch.title,
    cards: batch.cards,
    complete: batch.complete,
    stack: options.stack ?? 2,
    caution: BLADE_CAUTION,
    papers: batch.papers.map((paper) => paperSteps(paper, options, (blank) => labelOfBlank(labels, blank))),
  };
}
