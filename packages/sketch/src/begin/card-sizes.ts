import { flatCardBase, inches, type Length, millimetres, type Size, type Unit } from '@trimwell/geometry';
import type { Card } from '../model/sketch.js';
import { ENVELOPE_SIZES, type EnvelopeSize } from './envelope-sizes.js';

export type Fold = Card['fold'];

/** A card size that has a name, standing upright. */
export interface CardSize extends Size {
  readonly id: string;
  readonly name: string;
  /** The unit that its size is stated in, and that its sketch is drawn in. */
  readonly unit: Unit;
  readonly form: 'card' | 'slimline' | 'square';
  /** The standard that states it, or `common practice`. */
  readonly source: string;
  /** The id of the envelope that goes with it. */
  readonly envelope: string;
}

const PRACTICE = 'common practice';

type Named = Pick<CardSize, 'id' | 'name' | 'form' | 'envelope'>;

function american(named: Named, width: number, height: number): CardSize {
  return { ...named, unit: 'in', width: inches(width), height: inches(height), source: PRACTICE };
}

function metric(named: Named, width: number, height: number, source: string): CardSize {
  return { ...named, unit: 'mm', width: millimetres(width), height: millimetres(height), source };
}

/**
 * The usual sizes of a folded card, smallest first within each form. Sizes of the United States are those sold with the
 * envelope of that name (common practice; charts agree on the envelope, and differ by 1/8 in on some cards). A5, A6 and
 * A7 are sheets of ISO 216:2007; DL is A4 in thirds, the short slimline A5 in thirds, as ISO 269 names them for its
 * envelopes.
 */
export const CARD_SIZES: readonly CardSize[] = [
  american({ id: 'us-a1', name: 'US A1', form: 'card', envelope: 'us-a1' }, 3.5, 4.875),
  american({ id: 'us-a2', name: 'US A2', form: 'card', envelope: 'us-a2' }, 4.25, 5.5),
  american({ id: 'us-a6', name: 'US A6', form: 'card', envelope: 'us-a6' }, 4.5, 6.25),
  american({ id: 'us-a7', name: 'US A7', form: 'card', envelope: 'us-a7' }, 5, 7),
  american({ id: 'us-a8', name: 'US A8', form: 'card', envelope: 'us-a8' }, 5.25, 7.875),
  american({ id: 'us-a9', name: 'US A9', form: 'card', envelope: 'us-a9' }, 5.5, 8.5),
  american({ id: 'us-a10', name: 'US A10', form: 'card', envelope: 'us-a10' }, 5.75, 9.25),
  american({ id: 'us-slimline-small', name: 'Short slimline', form: 'slimline', envelope: 'us-6-3-4' }, 3.5, 6),
  american({ id: 'us-slimline', name: 'Slimline', form: 'slimline', envelope: 'us-9' }, 3.5, 8.5),
  american({ id: 'us-slimline-10', name: 'Long slimline', form: 'slimline', envelope: 'us-10' }, 3.875, 9.25),
  american({ id: 'us-square-3', name: 'Small square', form: 'square', envelope: 'us-square-3' }, 3, 3),
  american({ id: 'us-square-5', name: 'Square', form: 'square', envelope: 'us-square-5' }, 5, 5),
  american({ id: 'us-square-6', name: 'Large square', form: 'square', envelope: 'us-square-6' }, 6, 6),
  metric({ id: 'iso-a7', name: 'ISO A7', form: 'card', envelope: 'iso-c7' }, 74, 105, 'ISO 216:2007'),
  metric({ id: 'iso-a6', name: 'ISO A6', form: 'card', envelope: 'iso-c6' }, 105, 148, 'ISO 216:2007'),
  metric({ id: 'iso-a5', name: 'ISO A5', form: 'card', envelope: 'iso-c5' }, 148, 210, 'ISO 216:2007'),
  metric({ id: 'third-a5', name: 'Short slimline', form: 'slimline', envelope: 'iso-c7-c6' }, 70, 148, 'ISO 269'),
  metric({ id: 'iso-dl', name: 'DL slimline', form: 'slimline', envelope: 'iso-dl' }, 99, 210, 'ISO 269'),
  metric({ id: 'square-125', name: 'Small square', form: 'square', envelope: 'square-130' }, 125, 125, PRACTICE),
  metric({ id: 'square-145', name: 'Square', form: 'square', envelope: 'square-155' }, 145, 145, PRACTICE),
];

/** The usual card of that size, upright or lying; null for a size of one's own. */
export function usualCard({ width, height }: Size): CardSize | null {
  const same = (size: CardSize): boolean =>
    (size.width === width && size.height === height) || (size.width === height && size.height === width);
  return CARD_SIZES.find(same) ?? null;
}

/** The envelope that goes with a usual card. @throws RangeError when the card names none that is known. */
export function envelopeOf(size: CardSize): EnvelopeSize {
  const found = ENVELOPE_SIZES.find(({ id }) => id === size.envelope);
  if (!found) throw new RangeError(`${size.id} names the envelope ${size.envelope}, which is not in the list`);
  return found;
}

/** Least and most that a side of a new card measures: 2 in (50 mm), and what a trimmer's blade of 12 in (305 mm) cuts. */
export function cardSides(unit: Unit): { readonly least: Length; readonly most: Length } {
  return unit === 'in' ? { least: inches(2), most: inches(12) } : { least: millimetres(50), most: millimetres(305) };
}

/** Sheets that a card base is cut from, smaller first. */
export function baseSheets(unit: Unit): readonly Size[] {
  return unit === 'in'
    ? [
        { width: inches(8.5), height: inches(11) },
        { width: inches(12), height: inches(12) },
      ]
    : [
        { width: millimetres(210), height: millimetres(297) },
        { width: millimetres(305), height: millimetres(305) },
      ];
}

/** The smallest sheet that the opened base of `card` is cut from, turned if need be; null when none is large enough. */
export function baseSheet(card: Size & { readonly fold: Fold }, unit: Unit): Size | null {
  const flat = flatCardBase(card);
  const fits = ({ width, height }: Size): boolean =>
    (flat.width <= width && flat.height <= height) || (flat.height <= width && flat.width <= height);
  return baseSheets(unit).find(fits) ?? null;
}

const FOLDS: readonly Fold[] = ['left', 'top', 'none'];

/**
 * The sides on which a card of that size can be folded and still be cut from one sheet; the usual one first: an upright
 * or square card opens like a book, a lying one upwards (common practice, no source).
 */
export function foldsOf(card: Size, unit: Unit): readonly Fold[] {
  const possible = FOLDS.filter((fold) => baseSheet({ ...card, fold }, unit) !== null);
  const usual = card.width > card.height ? 'top' : 'left';
  return possible.includes(usual) ? [usual, ...possible.filter((fold) => fold !== usual)] : possible;
}
