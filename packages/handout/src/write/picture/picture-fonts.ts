import { PAGE_FONTS, readFontFile } from '../font-files.js';
import { unpackWoff } from '../pdf/unpack-woff.js';
import { nameFont } from './name-font.js';
import { MORE } from './name-letters.js';

/** The families that a picture's words are set in, for a program that has no other fonts. */
export const PICTURE_FAMILIES = { sans: 'Source Sans 3', serif: 'Source Serif 4' } as const;

/**
 * The fonts of a picture as plain OpenType files under the names that it asks for (those of extended Latin under that of
 * `nameLetters`), for a program that draws it without the fonts of a system; last the one that stands in for letters that
 * the others lack.
 * @throws Error when a font cannot be had
 */
export async function loadPictureFonts(): Promise<readonly Uint8Array[]> {
  const named = PAGE_FONTS.map(async ({ file, family }) =>
    nameFont(unpackWoff(await readFontFile(file)), file.endsWith('More') ? `${family}${MORE}` : family),
  );
  return Promise.all([...named, readFontFile('wide').then(unpackWoff)]);
}
