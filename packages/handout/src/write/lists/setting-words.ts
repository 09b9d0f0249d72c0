import { formatLength, formatSize, type Given, type LengthStyle, type TrimStep } from '@trimwell/geometry';
import { counted, pieceOfBlank, type Sketch } from '@trimwell/sketch';
import { labelOfBlank, labelPieces } from '../../draw/labels.js';
import { partName } from '../steps-text.js';
import type { BatchStep } from './setting-steps.js';

/** What the sentences of a list by setting need to know, looked up once. */
export interface SettingSpeech {
  readonly style: LengthStyle;
  readonly paper: (id: string) => string;
  readonly label: (blank: string) => string;
  readonly name: (blank: string) => string;
}

export function settingSpeech(sketch: Sketch): SettingSpeech {
  const labels = labelPieces(sketch);
  const { papers, pieces, unit } = sketch;
  return {
    style: { unit, bare: true },
    paper: (id) => papers.find((paper) => paper.id === id)?.name ?? id,
    label: (blank) => labelOfBlank(labels, blank),
    name: (blank) => pieces.find(({ id }) => id === pieceOfBlank(blank))?.name ?? 'Card base',
  };
}

/** How many of `given` come off all copies of the layout together. */
export function givenCount({ places, pieces }: TrimStep, given: Given): number {
  return given.places.length * (pieces / Math.max(1, places.length));
}

function howText(step: TrimStep, { style }: SettingSpeech): string {
  if (step.do === 'take') return 'take it as it is';
  if (step.do === 'margins') {
    const sides = (['top', 'right', 'bottom', 'left'] as const).filter((side) => step.margins[side] > 0);
    return `cut off ${sides.map((side) => `${formatLength(step.margins[side], style)} at the ${side}`).join(', ')}`;
  }
  const { stop, from, times } = step;
  if (stop)
    return `from the ${from}, start at the ${stop.start} edge and stop after ${formatLength(stop.length, style)}`;
  return `${times === 1 ? 'once' : `${times} times`} from the ${from}`;
}

/** What is cut in one step and how: `Ivory card, sheet 1, 8 1⁄2 × 11 (3, 2 at once): once from the left`. */
export function cutText({ paper, layout, step }: BatchStep, speech: SettingSpeech): string {
  const { part, pieces, atOnce, stacks } = step;
  const what = part === null ? `sheet ${layout + 1}` : `part ${partName(layout, part)}`;
  const stacked = atOnce === 1 ? '' : stacks === 1 ? ', all at once' : `, ${atOnce} at once`;
  const size = formatSize(step, speech.style);
  return `${speech.paper(paper)}, ${what}, ${size} (${pieces}${stacked}): ${howText(step, speech)}`;
}

/** What comes off in one step: blanks to set aside, parts that are cut later, offcuts. */
export function givesText({ paper, layout, step }: BatchStep, speech: SettingSpeech): string {
  const one = (given: Given): string => {
    const { fate } = given;
    const count = givenCount(step, given);
    const size = formatSize(given, speech.style);
    if (fate.is === 'blank') return `${count} of ${speech.label(fate.blank)} ${speech.name(fate.blank)}, ${size}`;
    if (fate.is === 'part') return `${count} of part ${partName(layout, fate.part)}, ${size}`;
    return fate.keep ? `${counted(count, 'offcut')} to keep, ${size}` : `scrap (${count})`;
  };
  return step.gives.length === 0 ? `${speech.paper(paper)} stays in one piece` : step.gives.map(one).join('; ');
}
