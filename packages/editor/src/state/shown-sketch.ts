import { type Sketch, withVariations } from '@trimwell/sketch';

/** Shown sketches by document, so that going back and forth gives the very same object each time. */
const shown = new WeakMap<Sketch, Map<string, Sketch>>();

/** The document with its variations `on`: the same object for the same document and variations. */
export function shownSketch(document: Sketch, on: readonly string[]): Sketch {
  const ids = document.variations.filter(({ id }) => on.includes(id)).map(({ id }) => id);
  if (ids.length === 0) return document;
  const known = shown.get(document) ?? new Map<string, Sketch>();
  shown.set(document, known);
  const key = ids.join(' ');
  const sketch = known.get(key) ?? withVariations(document, ids).sketch;
  known.set(key, sketch);
  return sketch;
}
