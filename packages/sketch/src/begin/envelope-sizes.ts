import { inches, type Length, millimetres, type Size, type Unit } from '@trimwell/geometry';

/** An envelope as it is sold. */
export interface EnvelopeSize extends Size {
  readonly id: string;
  readonly name: string;
  /** The unit that its size is stated in. */
  readonly unit: Unit;
  /** The standard that states it, or `common practice`. */
  readonly source: string;
}

function american(id: string, name: string, width: number, height: number): EnvelopeSize {
  return { id, name, unit: 'in', width: inches(width), height: inches(height), source: 'common practice' };
}

function metric(id: string, name: string, width: number, height: number, source = 'ISO 269'): EnvelopeSize {
  return { id, name, unit: 'mm', width: millimetres(width), height: millimetres(height), source };
}

/**
 * The envelopes that cards are usually sent in, short side first, smallest first within each unit. The letter names of
 * the trade in the United States are not the ISO sizes of the same name, so they say US. Square ones of the United States, sold from
 * 5 to 9 in, have the size of the card that they take in their id, 1/4 in less than their own.
 */
export const ENVELOPE_SIZES: readonly EnvelopeSize[] = [
  american('us-square-3', 'US square, 3 1⁄4 in', 3.25, 3.25),
  american('us-a1', 'US A1', 3.625, 5.125),
  american('us-6-3-4', 'US No. 6 3⁄4', 3.625, 6.5),
  american('us-square-4-3-4', 'US square, 5 in', 5, 5),
  american('us-a2', 'US A2', 4.375, 5.75),
  american('us-square-5', 'US square, 5 1⁄4 in', 5.25, 5.25),
  american('us-a6', 'US A6', 4.75, 6.5),
  american('us-9', 'US No. 9', 3.875, 8.875),
  american('us-square-5-3-4', 'US square, 6 in', 6, 6),
  american('us-a7', 'US A7', 5.25, 7.25),
  american('us-square-6', 'US square, 6 1⁄4 in', 6.25, 6.25),
  american('us-10', 'US No. 10', 4.125, 9.5),
  american('us-square-6-1-4', 'US square, 6 1⁄2 in', 6.5, 6.5),
  american('us-a8', 'US A8', 5.5, 8.125),
  american('us-square-6-3-4', 'US square, 7 in', 7, 7),
  american('us-a9', 'US A9', 5.75, 8.75),
  american('us-a10', 'US A10', 6, 9.5),
  american('us-square-7-3-4', 'US square, 8 in', 8, 8),
  american('us-square-8-3-4', 'US square, 9 in', 9, 9),
  metric('iso-c7', 'ISO C7', 81, 114),
  metric('iso-c7-c6', 'ISO C7/C6', 81, 162),
  metric('square-130', 'square, 130 mm', 130, 130, 'common practice'),
  metric('iso-c6', 'ISO C6', 114, 162),
  metric('iso-b6', 'ISO B6', 125, 176),
  metric('square-155', 'square, 155 mm', 155, 155, 'common practice'),
  metric('iso-dl', 'ISO DL', 110, 220),
  metric('iso-c6-c5', 'ISO C6/C5', 114, 229),
  metric('iso-c5', 'ISO C5', 162, 229),
  metric('iso-b5', 'ISO B5', 176, 250),
  metric('iso-c4', 'ISO C4', 229, 324),
];

/** Least room that a layered card needs in its envelope, both ways together: 1/8 in (common practice, no source). */
const LEAST_ROOM = inches(1 / 8);

/** The envelopes that `card` goes into with 1/8 in to spare both ways, turned if need be; the tightest first. */
export function envelopesFor(card: Size): readonly EnvelopeSize[] {
  const [short, long] = sides(card);
  const room = ({ width, height }: EnvelopeSize): number => width * height;
  return ENVELOPE_SIZES.filter((envelope) => {
    const [inside, along] = sides(envelope);
    return short + LEAST_ROOM <= inside && long + LEAST_ROOM <= along;
  }).sort((a, b) => room(a) - room(b));
}

function sides({ width, height }: Size): readonly [Length, Length] {
  return width <= height ? [width, height] : [height, width];
}
