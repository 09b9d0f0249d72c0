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
import type { BatchPlan, Sketch } from '@trimwell/sketch';
import { labelOfBlank, labelPieces } from '../draw/labels.js';

/** Said wherever a person is about to cut (general advice of art-teaching societies; common practice). */
export const BLADE_CAUTION =
  'Blades: cut on a firm table, hold the work behind the blade and out of its path, and change a dull blade.';

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

function stepsText(plan: CutPlan, kerf: number, style: LengthStyle): readonly string[] {
  let setting = -1;
  return planSteps(plan, kerf as Parameters<typeof planSteps>[1]).map((step) => {
    const set = step.setting === setting ? '' : `set the guide to ${formatLength(step.setting, style)}; `;
    setting = step.setting;
    const stack = step.copies > 1 ? ` (${step.copies} alike)` : '';
    const side = step.direction === 'vertical' ? 'left' : 'top';
    return `    ${set}cut ${formatSize(step.part, style)} of sheet ${step.sheet + 1}${stack}, that far from its ${side}`;
  });
}

function planLines(
  plan: CutPlan,
  kerf: number,
  style: LengthStyle,
  name: (blank: string) => string,
): readonly string[] {
  const { counts } = plan;
  return [
    `  ${plural(counts.sheets, 'sheet')} (${provenText(plan)}), ${plural(counts.layouts, 'layout')}, ${plural(counts.settings, 'setting')}, ${plural(counts.cuts, 'cut')}`,
    ...plan.sheets.map(
      (layout, index) =>
        `  sheet ${index + 1}: ${plural(layout.copies, 'sheet')} of ${layout.paper}, ${formatSize(layout, style)}: ${blanksText(layout, kerf, style, name)}`,
    ),
    ...plan.unmade.map(({ blank, quantity, reason }) => `  not made: ${name(blank)} (${quantity}), ${reason}`),
    ...stepsText(plan, kerf, style),
  ];
}

/** A plan in plain words: sheets and what is cut from them, what cannot be made and why, the cuts in order. */
export function planText(plan: CutPlan, unit: Unit, kerf = 0): string {
  const sets = plan.sets === 1 ? [] : [`${plan.sets} sets`];
  return `${[...sets, ...planLines(plan, kerf, { unit }, (blank) => blank)].join('\n')}\n`;
}

/** The plan of a batch in plain words, paper by paper. */
export function batchText(sketch: Sketch, batch: BatchPlan): string {
  const labels = labelPieces(sketch);
  const style: LengthStyle = { unit: sketch.unit };
  const name = (blank: string): string => labelOfBlank(labels, blank);
  const head = `${sketch.title}: ${plural(batch.cards, 'card')} from ${plural(batch.sheets, 'sheet')}${batch.fewestSheets ? ', the fewest possible' : ''}`;
  const pieces = [...labels].map(
    ([id, label]) => `  ${label} ${sketch.pieces.find((piece) => piece.id === id)?.name ?? 'Card base'}`,
  );
  const papers = batch.papers.flatMap(({ paper, job, plan }) => [
    sketch.papers.find((candidate) => candidate.id === paper)?.name ?? paper,
    ...planLines(plan, job.trimmer.kerf, style, name),
  ]);
  return `${[head, ...pieces, ...papers, BLADE_CAUTION].join('\n')}\n`;
}
