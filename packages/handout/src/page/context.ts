import type { BatchPlan, BatchYield, Sketch } from '@trimwell/sketch';
import { pieceOfBlank } from '@trimwell/sketch';
import { labelPieces } from '../draw/labels.js';
import type { Glued } from './gluing.js';
import type { TextMeasure } from './measure.js';
import { type PageFrame, POINT } from './sheet-of-paper.js';
import type { Speech } from './speech.js';

/** What the sheets at hand give. */
export type CardsGiven = Pick<BatchYield, 'cards' | 'proven' | 'runsOut'>;

/** All that the parts of a handout are laid out from. */
export interface HandoutContext {
  readonly sketch: Sketch;
  readonly batch: BatchPlan;
  readonly most: CardsGiven | null;
  readonly frame: PageFrame;
  readonly speech: Speech;
  readonly measure: TextMeasure;
  /** The country whose post takes the cards, of those in the table; null where none was chosen. */
  readonly post: string | null;
  /** What is glued, each face in its order. */
  readonly gluing: readonly Glued[];
  readonly labels: ReadonlyMap<string, string>;
}

/** A context without its labels, which follow from the sketch. */
export function handoutContext(given: Omit<HandoutContext, 'labels'>): HandoutContext {
  return { ...given, labels: labelPieces(given.sketch) };
}

export function frameWidth({ frame }: HandoutContext): number {
  return frame.right - frame.left;
}

/** The two columns of the first pages: the sizes, and beside them what to have at hand. */
export function columnsOf(context: HandoutContext) {
  const width = frameWidth(context);
  const gutter = 20 * POINT;
  const side = Math.round(width * 0.32);
  return { main: width - side - gutter, side, sideX: context.frame.right - side };
}

/** A piece as it is named in a sentence: `B Panel mat`. */
export function called({ sketch, labels, speech }: HandoutContext, piece: string): string {
  const name = sketch.pieces.find(({ id }) => id === piece)?.name ?? speech.say.cardBase;
  return `${labels.get(piece) ?? '?'} ${name}`;
}

/** The piece that a blank becomes, as it is named in a sentence. */
export function calledBlank(context: HandoutContext, blank: string): string {
  return called(context, pieceOfBlank(blank));
}

/** A paper or a mix by its name. */
export function sourceName({ sketch, speech }: HandoutContext, id: string): string {
  const mix = sketch.mixes.find((each) => each.id === id);
  if (mix) return speech.say.mix(mix.name);
  return sketch.papers.find((each) => each.id === id)?.name ?? id;
}
