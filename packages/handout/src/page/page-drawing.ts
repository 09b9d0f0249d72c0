import type { Drawing, Item } from '../drawing/drawing.js';
import type { Page, PageBlock } from './page.js';

function itemsOf(block: PageBlock): readonly Item[] {
  return [...block.items, ...(block.blocks ?? []).flatMap(itemsOf)];
}

/** The words of a page in reading order; figures by what they show. */
function wordsOf(block: PageBlock): readonly string[] {
  if (block.tag === 'Artifact') return [];
  if (block.alt !== undefined) return [block.alt];
  const own = block.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
  return [...own, ...(block.blocks ?? []).flatMap(wordsOf)];
}

/** One page as a drawing, so that a screen shows the very same page that is printed. `looks` are the handout's. */
export function pageDrawing(page: Page, looks: Drawing['looks']): Drawing {
  return {
    title: page.marks[0]?.title ?? '',
    description: page.blocks.flatMap(wordsOf).join(' '),
    box: { x: 0, y: 0, width: page.width, height: page.height },
    items: page.blocks.flatMap(itemsOf),
    looks,
  };
}
