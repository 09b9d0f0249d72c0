import type { Font } from 'fontkit';
import type { TextFace } from '../../drawing/drawing.js';
import { type FontFile, readFontFile } from '../font-files.js';
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

async function load(name: FontFile): Promise<LoadedFont> {
  const { create } = await import('fontkit');
  const font = create(unpackWoff(await readFontFile(name)) as Parameters<typeof create>[0]);
  if (!('layout' in font)) throw new Error(`The font ${name} is a collection of fonts.`);
  return { name, font, letters: new Set(font.characterSet) };
}

async function loadAll(): Promise<Fonts> {
  const wide = load('wide');
  const face = async (main: FontFile, more: FontFile) => Promise.all([load(main), load(more), wide]);
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
