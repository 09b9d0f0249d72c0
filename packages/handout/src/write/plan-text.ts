import {
  type CutPlan,
  eachLeaf,
  formatLength,
  formatSize,
  type LengthStyle,
  planSteps,
  type SheetLayout,
  type Unit,
} from '@trimwell/geometry';
import { type BatchPlan, centreOf, realSheets, type Sketch } from '@trimwell/sketch';
import { labelOfBlank, labelPieces } from '../draw/labels.js';
import { type CentreSpeech, cautionsFor, centreSpeech, knifeText } from './centre-text.js';
import { copiesIn, cutStages } from './cut-stages.js';

function plural(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** The blanks of one layout, most first in the order they lie: `B 3 3/4 x 5 in (6)`. */
function blanksText(layout: SheetLayout, kerf: number, style: LengthStyle, name: (blank: string) => string): string {
  const found = new Map<string, number>();
  eachLeaf(layout.tree, layout.usable, kerf as Parameters<typeof eachLeaf>[2], (leaf, box) => {
    if (leaf.is !== 'blank') return;
    const text = `${name(leaf.blank)} ${formatSize(box, style)}`;
    found.set(text, (found.get(text) ?? 0) + 1);
  });
  return [...found].map(([text, count]) => `${text} (${count})`).join(', ');
}

function provenText(plan: CutPlan): string {
  if (!plan.complete) return 'not everything can be made';
  return plan.proof.fewestSheets ? `fewest, proven by ${plan.proof.by}` : `at least ${plan.proof.lowerBound} needed`;
}

/** The cuts of a plan in order, with the knife work before the centres of each piece; and how often the guide is set. */
function stepsOf(plan: CutPlan, { kerf, style, centres }: PlanSpeech) {
  let setting = -1;
  let settings = 0;
  const lines = cutStages(plan).flatMap((stage) => {
    const knife = stage.centre === null || !centres ? [] : [`    ${knifeText(stage.centre, copiesIn(stage), centres)}`];
    const cuts = planSteps(stage.plan, kerf as Parameters<typeof planSteps>[1]).map((step) => {
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
  readonly kerf: number;
  readonly style: LengthStyle;
  readonly name: (blank: string) => string;
  readonly centres: CentreSpeech | null;
}

function planLines(plan: CutPlan, speech: PlanSpeech): readonly string[] {
  const { counts } = plan;
  const { kerf, style, name, centres } = speech;
  const sheets = realSheets(plan);
  const steps = stepsOf(plan, speech);
  const cut = counts.sheets > sheets ? ` and ${plural(counts.sheets - sheets, 'centre')}` : '';
  const kind = ({ paper, copies }: SheetLayout): string => {
    const centre = centreOf(paper);
    if (centre === null) return `${plural(copies, 'sheet')} of ${paper}`;
    return `${copies === 1 ? '1 time' : `${copies} times`} the centre of ${centres?.called(centre) ?? centre}`;
  };
  return [
    `  ${plural(sheets, 'sheet')} (${provenText(plan)})${cut}, ${plural(counts.layouts, 'layout')}, ${plural(steps.settings, 'setting')}, ${plural(counts.cuts, 'cut')}`,
    ...plan.sheets.map(
      (layout, index) =>
        `  sheet ${index + 1}: ${kind(layout)}, ${formatSize(layout, style)}: ${blanksText(layout, kerf, style, name)}`,
    ),
    ...plan.unmade.map(({ blank, quantity, reason }) => `  not made: ${name(blank)} (${quantity}), ${reason}`),
    ...steps.lines,
  ];
}

/** A plan in plain words: sheets and what is cut from them, what cannot be made and why, the cuts in order. */
export function planText(plan: CutPlan, unit: Unit, kerf = 0): string {
  const sets = plan.sets === 1 ? [] : [`${plan.sets} sets`];
  return `${[...sets, ...planLines(plan, { kerf, style: { unit }, name: (blank) => blank, centres: null })].join('\n')}\n`;
}

/** The plan of a batch in plain words, paper by paper. */
export function batchText(sketch: Sketch, batch: BatchPlan): string {
  const labels = labelPieces(sketch);
  const style: LengthStyle = { unit: sketch.unit };
  const name = (blank: string): string => labelOfBlank(labels, blank);
  const centres = centreSpeech(sketch);
  const head = `${sketch.title}: ${plural(batch.cards, 'card')} from ${plural(batch.sheets, 'sheet')}${batch.fewestSheets ? `, the fewest ${batch.mixed ? 'for an even mix' : 'possible'}` : ''}`;
  const pieces = [...labels].map(
    ([id, label]) => `  ${label} ${sketch.pieces.find((piece) => piece.id === id)?.name ?? 'Card base'}`,
  );
  const papers = batch.papers.flatMap(({ paper, job, plan }) => [
    sketch.papers.find((candidate) => candidate.id === paper)?.name ?? paper,
    ...planLines(plan, { kerf: job.trimmer.kerf, style, name, centres }),
  ]);
  return `${[head, ...pieces, ...papers, ...cautionsFor(batch)].join('\n')}\n`;
}
