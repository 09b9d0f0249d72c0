import { PAGE_FONTS, readFontFile } from '@trimwell/handout/fonts';

let loading: Promise<void> | null = null;

async function load(): Promise<void> {
  const faces = PAGE_FONTS.map(async ({ family, weight, style, letters, file }) => {
    // From bytes and not by address: a strict page allows its own scripts to fetch, but names no place for fonts.
    const face = new FontFace(family, await readFontFile(file), { weight, style, unicodeRange: letters });
    return face.load();
  });
  for (const face of await Promise.all(faces)) document.fonts.add(face);
}

/** Puts the fonts of the pages at hand for drawings of them, once for the whole page; a failed load is tried again. */
export function loadPageFonts(): Promise<void> {
  loading ??= load().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}
