import {
  type Fate,
  fewestSettings,
  formatLength,
  formatSize,
  type Given,
  type LengthStyle,
  type StepOptions,
  stepList,
  type TrimStep,
} from '@trimwell/geometry';
import type { BatchPlan, PaperPlan, Sketch } from '@trimwell/sketch';
import { labelAt, labelOfBlank, labelPieces } from '../draw/labels.js';
import { BLADE_CAUTION } from './plan-text.js';

/** What the sentences of one paper's steps need to know. */
interface Speech {
  readonly style: LengthStyle;
  readonly name: (blank: string) => string;
}

function plural(count: number, one: string): string {
  return `${count} ${count === 1 ? one : `${one}s`}`;
}

/** The name of a part that is cut on later: the number of its sheet, and a small letter for it on that sheet. */
export function partName(sheet: number, part: number): string {
  return `${sheet + 1}${labelAt(part).toLowerCase()}`;
}

function fateText(fate: Fate, sheet: number, size: string, count: number, { name }: Speech): string {
  if (fate.is === 'blank') return `set aside ${count} of ${name(fate.blank)}, ${size}`;
  if (fate.is === 'part') return `${count} of part ${partName(sheet, fate.part)}, ${size}, to cut later`;
  return fate.keep ? `keep ${plural(count, 'offcut')}, ${size}` : `scrap: ${count}, ${size}`;
}

function givesText(step: TrimStep, speech: Speech): string {
  const copies = step.pieces / Math.max(1, step.places.length);
  const one = ({ fate, width, height, places }: Given): string =>
    fateText(fate, step.sheet, formatSize({ width, height }, speech.style), places.length * copies, speech);
  return step.gives.map(one).join('; ');
}

/** Which parts a step handles, and how many of them at once. */
function handledText({ sheet, part, width, height, pieces, atOnce, stacks }: TrimStep, { style }: Speech): string {
  const what = part === null ? `sheet ${sheet + 1}` : `part ${partName(sheet, part)}`;
  const stacked = atOnce === 1 ? '' : stacks === 1 ? ', all at once' : `, ${atOnce} at once`;
  return `${what}, ${formatSize({ width, height }, style)} (${pieces}${stacked})`;
}

function stepText(step: TrimStep, speech: Speech): string {
  const handled = handledText(step, speech);
  const length = (value: Parameters<typeof formatLength>[0]): string => formatLength(value, speech.style);
  if (step.do === 'take') return `Take ${handled} as it is: ${givesText(step, speech)}.`;
  if (step.do === 'margins') {
    const sides = (['top', 'right', 'bottom', 'left'] as const).filter((side) => step.margins[side] > 0);
    const off = sides.map((side) => `${length(step.margins[side])} at the ${side}`).join(', ');
    return `Trim the margins off ${handled}: ${off}: ${givesText(step, speech)}.`;
  }
  const turn = step.turn ? 'Turn the work by a quarter. ' : '';
  const set = step.set ? `Set the guide to ${length(step.setting)}. ` : '';
  const { stop } = step;
  const way = stop
    ? `that far from the ${step.from}, start at the ${stop.start} edge and stop after ${length(stop.length)}`
    : `${step.times === 1 ? 'once' : `${step.times} times`}, that far from the ${step.from}`;
  const gives = step.gives.length === 0 ? 'the part stays in one piece' : givesText(step, speech);
  return `${turn}${set}Cut ${handled} ${way}: ${gives}.`;
}

function paperLines(sketch: Sketch, { paper, job, plan }: PaperPlan, options: StepOptions, speech: Speech): string[] {
  const list = stepList(plan, job.trimmer, options);
  const { least, proven } = fewestSettings(plan.sheets, job.trimmer.kerf);
  const fewest = proven ? 'no order of these cuts needs fewer' : `at least ${least} in any order of these cuts`;
  const title = sketch.papers.find(({ id }) => id === paper)?.name ?? paper;
  const layouts = plan.sheets.map(
    (layout, index) => `  sheet ${index + 1}: ${layout.copies} of ${title}, ${formatSize(layout, speech.style)}`,
  );
  return [
    `${title}: ${plural(plan.counts.sheets, 'sheet')}, ${plural(list.settings, 'setting')} (${fewest}), ${plural(list.turns, 'turn')}`,
    ...layouts,
    ...plan.unmade.map(({ blank, quantity, reason }) => `  not made: ${speech.name(blank)} (${quantity}), ${reason}`),
    ...list.steps.map((step, index) => `  ${index + 1}. ${stepText(step, speech)}`),
  ];
}

/** The steps at the trimmer for a batch, in plain words, paper by paper, with the caution for blades. */
export function stepsText(sketch: Sketch, batch: BatchPlan, options: StepOptions = {}): string {
  const labels = labelPieces(sketch);
  const speech: Speech = { style: { unit: sketch.unit }, name: (blank) => labelOfBlank(labels, blank) };
  const pieces = [...labels].map(
    ([id, label]) => `  ${label} ${sketch.pieces.find((piece) => piece.id === id)?.name ?? 'Card base'}`,
  );
  return `${[
    `${sketch.title}: steps at the trimmer for ${plural(batch.cards, 'card')}`,
    BLADE_CAUTION,
    ...pieces,
    ...batch.papers.flatMap((paper) => paperLines(sketch, paper, options, speech)),
  ].join('\n')}\n`;
}
