import { type Size, ticks, type Unit } from '@trimwell/geometry';
import { rulerStep } from '../model/ruler-steps.js';
import type { Card, Sketch } from '../model/sketch.js';
import { refuseBeginning } from './begin-error.js';
import { cardSides, type Fold } from './card-sizes.js';
import type { Layout } from './layout.js';
import { cutPieces } from './layout-piece.js';
import { roomOf } from './layout-room.js';
import { FRAMED_WORDS, LEANING_PANEL, STEPPED_MATS, THREE_STRIPS, WINDOW_AND_MAT } from './panel-layouts.js';
import {
  BANNER_ON_PANEL,
  CIRCLE_ON_SQUARE,
  QUILT_OF_FOUR,
  ROW_OF_TAGS,
  ROW_OF_WINDOWS,
  WORDS_INSIDE,
} from './shape-layouts.js';
import { startingPapers } from './starting-papers.js';

/** A card with nothing on it yet, and a few papers to begin with. */
const BLANK: Layout = {
  id: 'blank-card',
  name: 'Blank card',
  about: 'The card base alone, and four papers to take from.',
  base: 'oat',
  papers: ['fern', 'cream', 'fronds', 'lane-stripe'],
  supplies: [],
  pieces: () => [],
};

/** What a new card can begin from: the blank card, then eleven layouts of our own. */
export const BEGINNINGS: readonly Layout[] = [
  BLANK,
  WINDOW_AND_MAT,
  THREE_STRIPS,
  BANNER_ON_PANEL,
  CIRCLE_ON_SQUARE,
  FRAMED_WORDS,
  LEANING_PANEL,
  QUILT_OF_FOUR,
  ROW_OF_TAGS,
  STEPPED_MATS,
  ROW_OF_WINDOWS,
  WORDS_INSIDE,
];

/** What a new card is to be. */
export interface NewCard extends Size {
  /** One of `BEGINNINGS`. */
  readonly layout: string;
  readonly unit: Unit;
  readonly fold: Fold;
  /** Left out: none. */
  readonly envelope?: NonNullable<Card['envelope']>;
  /** The sketch's own id; left out: the layout's. */
  readonly id?: string;
}

/** How many cards a new sketch is for, until its maker says otherwise. */
const FIRST_BATCH = 6;

function layoutOf({ layout, width, height, unit }: NewCard): Layout {
  const found = BEGINNINGS.find(({ id }) => id === layout);
  const { least, most } = cardSides(unit);
  const span = unit === 'in' ? '2 to 12 in' : '50 to 305 mm';
  for (const [side, length] of Object.entries({ width, height }))
    if (length < least || length > most) refuseBeginning(side, length, span);
  return found ?? refuseBeginning('layout', layout, BEGINNINGS.map(({ id }) => id).join(', '));
}

/**
 * A sketch of a card of that size in a layout: its pieces in proportion, all on ruler steps, in papers of our own, for a
 * first batch of six cards. The same wish gives the same sketch. On a card whose own size is off the ruler (148.5 mm) the
 * layout lies in the middle, less than half a step from its edges.
 * @throws BeginError for a layout that is not there, a side outside `cardSides`, or a base that fits no sheet when opened.
 */
export function beginSketch(wish: NewCard): Sketch {
  const layout = layoutOf(wish);
  const { width, height, unit, fold } = wish;
  const step = rulerStep(unit);
  const [across, down] = [Math.floor(width / step), Math.floor(height / step)];
  const middled = (whole: number, steps: number) => ticks(Math.floor((whole - steps * step) / 2));
  const scale = { step, left: middled(width, across), top: middled(height, down) };
  const papers = startingPapers(layout.base, layout.papers, { width, height, fold }, unit);
  return {
    trimwell: 1,
    id: wish.id ?? layout.id,
    title: layout.name,
    links: [],
    supplies: layout.supplies,
    unit,
    card: { width, height, fold, base: layout.base, ...(wish.envelope ? { envelope: wish.envelope } : {}) },
    papers,
    mixes: layout.mix ? [{ id: 'prints', name: 'Prints', papers: layout.mix }] : [],
    punches: [],
    pieces: layout.pieces(roomOf(unit, across, down, fold !== 'none')).flatMap((piece) => cutPieces(piece, scale)),
    batch: {
      cards: FIRST_BATCH,
      contrast: layout.contrast ? [layout.contrast] : [],
      stoppedCuts: false,
      hiddenCentres: false,
    },
    variations: [],
  };
}
