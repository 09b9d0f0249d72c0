import { type Given, type StepOptions, TICKS_PER_INCH, type TrimStep } from '@trimwell/geometry';
import {
  type BatchPlan,
  centreOf,
  type HiddenCentreOffer,
  hiddenCentreOffers,
  type PaperPlan,
  type Sketch,
} from '@trimwell/sketch';
import { labelOfBlank, labelPieces } from '../draw/labels.js';
import { stagedSteps } from '../page/staged-steps.js';
import { cautionsFor } from './centre-text.js';

interface StepsSpeech {
  readonly label: (blank: string) => string;
  readonly offers: readonly HiddenCentreOffer[];
}

/** One paper's steps as plain data, blanks with the letters of the drawing, and what has to be cut out with a knife. */
function paperSteps(paperPlan: PaperPlan, options: StepOptions, { label, offers }: StepsSpeech): object {
  const { paper, plan } = paperPlan;
  const given = ({ fate, ...rest }: Given): object =>
    fate.is === 'blank' ? { fate: { ...fate, label: label(fate.blank) }, ...rest } : { fate, ...rest };
  const step = ({ gives, ...rest }: TrimStep): object => ({ ...rest, gives: gives.map(given) });
  const { settings, turns, least, stages } = stagedSteps(paperPlan, options);
  let before = 0;
  const centres = stages.flatMap(({ centre, count, steps }) => {
    const beforeStep = before;
    before += steps.length;
    if (centre === null) return [];
    const { place, coveredBy } = offers.find(({ piece }) => piece === centre) ?? {};
    return [{ piece: centre, label: label(centre), pieces: count, beforeStep, place, coveredBy }];
  });
  const sheets = plan.sheets.map(({ paper: id, copies, width, height, usable }) => ({
    copies,
    width,
    height,
    usable,
    ...(centreOf(id) === null ? {} : { centreOf: centreOf(id) }),
  }));
  return {
    paper,
    settings,
    leastSettings: least,
    fewestSettings: settings === least,
    turns,
    sheets,
    unmade: plan.unmade,
    ...(centres.length > 0 ? { centres } : {}),
    steps: stages.flatMap(({ steps }) => steps.map(step)),
  };
}

/**
 * The document of a batch's steps at the trimmer, `"trimwellSteps": 1`; lengths in ticks, keys always in the same
 * order. FORMATS.md describes it.
 */
export function writeSteps(sketch: Sketch, batch: BatchPlan, options: StepOptions = {}): object {
  const labels = labelPieces(sketch);
  const speech: StepsSpeech = { label: (blank) => labelOfBlank(labels, blank), offers: hiddenCentreOffers(sketch) };
  return {
    trimwellSteps: 1,
    ticksPerInch: TICKS_PER_INCH,
    title: sketch.title,
    cards: batch.cards,
    complete: batch.complete,
    stack: options.stack ?? 2,
    caution: cautionsFor(batch).join(' '),
    papers: batch.papers.map((paper) => paperSteps(paper, options, speech)),
  };
}
