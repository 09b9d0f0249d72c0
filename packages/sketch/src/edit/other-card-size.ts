import { flatCardBase, inches, millimetres, type Size, type Unit } from '@trimwell/geometry';
import type { Card, CardEdit, Sketch } from '../model/sketch.js';
import { fitToCard } from './fit-to-card.js';
import { withVariation } from './variations.js';

type Form = 'card' | 'slimline' | 'square';

const inInches = (width: number, height: number): Size => ({ width: inches(width), height: inches(height) });
const inMillimetres = (width: number, height: number): Size => ({
  width: millimetres(width),
  height: millimetres(height),
});

/**
 * Two usual sizes of each form, standing upright, the smaller first: those that makers ask each other for (common
 * practice; A6 and A5 are ISO 216, DL and its short form ISO 269).
 */
const USUAL: Readonly<Record<Unit, Readonly<Record<Form, readonly Size[]>>>> = {
  in: {
    card: [inInches(4.25, 5.5), inInches(5, 7)],
    slimline: [inInches(3.5, 6), inInches(3.5, 8.5)],
    square: [inInches(5, 5), inInches(6, 6)],
  },
  mm: {
    card: [inMillimetres(105, 148), inMillimetres(148, 210)],
    slimline: [inMillimetres(70, 148), inMillimetres(99, 210)],
    square: [inMillimetres(125, 125), inMillimetres(145, 145)],
  },
};

function formOf({ width, height }: Size): Form {
  const [short, long] = width < height ? [width, height] : [height, width];
  if (short === long) return 'square';
  return long > 1.6 * short ? 'slimline' : 'card';
}

/** True when the opened card is cut from a sheet of its paper, turned if the print allows it. */
function baseFits({ papers }: Sketch, card: Card): boolean {
  const paper = papers.find(({ id }) => id === card.base);
  if (!paper) return false;
  const { margins } = paper;
  const width = paper.width - margins.left - margins.right;
  const height = paper.height - margins.top - margins.bottom;
  const flat = flatCardBase(card);
  return (
    (flat.width <= width && flat.height <= height) ||
    (!paper.directional && flat.height <= width && flat.width <= height)
  );
}

/**
 * The card and its pieces fitted to another usual size of its form, larger if possible; without its envelope, which is
 * another one then. Empty where no other size is cut from the paper of the base and accepted.
 */
export function otherCardSize(sketch: Sketch, accepts: (varied: Sketch) => boolean): readonly CardEdit[] {
  const { envelope: _envelope, ...card } = sketch.card;
  const lying = card.width > card.height;
  const sizes = USUAL[sketch.unit][formOf(card)].map(({ width, height }) =>
    lying ? { width: height, height: width } : { width, height },
  );
  for (const size of sizes.toReversed()) {
    const other: Card = { ...card, ...size };
    if ((size.width === card.width && size.height === card.height) || !baseFits(sketch, other)) continue;
    const edits = fitToCard(sketch, other);
    const { sketch: varied, problems } = withVariation(sketch, { id: 'size', name: 'Size', note: '', edits });
    if (problems.length === 0 && accepts(varied)) return edits;
  }
  return [];
}
