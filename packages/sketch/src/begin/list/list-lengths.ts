import { type Length, readLength, type Size, type Unit } from '@trimwell/geometry';
import { LARGEST_IN_SKETCH } from '../../model/lengths.js';
import { type BareUnit, unitNamed } from './list-columns.js';

/** What a length in a list can be. */
export type ListLength =
  | { readonly ok: true; readonly length: Length; readonly rounded: boolean }
  | { readonly ok: false; readonly why: 'no unit' | 'no length' };

export const LENGTH_ALLOWED = 'a length above 0, up to 2 m, such as 4 1/4 in, 4¼", 108 mm or 10.8 cm';

/** The unit that the text of a length or of a size ends with, or null for a bare number. */
export function statedUnit(text: string): BareUnit | null {
  const [word = ''] = /(?:[a-z]+|["″”])\s*$/i.exec(text) ?? [];
  return unitNamed(word.replace(/[″”]/, '"'));
}

/** Reads one length; a bare number is in `bare`, and is refused where that is null. */
export function readListLength(text: string, bare: BareUnit | null): ListLength {
  const stated = statedUnit(text);
  if (!stated && !bare) {
    return { ok: false, why: readLength(text, 'in').ok ? 'no unit' : 'no length' };
  }
  const unit: Unit = bare === 'in' ? 'in' : 'mm';
  const reading = readLength(!stated && bare === 'cm' ? `${text} cm` : text, unit);
  if (!reading.ok || reading.length <= 0 || reading.length > LARGEST_IN_SKETCH) return { ok: false, why: 'no length' };
  return { ok: true, length: reading.length, rounded: reading.rounded };
}

/** `4 1/4 x 5 1/2 in` in its two parts, each with the unit that stands at the end; null for another form. */
export function sizeParts(text: string): readonly [width: string, height: string] | null {
  const [width, height, ...more] = text.split(/\s*[x×*]\s*|\s+by\s+/i).map((part) => part.trim());
  if (!width || !height || more.length > 0) return null;
  const unit = statedUnit(height);
  return [unit && !statedUnit(width) ? `${width} ${unit}` : width, height];
}

/** Reads a width and a height in one text; bare numbers are in `bare`. */
export function readListSize(
  text: string,
  bare: BareUnit | null,
): { readonly ok: true; readonly size: Size; readonly rounded: boolean } | Extract<ListLength, { ok: false }> {
  const parts = sizeParts(text);
  if (!parts) return { ok: false, why: 'no length' };
  const [width, height] = [readListLength(parts[0], bare), readListLength(parts[1], bare)];
  if (!width.ok) return width;
  if (!height.ok) return height;
  return {
    ok: true,
    size: { width: width.length, height: height.length },
    rounded: width.rounded || height.rounded,
  };
}
