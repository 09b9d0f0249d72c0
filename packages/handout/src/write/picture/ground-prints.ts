import type { Mark } from '../mark.js';

/**
 * Marks with the plain ground of its paper under every area that is filled with a pattern. Programs draw a pattern tile by
 * tile, and what lies below shines through the seams, as fine lines; below its own ground nothing is seen of them.
 * `grounds` are the grounds by the `fill` of the pattern.
 */
export function groundPrints(mark: Mark, grounds: ReadonlyMap<string, string>): Mark {
  const { tag, attributes, children } = mark;
  const ground = grounds.get(attributes['fill'] ?? '');
  if (tag === 'path' && ground !== undefined) {
    const { d = '' } = attributes;
    const under: Mark = { tag: 'path', key: '', attributes: { d, fill: ground } };
    return { tag: 'g', key: mark.key, attributes: {}, children: [under, mark] };
  }
  return children ? { ...mark, children: children.map((child) => groundPrints(child, grounds)) } : mark;
}
