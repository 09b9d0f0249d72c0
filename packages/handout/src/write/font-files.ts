/** One call each, because bundlers find a file only by a whole literal. */
const FILES = {
  text: () => new URL('../../fonts/source-sans-3-latin-400-normal.woff', import.meta.url),
  textMore: () => new URL('../../fonts/source-sans-3-latin-ext-400-normal.woff', import.meta.url),
  strong: () => new URL('../../fonts/source-sans-3-latin-600-normal.woff', import.meta.url),
  strongMore: () => new URL('../../fonts/source-sans-3-latin-ext-600-normal.woff', import.meta.url),
  italic: () => new URL('../../fonts/source-sans-3-latin-400-italic.woff', import.meta.url),
  italicMore: () => new URL('../../fonts/source-sans-3-latin-ext-400-italic.woff', import.meta.url),
  heading: () => new URL('../../fonts/source-serif-4-latin-600-normal.woff', import.meta.url),
  headingMore: () => new URL('../../fonts/source-serif-4-latin-ext-600-normal.woff', import.meta.url),
  art: () => new URL('../../fonts/source-serif-4-latin-400-italic.woff', import.meta.url),
  artMore: () => new URL('../../fonts/source-serif-4-latin-ext-400-italic.woff', import.meta.url),
  wide: () => new URL('../../fonts/ibm-plex-sans-400-normal.woff', import.meta.url),
} as const;

/** The fonts that lie beside this package, each by what it is for; `…More` is its extended Latin. */
export type FontFile = keyof typeof FILES;

/** Where a font lies. */
export function fontAddress(file: FontFile): URL {
  return FILES[file]();
}

/**
 * The bytes of a font: from the disk where the address is a file's (Node), else as any resource of the page. Node's own
 * modules are asked of the process, because an import of them would break the browser's bundle.
 * @throws Error when the font cannot be had.
 */
export async function readFontFile(file: FontFile): Promise<Uint8Array<ArrayBuffer>> {
  const address = fontAddress(file);
  if (address.protocol === 'file:' && typeof process !== 'undefined')
    return new Uint8Array(await process.getBuiltinModule('node:fs/promises').readFile(address));
  const response = await fetch(address);
  if (!response.ok) throw new Error(`The font ${address.pathname} cannot be loaded: ${response.status}.`);
  return new Uint8Array(await response.arrayBuffer());
}

/** A font as a page that draws with it asks for it. */
export interface PageFont {
  readonly family: string;
  readonly weight: '400' | '600';
  readonly style: 'normal' | 'italic';
  readonly file: FontFile;
  /** The letters that it has, as CSS says it: basic Latin with what is usual in Western languages, and all else. */
  readonly letters: string;
}

const LATIN =
  'U+0000-00FF, U+0131, U+0152-0153, U+02BB-02BC, U+02C6, U+02DA, U+02DC, U+0304, U+0308, U+0329, U+2000-206F, U+20AC, U+2122, U+2191, U+2193, U+2212, U+2215, U+FEFF, U+FFFD';
const MORE_LATIN =
  'U+0100-02BA, U+02BD-02C5, U+02C7-02CC, U+02CE-02D7, U+02DD-02FF, U+1D00-1DBF, U+1E00-1E9F, U+1EF2-1EFF, U+20A0-20AB, U+20AD-20C0, U+2C60-2C7F, U+A720-A7FF';

function latin(file: FontFile, more: FontFile, font: Omit<PageFont, 'file' | 'letters'>): readonly PageFont[] {
  return [
    { ...font, file, letters: LATIN },
    { ...font, file: more, letters: MORE_LATIN },
  ];
}

/** The fonts of a handout by the names that drawings ask for, so that a screen sets the same lines as the paper. */
export const PAGE_FONTS: readonly PageFont[] = [
  ...latin('text', 'textMore', { family: 'Source Sans 3', weight: '400', style: 'normal' }),
  ...latin('strong', 'strongMore', { family: 'Source Sans 3', weight: '600', style: 'normal' }),
  ...latin('italic', 'italicMore', { family: 'Source Sans 3', weight: '400', style: 'italic' }),
  ...latin('heading', 'headingMore', { family: 'Source Serif 4', weight: '600', style: 'normal' }),
  ...latin('art', 'artMore', { family: 'Source Serif 4', weight: '400', style: 'italic' }),
];
