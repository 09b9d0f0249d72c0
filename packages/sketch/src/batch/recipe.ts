import { type CutPaper, flatCardBase, inches, type Length, millimetres, type Trimmer, ticks } from '@trimwell/geometry';
import { RULER_STEPS } from '../model/ruler-steps.js';
import type { Paper, Sketch } from '../model/sketch.js';
import { fitsInto, type RecipeCentre } from './centre-papers.js';
import { CARD_BASE, pieceBlank } from './piece-blank.js';

export { rulerStep } from '../model/ruler-steps.js';
export { CARD_BASE, pieceBlank } from './piece-blank.js';

/** One role of a card: a blank that every card needs `perCard` times, from one paper or taking turns among several. */
export interface RecipePart {
  readonly blank: string;
  readonly width: Length;
  readonly height: Length;
  readonly perCard: number;
  /** One paper, or the papers of a mix in its order. */
  readonly papers: readonly string[];
}

/**
 * All that the planner needs of a sketch, and nothing else: moving a piece on its face leaves the recipe equal, so that
 * nothing is planned again. (Only with hidden centres switched on does it matter what lies above what.)
 */
export interface BatchRecipe {
  readonly cards: number | 'as many as possible';
  readonly trimmer: Trimmer;
  readonly papers: readonly CutPaper[];
  readonly parts: readonly RecipePart[];
  /** Groups of blanks, no two of which should share a paper on one card. */
  readonly contrast: readonly (readonly string[])[];
  /** Centres that may be cut out of pieces, in gluing order; empty unless the batch has them switched on. */
  readonly centres: readonly RecipeCentre[];
}

/** The sheets of `paper` as the planner sees them. */
export function cutPaper(paper: Paper): CutPaper {
  const { id, width, height, directional, margins } = paper;
  return { id, width, height, directional, margins, sheets: paper.sheets ?? null, price: paper.price ?? null };
}

function papersOf(sketch: Sketch, from: string): readonly string[] {
  return sketch.mixes.find((mix) => mix.id === from)?.papers ?? [from];
}

/**
 * The trimmer that a sketch is planned for: blade 12 in (305 mm for metric sketches, so that a 305 mm sheet can be
 * cut), strips of 1/4 in (6 mm) can be held, trims of 1/16 in come off cleanly (1 mm in metric sketches: two A5 from an
 * A4 sheet leave exactly that), no kerf (common practice,
 * no source). The ruler's step is the coarsest on which every blank lies; a blank off every mark is a matter for a
 * finding, not a reason to make nothing, so the step is dropped then.
 */
export function sketchTrimmer(unit: Sketch['unit'], sides: readonly Length[]): Trimmer {
  const step = RULER_STEPS[unit].find((candidate) => sides.every((side) => side % candidate === 0));
  const metric = unit === 'mm';
  return {
    bladeLength: metric ? millimetres(305) : inches(12),
    narrowestStrip: metric ? millimetres(6) : inches(1 / 4),
    thinnestTrim: metric ? millimetres(1) : inches(1 / 16),
    kerf: ticks(0),
    rulerStep: step ?? null,
    stoppedCuts: false,
  };
}

/** The part of a piece, or of the card base. */
export function pieceOfPart(parts: readonly RecipePart[], piece: string): RecipePart | undefined {
  return parts.find(({ blank }) => blank === piece);
}

/** By paper, the other parts that a rectangle of that size, cut out of `piece`, is large enough for; no paper without any. */
export function partsFrom(
  { papers, parts }: Pick<BatchRecipe, 'papers' | 'parts'>,
  piece: string,
  size: { readonly width: Length; readonly height: Length },
): readonly { readonly paper: string; readonly fits: readonly RecipePart[] }[] {
  const own = pieceOfPart(parts, piece);
  return papers.flatMap(({ id, directional }) => {
    if (!own?.papers.includes(id)) return [];
    const fits = parts.filter((part) => part !== own && part.papers.includes(id) && fitsInto(part, size, directional));
    return fits.length > 0 ? [{ paper: id, fits }] : [];
  });
}

/**
 * The recipe of `sketch`, the card base first, then every piece in gluing order, on both faces; without hidden centres,
 * whatever its batch says (see `batchRecipe`).
 */
export function plainRecipe(sketch: Sketch): BatchRecipe {
  const base = flatCardBase(sketch.card);
  const parts: readonly RecipePart[] = [
    { blank: CARD_BASE, width: base.width, height: base.height, perCard: 1, papers: [sketch.card.base] },
    ...sketch.pieces.map((piece) => ({
      blank: piece.id,
      ...pieceBlank(sketch, piece),
      perCard: piece.perCard,
      papers: papersOf(sketch, piece.from),
    })),
  ];
  const sides = parts.flatMap((part) => [part.width, part.height]);
  return {
    cards: sketch.batch.cards,
    trimmer: { ...sketchTrimmer(sketch.unit, sides), stoppedCuts: sketch.batch.stoppedCuts },
    papers: sketch.papers.map(cutPaper),
    parts,
    contrast: sketch.batch.contrast,
    centres: [],
  };
}
