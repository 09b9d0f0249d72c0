import type { TextMeasure } from '../../page/measure.js';
import { type LoadedFont, loadFonts } from './fonts.js';
import { shapeText } from './shape-text.js';

/** How far the farthest of `letters` goes, as a share of the em. */
function reach(
  loaded: LoadedFont | undefined,
  letters: string,
  far: (box: { readonly minY: number; readonly maxY: number }) => number,
): number {
  if (!loaded) throw new Error('A face has no font.');
  const { font } = loaded;
  return Math.max(...font.layout(letters).glyphs.map(({ bbox }) => far(bbox))) / font.unitsPerEm;
}

/**
 * The measure of text by the very fonts and the very shaping that `writePdf` prints with, kerning and fractions included.
 * The fonts are loaded once; after that measuring is immediate.
 */
export async function loadTextMeasure(): Promise<TextMeasure> {
  const fonts = await loadFonts();
  return {
    width: (text, size, face) => (shapeText(text, face, fonts).reduce((sum, run) => sum + run.width, 0) / 1000) * size,
    ascent: (face) => reach(fonts[face][0], 'bdfhkl', ({ maxY }) => maxY),
    descent: (face) => reach(fonts[face][0], 'gjpqy', ({ minY }) => -minY),
  };
}
