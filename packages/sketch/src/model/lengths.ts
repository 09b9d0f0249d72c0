import { type Length, readLength, TICKS_PER_MM, type Unit, writeLength } from '@trimwell/geometry';
import * as z from 'zod/mini';

/** Nothing in a sketch is larger or farther away than 2 m: far beyond any sheet of a card maker. */
export const LARGEST_IN_SKETCH = 2_000 * TICKS_PER_MM;

function isLength(value: unknown): boolean {
  return Number.isSafeInteger(value);
}

/**
 * A length as a document writes it (a text such as "4 1/4 in", or a bare number in the sketch's unit) on the one side
 * and as whole ticks on the other. `least` and `most` are in ticks.
 */
function lengthBetween(unit: Unit, least: number, most: number, name: string) {
  return z.codec(z.union([z.string().check(z.maxLength(40)), z.number()]), z.custom<Length>(isLength), {
    decode: (written, context) => {
      const reading = readLength(typeof written === 'number' ? plainNumber(written) : written, unit);
      if (!reading.ok || reading.length < least || reading.length > most) {
        const metres = most / TICKS_PER_MM / 1000;
        const span =
          least === 1
            ? `above 0, up to ${metres} m`
            : `from ${least === -most ? `-${metres} m` : writeLength(least as Length, unit)} to ${metres} m`;
        context.issues.push({ code: 'custom', input: written, message: `${name} ${span}, such as 4 1/4 in or 108 mm` });
        return z.NEVER;
      }
      return reading.length;
    },
    encode: (length) => writeLength(length, unit),
  });
}

/** Digits of a JSON number without an exponent, so that it is read like typed text. */
function plainNumber(n: number): string {
  const text = String(n);
  return text.includes('e') ? n.toFixed(12) : text;
}

/** The kinds of length that a document holds, for bare numbers in `unit`, none beyond `largest` ticks. */
export function lengthsIn(unit: Unit, largest = LARGEST_IN_SKETCH) {
  return {
    /** A side of something: one tick or more. */
    side: lengthBetween(unit, 1, largest, 'a length'),
    /** A repeat of a punch or a print: 1 mm or more, so that an edge never holds more repeats than can be drawn. */
    repeat: lengthBetween(unit, TICKS_PER_MM, largest, 'a length'),
    /** A place, which may lie off the card. */
    place: lengthBetween(unit, -largest, largest, 'a place'),
    /** A radius, margin, height or bite: zero or more. */
    amount: lengthBetween(unit, 0, largest, 'a length'),
  };
}
