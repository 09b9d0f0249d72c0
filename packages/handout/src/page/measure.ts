import { textWidth } from '../draw/text-width.js';
import type { TextFace } from '../drawing/drawing.js';

/**
 * How wide text is in the fonts that it will be printed in. `size` is the height of the em in ticks and the width is in
 * ticks; `ascent` and `descent` are shares of the em, both positive, of the highest and the lowest usual letters.
 */
export interface TextMeasure {
  width(text: string, size: number, face: TextFace): number;
  ascent(face: TextFace): number;
  descent(face: TextFace): number;
}

/** Semibold and serif letters are wider than the upright ones that `textWidth` was taken from. */
const WIDER: Readonly<Record<TextFace, number>> = { text: 1, strong: 1.04, italic: 0.96, heading: 1.06, art: 1 };

/** `measure`, asking for the ascent and descent of each face no more than once: a page asks for them at every line. */
export function rememberAscents(measure: TextMeasure): TextMeasure {
  const known = new Map<string, number>();
  const remember = (key: string, ask: () => number): number => {
    const found = known.get(key) ?? ask();
    known.set(key, found);
    return found;
  };
  return {
    width: (text, size, face) => measure.width(text, size, face),
    ascent: (face) => remember(`ascent ${face}`, () => measure.ascent(face)),
    descent: (face) => remember(`descent ${face}`, () => measure.descent(face)),
  };
}

/** Widths on the wide side without any font, so that what fits by it fits in print. */
export const estimateMeasure: TextMeasure = {
  width: (text, size, face) => textWidth(text, size) * WIDER[face],
  ascent: () => 0.75,
  descent: () => 0.25,
};
