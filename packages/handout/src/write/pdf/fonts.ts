import type { Font } from 'fontkit';
import type { TextFace } from '../../drawing/drawing.js';
import { readFontFile } from './read-font-file.js';
import { unpackWoff } from './unpack-woff.js';

/** A font that was loaded; `name` is its name within a document. */
export interface LoadedFont {
  readonly name: string;
  readonly font: Font;
  /** The code points that it has a glyph for. */
  readonly letters: ReadonlySet<number>;
}

/** For each face the fonts in the order in which a letter is looked for in them. */
export type Fonts = Readonly<Record<TextFace, readonly LoadedFont[]>>;

/** One call each, because bundlers find a file only by a whole literal. */
const ADDRESSES = {
  text: () => new URL('../../../fonts/source-sans-3-latin-400-normal.woff', import.meta.url),
  textMore: () => new URL('../../../fonts/source-sans-3-latin-ext-400-normal.woff', import.meta.url),
  strong: () => new URL('../../../fonts/source-sans-3-latin-600-normal.woff', import.meta.url),
  strongMore: () => new URL('../../../fonts/source-sans-3-latin-ext-600-normal.woff', import.meta.url),
  italic: () => new URL('../../../fonts/source-sans-3-latin-400-italic.woff', import.meta.url),
  italicMore: () => new URL('../../../fonts/source-sans-3-latin-ext-400-italic.woff', import.meta.url),
  heading: () => new URL('../../../fonts/source-serif-4-latin-600-normal.woff', import.meta.url),
  headingMore: () => new URL('../../../fonts/source-serif-4-latin-ext-600-normal.woff', import.meta.url),
  art: () => new URL('../../../fonts/source-serif-4-latin-400-italic.woff', import.meta.url),
  artMore: () => new URL('../../../fonts/source-serif-4-latin-ext-400-italic.woff', import.meta.url),
  wide: () => new URL('../../../fonts/ibm-plex-sans-400-normal.woff', import.meta.url),
} as const;

async function load(name: keyof typeof ADDRESSES): Promise<LoadedFont> {
  const { create } = await import('fontkit');
  const font = create(unpackWoff(await readFontFile(ADDRESSES[name]())) as Parameters<typeof create>[0]);
  if (!('layout' in font)) throw new Error(`The font ${name} is a collection of fonts.`);
  return { name, font, letters: new Set(font.characterSet) };
}

async function loadAll(): Promise<Fonts> {
  const wide = load('wide');
  const face = async (main: keyof typeof ADDRESSES, more: keyof typeof ADDRESSES) =>
    Promise.all([load(main), load(more), wide]);
  const [text, strong, italic, heading, art] = await Promise.all([
    face('text', 'textMore'),
    face('strong', 'strongMore'),
    face('italic', 'italicMore'),
    face('heading', 'headingMore'),
    face('art', 'artMore'),
  ]);
  return { text, strong, italic, heading, art };
}

let loading: Promise<Fonts> | null = null;

/**
 * The fonts of a handout, loaded once: Source Sans 3 and Source Serif 4, each Latin, then extended Latin, then IBM Plex
 * Sans for marks, Greek and Cyrillic (all under the SIL Open Font License). A failed load is tried again next time.
 */
export function loadFonts(): Promise<Fonts> {
  loading ??= loadAll().catch((error: unknown) => {
    loading = null;
    throw error;
  });
  return loading;
}
