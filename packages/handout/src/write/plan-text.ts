import {
  type CutJob,
  type CutNode,
  type CutPlan,
  eachLeaf,
  formatLength,
  formatSize,
  isPriced,
  type Length,
  type LengthStyle,
  planSteps,
  type SheetLayout,
  type Unit,
} from '@trimwell/geometry';
import { type BatchPlan, centreOf, counted, realSheets, type Sketch } from '@trimwell/sketch';
import { labelOfBlank, labelPieces } from '../draw/labels.js';
import { copiesIn, cutStages } from '../page/cut-stages.js';
import { stagedSteps } from '../page/staged-steps.js';
import { type CentreSpeech, cautionsFor, centreSpeech, knifeText } from './centre-text.js';
import { stepText } from './steps-text.js';

/** The blanks of one layout, most first in the order they lie: `B 3 3/4 x 5 in (6)`. */
function blanksText(layout: SheetLayout, kerf: Length, style: LengthStyle, name: (blank: string) => string): string {
  const found = new Map<string, number>();
  eachLeaf(layout.tree, layout.usable, kerf, (leaf, box) => {
    if (leaf.is !== 'blank') return;
    const text = `${name(leaf.blank)} ${formatSize(box, style)}`;
    found.set(text, (found.get(text) ?? 0) + 1);
  });
  return [...found].map(([text, count]) => `${text} (${count})`).join(', ');
}

/** What is proven, in sheets, or in money where the job's papers have prices. */
function provenText({ complete, proof }: CutPlan, priced: boolean): string {
  if (!complete) return 'not everything can be made';
  if (proof.fewestSheets) return `${priced ? 'least money' : 'fewest'}, proven by ${proof.by}`;
  return priced ? `no plan costs less than ${proof.lowerBound}` : `at least ${proof.lowerBound} needed`;
}

function hasStoppedCuts(node: CutNode): boolean {
  return node.is === 'pinwheel' || (node.is === 'cut' && (hasStoppedCuts(node.first) || hasStoppedCuts(node.second)));
}

/** The steps in whole sentences, which alone say where a cut starts and stops. */
function wholeSteps(plan: CutPlan, { job, style, name, centres }: PlanSpeech) {
  const { settings, stages } = stagedSteps({ paper: '', job, plan }, { stack: 1 });
  const lines = stages.flatMap(({ centre, count, steps }) => {
    const knife = centre === null || !centres ? [] : [`    ${knifeText(centre, count, centres)}`];
    return [...knife, ...steps.map((step) => `    ${stepText(step, { style, name })}`)];
  });
  return { lines, settings };
}

/** The cuts of a plan in order, with the knife work before the centres of each piece; and how often the guide is set. */
function stepsOf(plan: CutPlan, speech: PlanSpeech) {
  if (plan.sheets.some(({ tree }) => hasStoppedCuts(tree))) return wholeSteps(plan, speech);
  const { job, style, centres } = speech;
  let setting = -1;
  let settings = 0;
  const lines = cutStages(plan).flatMap((stage) => {
    const knife = stage.centre === null || !centres ? [] : [`    ${knifeText(stage.centre, copiesIn(stage), centres)}`];
    const cuts = planSteps(stage.plan, job.trimmer.kerf).map((step) => {
      const moved = step.setting !== setting;
      const set = moved ? `set the guide to ${formatLength(step.setting, style)}; ` : '';
      if (moved) settings += 1;
      setting = step.setting;
      const stack = step.copies > 1 ? ` (${step.copies} alike)` : '';
      const side = step.direction === 'vertical' ? 'left' : 'top';
      const sheet = (stage.layouts[step.sheet] ?? step.sheet) + 1;
      return `    ${set}cut ${formatSize(step.part, style)} of sheet ${sheet}${stack}, that far from its ${side}`;
    });
    return [...knife, ...cuts];
  });
  return { lines, settings };
}

/** What the sentences of a plan need to know; `centres` null where a job has none. */
interface PlanSpeech {
  readonly job: CutJob;
  /** Whether the plan counts money; the sheets of hidden centres cost nothing, which is no money. */
  readonly priced: boolean;
  readonly style: LengthStyle;
  readonly name: (blank: string) => string;
  /** A paper as it is called. */
  readonly paper: (id: string) => string;
  readonly centres: CentreSpeech | null;
}

function planLines(plan: CutPlan, speech: PlanSpeech): readonly string[] {
  const { counts } = plan;
  const { job, priced, style, name, paper, centres } = speech;
  const sheets = realSheets(plan);
  const steps = stepsOf(plan, speech);
  const cut = counts.sheets > sheets ? ` and ${counted(counts.sheets - sheets, 'centre')}` : '';
  const kind = ({ paper: id, copies }: SheetLayout): string => {
    const centre = centreOf(id);
    if (centre === null) return `${counted(copies, 'sheet')} of ${paper(id)}`;
    return `${copies === 1 ? '1 time' : `${copies} times`} the centre of ${centres?.called(centre) ?? centre}`;
  };
  return [
    `  ${counted(sheets, 'sheet')} (${provenText(plan, priced)})${cut}, ${counted(counts.layouts, 'layout')}, ${counted(steps.settings, 'setting')}, ${counted(counts.cuts, 'cut')}`,
    ...plan.sheets.map(
      (layout, index) =>
        `  sheet ${index + 1}: ${kind(layout)}, ${formatSize(layout, style)}: ${blanksText(layout, job.trimmer.kerf, style, name)}`,
    ),
    ...plan.unmade.map(({ blank, quantity, reason }) => `  not made: ${name(blank)} (${quantity}), ${reason}`),
    ...steps.lines,
  ];
}

/** The plan of `job` in plain words: sheets and what is cut from them, what cannot be made and why, the cuts in order. */
export function planText(plan: CutPlan, job: CutJob, unit: Unit): string {
  const sets = plan.sets === 1 ? [] : [`${plan.sets} sets`];
  const same = (id: string): string => id;
  const speech = { job, priced: isPriced(job), style: { unit }, name: same, paper: same, centres: null };
  return `${[...sets, ...planLines(plan, speech)].join('\n')}\n`;
}

/** The plan of a batch in plain words, paper by paper. */
export function batchText(sketch: Sketch, batch: BatchPlan): string {
  const labels = labelPieces(sketch);
  const style: LengthStyle = { unit: sketch.unit };
  const name = (blank: string): string => labelOfBlank(labels, blank);
  const centres = centreSpeech(sketch);
  const head = `${sketch.title}: ${counted(batch.cards, 'card')} from ${counted(batch.sheets, 'sheet')}${batch.fewestSheets ? `, the fewest ${batch.mixed ? 'for an even mix' : 'possible'}` : ''}`;
  const pieces = [...labels].map(
    ([id, label]) => `  ${label} ${sketch.pieces.find((piece) => piece.id === id)?.name ?? 'Card base'}`,
  );
  const called = (id: string): string => sketch.papers.find((candidate) => candidate.id === id)?.name ?? id;
  const papers = batch.papers.flatMap(({ paper, job, plan }) => [
    called(paper),
    ...planLines(plan, { job, priced: false, style, name, paper: called, centres }),
  ]);
  return `${[head, ...pieces, ...papers, ...cautionsFor(batch)].join('\n')}\n`;
}
