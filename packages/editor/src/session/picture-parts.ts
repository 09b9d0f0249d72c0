import { PAGE_FONTS, readFontFile } from '@trimwell/handout/fonts';
import type { PictureFont } from '@trimwell/handout/picture';

/** How much is turned into text at once. */
const PIECE = 0x8000;

function dataAddress(bytes: Uint8Array, type: string): string {
  let text = '';
  for (let from = 0; from < bytes.length; from += PIECE)
    text += String.fromCharCode(...bytes.subarray(from, from + PIECE));
  return `data:${type};base64,${btoa(text)}`;
}

/** Photographs as addresses that hold them, by their hashes. */
export async function photoAddresses(photos: ReadonlyMap<string, Blob>): Promise<ReadonlyMap<string, string>> {
  const found = new Map<string, string>();
  for (const [id, photo] of photos)
    found.set(id, dataAddress(new Uint8Array(await photo.arrayBuffer()), photo.type || 'image/jpeg'));
  return found;
}

/** The fonts that an SVG asks for, as addresses that hold them; those of further letters only where there are any. */
export async function pictureFonts(svg: string): Promise<readonly PictureFont[]> {
  const further = /[\u0100-\u02ba\u1e00-\u1eff]/.test(svg);
  const wanted = PAGE_FONTS.filter(
    ({ family, style, file }) =>
      svg.includes(family) &&
      (further || !file.endsWith('More')) &&
      (style === 'normal' || svg.includes('font-style="italic"')),
  );
  return Promise.all(
    wanted.map(async (font) => ({ ...font, href: dataAddress(await readFontFile(font.file), 'font/woff') })),
  );
}
