import { type PDFContext, PDFHexString, PDFNull, type PDFRef } from '@cantoo/pdf-lib';
import type { Page, PageMark } from '../../page/page.js';
import { pageMatrix, place } from './matrix.js';

interface Bookmark {
  readonly mark: PageMark;
  readonly page: number;
  readonly parts: Bookmark[];
}

function treeOf(pages: readonly Page[]): readonly Bookmark[] {
  const tops: Bookmark[] = [];
  pages.forEach(({ marks }, page) => {
    for (const mark of marks) {
      const last = tops.at(-1);
      (mark.level === 2 && last ? last.parts : tops).push({ mark, page, parts: [] });
    }
  });
  return tops;
}

/** Writes the list of contents (ISO 32000-2, 12.3.3), all open; null for pages without marks. */
export function writeBookmarks(context: PDFContext, pages: readonly Page[], refs: readonly PDFRef[]): PDFRef | null {
  const tops = treeOf(pages);
  if (tops.length === 0) return null;
  const outline = context.nextRef();
  const level = (bookmarks: readonly Bookmark[], parent: PDFRef): { readonly ends: Record<string, PDFRef> } => {
    const own = bookmarks.map(() => context.nextRef());
    bookmarks.forEach(({ mark, page, parts }, index) => {
      const [ref, previous, next] = [own[index], own[index - 1], own[index + 1]];
      const at = place(pageMatrix(pages[page]?.height ?? 0), { x: 0, y: mark.y });
      if (!ref) return;
      context.assign(
        ref,
        context.obj({
          Title: PDFHexString.fromText(mark.title),
          Parent: parent,
          ...(previous ? { Prev: previous } : {}),
          ...(next ? { Next: next } : {}),
          ...(parts.length > 0 ? { ...level(parts, ref).ends, Count: parts.length } : {}),
          Dest: [refs[page] ?? PDFNull, 'XYZ', PDFNull, Math.round(at.y * 1e4) / 1e4, PDFNull],
        }),
      );
    });
    const [first, last] = [own[0], own.at(-1)];
    return { ends: { ...(first ? { First: first } : {}), ...(last ? { Last: last } : {}) } };
  };
  const count = tops.reduce((sum, { parts }) => sum + 1 + parts.length, 0);
  context.assign(outline, context.obj({ Type: 'Outlines', ...level(tops, outline).ends, Count: count }));
  return outline;
}
