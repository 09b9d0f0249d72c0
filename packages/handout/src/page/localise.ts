import type { Item } from '../drawing/drawing.js';
import type { Speech } from './speech.js';

/** The figures of a drawing with the decimal sign of the page's language; letters and art stay as they are. */
export function localiseItems(items: readonly Item[], speech: Speech): readonly Item[] {
  if (speech.language !== 'de') return items;
  return items.map((item): Item => {
    if (item.kind === 'group') return { ...item, items: localiseItems(item.items, speech) };
    if (item.kind !== 'text' || item.role === 'art') return item;
    return { ...item, text: item.text.replace(/(\d)\.(\d)/g, '$1,$2') };
  });
}
