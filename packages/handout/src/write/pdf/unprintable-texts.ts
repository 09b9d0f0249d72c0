import type { Point } from '@trimwell/geometry';
import type { Item, TextItem } from '../../drawing/drawing.js';
import type { HandoutPages, PageBlock } from '../../page/page.js';
import { faceOf } from './draw-text.js';
import { type Fonts, loadFonts } from './fonts.js';
import { codeOf, missingLetters } from './letters.js';

/** A text with letters that no font of a handout has, and where it stands. */
export interface UnprintableText {
  /** From 1. */
  readonly page: number;
  readonly key: string;
  /** In ticks, in the coordinates of the item itself. */
  readonly at: Point;
  readonly text: string;
  readonly letters: readonly string[];
  readonly message: string;
}

/** Letters that a sentence names at most. */
const MOST_NAMED = 8;

function textsIn(items: readonly Item[]): readonly TextItem[] {
  return items.flatMap((item) => (item.kind === 'text' ? [item] : item.kind === 'group' ? textsIn(item.items) : []));
}

function textsOf(blocks: readonly PageBlock[]): readonly TextItem[] {
  return blocks.flatMap(({ items, blocks: parts = [] }) => [...textsIn(items), ...textsOf(parts)]);
}

/** The texts that `fonts` cannot print in full, in reading order. */
export function unprintableIn({ pages }: HandoutPages, fonts: Fonts): readonly UnprintableText[] {
  return pages.flatMap(({ blocks }, index) =>
    textsOf(blocks).flatMap((item) => {
      const letters = missingLetters(item.text, fonts[faceOf(item)]);
      if (letters.length === 0) return [];
      const names = letters.map((letter) => `${letter} (shown as ${codeOf(letter)})`).join(', ');
      const message = `Page ${index + 1}: ${JSON.stringify(item.text)} has letters that no font of the handout has: ${names}.`;
      return [{ page: index + 1, key: item.key, at: item.at, text: item.text, letters, message }];
    }),
  );
}

/** What is said of all of them in one sentence: which letters, how they are shown, on which pages; null when there are none. */
export function unprintableNote(texts: readonly UnprintableText[]): string | null {
  if (texts.length === 0) return null;
  const letters = [...new Set(texts.flatMap((text) => text.letters))];
  const named = letters.slice(0, MOST_NAMED).map((letter) => `${letter} as ${codeOf(letter)}`);
  const more = letters.length > MOST_NAMED ? ` and ${letters.length - MOST_NAMED} more` : '';
  const pages = [...new Set(texts.map(({ page }) => page))];
  const where = `${pages.length === 1 ? 'page' : 'pages'} ${pages.join(', ')}`;
  return `Letters that no font of the pages has are shown by their numbers: ${named.join(', ')}${more}; on ${where}.`;
}

/**
 * The texts of a handout that hold letters which none of its fonts has. `writePdf` shows such a letter as its code point
 * in brackets, `[U+1F331]`, which can be looked up: never as an empty box, never as nothing.
 */
export async function unprintableTexts(pages: HandoutPages): Promise<readonly UnprintableText[]> {
  return unprintableIn(pages, await loadFonts());
}
