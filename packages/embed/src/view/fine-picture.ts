import type { LengthStyle } from '@trimwell/geometry';
import { type Drawing, drawCard, lookPatterns, type Photos, type SheetLook } from '@trimwell/handout';
import type { Face, Sketch } from '@trimwell/sketch';
import { svgNode } from './svg-nodes.js';

let pictures = 0;

/** A drawing in full: with prints and photographs. Each has ids of its own. */
export function fineNode(drawing: Drawing, photos?: Photos): SVGElement {
  pictures += 1;
  const prefix = `picture${pictures}`;
  const used = usedLooks(drawing);
  const context = { looks: used, prefix, ...(photos ? { photos } : {}) };
  return svgNode(
    { ...drawing, looks: used },
    { patterns: lookPatterns(context), prefix, ...(photos ? { photos } : {}) },
  );
}

/** The looks that something on the drawing is filled with. */
function usedLooks({ items, looks }: Drawing): Drawing['looks'] {
  const used: Record<string, SheetLook> = {};
  const visit = (list: Drawing['items']): void => {
    for (const item of list) {
      if (item.kind === 'group') visit(item.items);
      const paper = item.kind === 'path' ? item.fill?.paper : undefined;
      const look = paper === undefined ? undefined : looks[paper];
      if (paper !== undefined && look) used[paper] = look;
    }
  };
  visit(items);
  return used;
}

/** A face of the card as it is: edges, prints, art. */
export function fineCard(sketch: Sketch, face: Face, style: LengthStyle, size: number, photos?: Photos): SVGElement {
  return fineNode(drawCard(sketch, { face, style, labels: true, size }), photos);
}
