import {
  type Fate,
  formatLength,
  formatSize,
  type Given,
  type LengthStyle,
  type StepOptions,
  type TrimStep,
} from '@trimwell/geometry';
import { type BatchPlan, centreOf, counted, type PaperPlan, realSheets, type Sketch } from '@trimwell/sketch';
import { labelAt, labelOfBlank, labelPieces } from '../draw/labels.js';
import { stagedSteps } from '../page/staged-steps.js';
import { type CentreSpeech, cautionsFor, centreSpeech, knifeText } from './centre-text.js';

/** What the sentence of a step needs to know. */
export interface StepSpeech {
  readonly style: LengthStyle;
  readonly name: (blank: string) => string;
}

/** What the sentences of one paper's steps need to know. */
interface Speech extends StepSpeech {
  readonly centres: CentreSpeech;
}

/** The name of a part that is cut on later: the number of its sheet, and a small letter for it on that sheet. */
export function partName(sheet: number, part: number): string {
  return `${sheet + 1}${labelAt(part).toLowerCase()}`;
}

function fateText(fate: Fate, sheet: number, size: string, count: number, { name }: StepSpeech): string {
  if (fate.is === 'blank') return `set aside ${count} of ${name(fate.blank)}, ${size}`;
  if (fate.is === 'part') return `${count} of part ${partName(sheet, fate.part)}, ${size}, to cut later`;
  return fate.keep ? `keep ${counted(count, 'offcut')}, ${size}` : `scrap: ${count}, ${size}`;
}

function givesText(step: TrimStep, speech: StepSpeech): string {
  const copies = step.pieces / Math.max(1, step.places.length);
  const one = ({ fate, width, height, places }: Given): string =>
    fateText(fate, step.sheet, formatSize({ width, height }, speech.style), places.length * copies, speech);
  return step.gives.map(one).join('; ');
}

/** Which parts a step handles, and how many of them at once. */
function handledText({ sheet, part, width, height, pieces, atOnce, stacks }: TrimStep, { style }: StepSpeech): string {
  const what = part === null ? `sheet ${sheet + 1}` : `part ${partName(sheet, part)}`;
  const stacked = atOnce === 1 ? '' : stacks === 1 ? ', all at once' : `, ${atOnce} at once`;
  return `${what}, ${formatSize({ width, height }, style)} (${pieces}${stacked})`;
}

/** One step as a sentence. */
export function stepText(step: TrimStep, speech: StepSpeech): string {
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
  const { settings, turns, least, stages } = stagedSteps({ paper, job, plan }, options);
  const fewest =
    settings === least ? 'no order of these cuts needs fewer' : `at least ${least} in any order of these cuts`;
  const title = sketch.papers.find(({ id }) => id === paper)?.name ?? paper;
  const layouts = plan.sheets.map((layout, index) => {
    const centre = centreOf(layout.paper);
    const what = centre === null ? title : `the centre of ${speech.centres.called(centre)}`;
    return `  sheet ${index + 1}: ${layout.copies} of ${what}, ${formatSize(layout, speech.style)}`;
  });
  const steps = stages.flatMap(({ centre, count, steps: own }) => {
    const knife = centre === null ? [] : [`${capital(knifeText(centre, count, speech.centres))}.`];
    return [...knife, ...own.map((step) => stepText(step, speech))];
  });
  return [
    `${title}: ${counted(realSheets(plan), 'sheet')}, ${counted(settings, 'setting')} (${fewest}), ${counted(turns, 'turn')}`,
    ...layouts,
    ...plan.unmade.map(({ blank, quantity, reason }) => `  not made: ${speech.name(blank)} (${quantity}), ${reason}`),
    ...steps.map((step, index) => `  ${index + 1}. ${step}`),
  ];
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The steps at the trimmer for a batch, in plain words, paper by paper, with the knife work and the cautions for blades. */
export function stepsText(sketch: Sketch, batch: BatchPlan, options: StepOptions = {}): string {
  const labels = labelPieces(sketch);
  const speech: Speech = {
    style: { unit: sketch.unit },
    name: (blank) => labelOfBlank(labels, blank),
    centres: centreSpeech(sketch),
  };
  const pieces = [...labels].map(
    ([id, label]) => `  ${label} ${sketch.pieces.find((piece) => piece.id === id)?.name ?? 'Card base'}`,
  );
  return `${[
    `${sketch.title}: steps at the trimmer for ${counted(batch.cards, 'card')}`,
    ...cautionsFor(batch),
    ...pieces,
    ...batch.papers.flatMap((paper) => paperLines(sketch, paper, options, speech)),
  ].join('\n')}\n`;
}
