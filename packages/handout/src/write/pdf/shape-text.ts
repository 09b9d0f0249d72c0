import type { Glyph } from 'fontkit';
import type { TextFace } from '../../drawing/drawing.js';
import type { Fonts, LoadedFont } from './fonts.js';
import { letterRuns } from './letters.js';

/** A glyph where it stands, in thousandths of the em: `rise` above the base line, `right` and `advance` along it. */
export interface PlacedGlyph {
  readonly glyph: Glyph;
  readonly advance: number;
  readonly right: number;
  readonly rise: number;
}

/** Glyphs of one font, kerned, with fractions and ligatures made; `width` in thousandths of the em. */
export interface GlyphRun {
  readonly font: LoadedFont;
  readonly glyphs: readonly PlacedGlyph[];
  readonly width: number;
}

/** Texts that were shaped, by face and text: a handout says the same sizes again and again. */
const shaped = new WeakMap<Fonts, Map<string, readonly GlyphRun[]>>();
/** More than the texts of any handout; after that many all are forgotten. */
const MOST_KNOWN = 4000;

function shape(text: string, fonts: readonly LoadedFont[]): readonly GlyphRun[] {
  return letterRuns(text, fonts).map(({ font, text: letters }) => {
    const { glyphs, positions } = font.font.layout(letters);
    const scale = 1000 / font.font.unitsPerEm;
    const placed = glyphs.map((glyph, index): PlacedGlyph => {
      const { xAdvance = glyph.advanceWidth, xOffset = 0, yOffset = 0 } = positions[index] ?? {};
      return { glyph, advance: xAdvance * scale, right: xOffset * scale, rise: yOffset * scale };
    });
    return { font, glyphs: placed, width: placed.reduce((sum, { advance }) => sum + advance, 0) };
  });
}

/** `text` as glyphs. Figures around U+2044 become a real fraction by the font's own features. */
export function shapeText(text: string, face: TextFace, fonts: Fonts): readonly GlyphRun[] {
  const known = shaped.get(fonts) ?? new Map<string, readonly GlyphRun[]>();
  shaped.set(fonts, known);
  const key = `${face} ${text}`;
  const runs = known.get(key) ?? shape(text, fonts[face]);
  if (known.size >= MOST_KNOWN) known.clear();
  known.set(key, runs);
  return runs;
}
