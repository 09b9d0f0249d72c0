import type { Fate, Given, TrimStep } from '@trimwell/geometry';
import { labelAt } from '../draw/labels.js';
import { calledBlank, type HandoutContext } from './context.js';

/** The name of a part that is cut on later: the number of its sheet, and a small letter for it on that sheet. */
function partName(sheet: number, part: number): string {
  return `${sheet}${labelAt(part).toLowerCase()}`;
}

interface StepPlace {
  /** The number of the step's sheet in the whole handout. */
  readonly sheet: number;
  readonly context: HandoutContext;
}

function fateText(fate: Fate, count: number, size: string, { sheet, context }: StepPlace): string {
  const { say } = context.speech;
  if (fate.is === 'blank') return say.setAside(count, calledBlank(context, fate.blank), size);
  if (fate.is === 'part') return say.cutLater(count, say.part(partName(sheet, fate.part)), size);
  return fate.keep ? say.keepOffcut(count, size) : say.scrap(count, size);
}

function givesText(step: TrimStep, place: StepPlace): string {
  const copies = step.pieces / Math.max(1, step.places.length);
  const one = ({ fate, width, height, places }: Given): string =>
    fateText(fate, places.length * copies, place.context.speech.size({ width, height }), place);
  return step.gives.map(one).join('; ');
}

function handledText({ part, width, height, pieces, atOnce, stacks }: TrimStep, { sheet, context }: StepPlace): string {
  const { say, size } = context.speech;
  const what = part === null ? say.wholeSheet(sheet) : say.part(partName(sheet, part));
  return say.handled(what, size({ width, height }), pieces, atOnce, stacks);
}

/** What is done in a step, but for moving the guide, which stands before it. */
export function stepSentence(step: TrimStep, place: StepPlace): string {
  const { say, length, list } = place.context.speech;
  const handled = handledText(step, place);
  if (step.do === 'take') return say.takeStep(handled, givesText(step, place));
  if (step.do === 'margins') {
    const sides = (['top', 'right', 'bottom', 'left'] as const).filter((side) => step.margins[side] > 0);
    const margins = list(sides.map((side) => say.marginAt(length(step.margins[side]), side)));
    return say.marginsStep(handled, margins, givesText(step, place));
  }
  const gives = step.gives.length === 0 ? say.oneWhole : givesText(step, place);
  const sentence = step.stop
    ? say.stoppedStep(handled, step.from, step.stop.start, length(step.stop.length), gives)
    : say.cutStep(handled, step.times, step.from, gives);
  return step.turn ? `${say.turn} ${sentence}` : sentence;
}
