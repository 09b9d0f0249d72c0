import { formatLength, type Length, type Size, ticks, type Unit } from '@trimwell/geometry';
import type { Card } from '@trimwell/sketch';

/** Every sentence of the tray of the card and its words. */

export const NO_TITLE = 'A sketch needs a title.';
export const NO_WORDS = 'Say in a few words where the line leads.';
export const NO_ADDRESS =
  'Not an address that can be printed. Allowed: one that begins with https:// and has no spaces.';
export const SAME_SUPPLY = 'This stands in the list already.';
export const POST = 'Square and thick cards may need more postage: ask at your post office.';

/** Tools and supplies of the trade in plain words, to choose from. */
export const USUAL_SUPPLIES: readonly string[] = [
  'Bone folder',
  'Circle cutter',
  'Corner rounder, 1/4 in',
  'Craft knife and cutting mat',
  'Double-sided tape',
  'Dry adhesive runner',
  'Foam pads, 1 mm',
  'Foam pads, 2 mm',
  'Foam tape',
  'Ink pad, black',
  'Ink pad, brown',
  'Liquid adhesive',
  'Paper trimmer',
  'Pencil and eraser',
  'Ribbon',
  'Safety ruler',
  'Scoring board',
  'Stamp block',
  'Thin cord',
];

function shortAndLong({ width, height }: Size): readonly [number, number] {
  return width <= height ? [width, height] : [height, width];
}

/** How `card` lies in its envelope: what it has to spare both ways, or by how much it is too large. */
export function envelopeText(card: Size, envelope: NonNullable<Card['envelope']>, unit: Unit): string {
  const [short, long] = shortAndLong(card);
  const [inside, along] = shortAndLong(envelope);
  const figure = (length: number): string => formatLength(ticks(length), { unit });
  const over = Math.max(short - inside, long - along);
  if (over > 0) return `The card is ${figure(over)} too large for it.`;
  if (over === 0) return 'The card fills it to the edge: paper needs a little room.';
  return `${figure(inside - short)} and ${figure(along - long)} to spare.`;
}

export function sizeName(name: string, { width, height }: Size, unit: Unit): string {
  const figure = (length: Length, bare: boolean): string => formatLength(length, { unit, bare });
  return `${name}: ${figure(width, true)} × ${figure(height, false)}`;
}
