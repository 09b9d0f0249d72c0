import type { BatchPlan, Sketch } from '@trimwell/sketch';
import type { Drawing, Item } from '../../drawing/drawing.js';
import { batchScene } from './batch-scene.js';
import type { CaptionWords, PictureLayout } from './caption.js';
import { faceDrawing } from './face-scene.js';
import { guideDrawing, guideSheet, guideWords, sheetName } from './guide-scene.js';

/** What a picture is of: the card's face, its inside, every card of a batch, or sheet number `sheet` (from 1) of a plan. */
export type PictureSubject =
  | { readonly of: 'card' }
  | { readonly of: 'inside' }
  | { readonly of: 'batch'; readonly cards: number }
  | { readonly of: 'guide'; readonly plan: BatchPlan; readonly sheet: number };

export const PICTURE_SUBJECTS = ['card', 'inside', 'batch', 'guide'] as const satisfies readonly PictureSubject['of'][];

/** Most cards of one picture: as many as a batch has at most. */
const MOST_CARDS = 500;

/** Height of a guide's figures, for each pixel of the smaller side. */
const FIGURES = 0.026;

/** A picture before it is written: its box in ticks, and what is drawn in it. */
export interface Scene {
  readonly title: string;
  readonly description: string;
  readonly box: Drawing['box'];
  readonly looks: Drawing['looks'];
  /** Drawings that are used at places, or one that stands for itself. */
  readonly drawings: readonly (readonly Item[])[];
  readonly places: readonly { readonly drawing: number; readonly x: number; readonly y: number }[];
}

function plainScene({ title, description, box, looks, items }: Drawing): Scene {
  return { title, description, box, looks, drawings: [items], places: [{ drawing: 0, x: 0, y: 0 }] };
}

/** What is drawn of `subject`. @throws RangeError for a number of cards or a sheet that is not allowed */
export function sceneOf(sketch: Sketch, subject: PictureSubject, { area }: PictureLayout, side: number): Scene {
  switch (subject.of) {
    case 'card':
      return plainScene(faceDrawing(sketch, 'front'));
    case 'inside':
      return plainScene(faceDrawing(sketch, 'inside'));
    case 'batch': {
      const { cards } = subject;
      if (!Number.isSafeInteger(cards) || cards < 1 || cards > MOST_CARDS)
        throw new RangeError(`cards is ${cards}; allowed: a whole number from 1 to ${MOST_CARDS}.`);
      const { box, different, places } = batchScene(sketch, cards, area.width / area.height);
      const [first] = different;
      return {
        title: `${sketch.title}, ${cards === 1 ? '1 card' : `${cards} cards`}`,
        description: `${cards} cards, ${different.length} of them different in their papers. Each: ${first?.description ?? ''}`,
        box,
        looks: first?.looks ?? {},
        drawings: different.map(({ items }) => items),
        places,
      };
    }
    case 'guide': {
      const sheet = guideSheet(subject.plan, subject.sheet);
      const { width, height } = sheet.layout;
      const ticksPerPixel = Math.max(width / area.width, height / area.height);
      return plainScene(guideDrawing(sketch, sheet, side * FIGURES * ticksPerPixel));
    }
  }
}

/** What is said beside it. */
export function wordsOf(sketch: Sketch, subject: PictureSubject, title: string | undefined): CaptionWords {
  const heading = title === undefined || title === '' ? null : title;
  if (subject.of !== 'guide') return { heading, lines: [] };
  const sheet = guideSheet(subject.plan, subject.sheet);
  return { heading: heading ?? sheetName(sketch, sheet), lines: guideWords(sketch, sheet) };
}
