import type { Drawing, Item, TextFace } from '../drawing/drawing.js';
import { lookFill, type Photos, patternId } from './look-fill.js';
import type { Mark } from './mark.js';
import { pathData } from './path-data.js';
import { unit } from './units.js';

/** What the marks of a drawing depend on beside the drawing: the start of the ids of its patterns, and photographs. */
export interface MarkContext {
  readonly looks: Drawing['looks'];
  readonly prefix: string;
  /** Photographs of sheets that are at hand; a print drawn by us stands in for any other. */
  readonly photos?: Photos;
}

function named(item: Item): Record<string, string> {
  return item.piece === undefined ? { 'data-role': item.role } : { 'data-role': item.role, 'data-piece': item.piece };
}

/** How a hand is asked for; the upright one is what the whole drawing is set in. */
function faceAttributes(face: TextFace): Record<string, string> {
  switch (face) {
    case 'text':
      return {};
    case 'strong':
      return { 'font-weight': '600' };
    case 'italic':
      return { 'font-style': 'italic' };
    case 'heading':
      return { 'font-family': "'Source Serif 4', Georgia, serif", 'font-weight': '600' };
    case 'art':
      return { 'font-family': "'Source Serif 4', Georgia, serif", 'font-style': 'italic' };
  }
}

/** One item as SVG; style is added by role, by the text writer's theme or by the page's own rules. */
export function itemMark(item: Item, context: MarkContext): Mark {
  const { key } = item;
  switch (item.kind) {
    case 'path': {
      const look = item.fill && context.looks[item.fill.paper];
      const fill =
        item.fill && look ? { fill: lookFill(look, patternId(context.prefix, item.fill.paper), context.photos) } : {};
      const ink = item.ink === undefined ? {} : { stroke: item.ink };
      return {
        tag: 'path',
        key,
        attributes: { ...named(item), d: pathData(item.outline, item.open), ...fill, ...ink },
      };
    }
    case 'line': {
      const { from, to } = item;
      return {
        tag: 'line',
        key,
        attributes: { ...named(item), x1: unit(from.x), y1: unit(from.y), x2: unit(to.x), y2: unit(to.y) },
      };
    }
    case 'text': {
      const { at, size, align, turn = 0 } = item;
      const turned = turn === 0 ? {} : { transform: `rotate(${turn} ${unit(at.x)} ${unit(at.y)})` };
      const ink = item.ink === undefined ? {} : { fill: item.ink };
      const hand = faceAttributes(item.face ?? (item.role === 'art' ? 'art' : 'text'));
      const attributes = {
        ...named(item),
        x: unit(at.x),
        y: unit(at.y),
        'font-size': unit(size),
        'text-anchor': align,
        ...turned,
        ...ink,
        ...hand,
      };
      return { tag: 'text', key, attributes, text: item.text };
    }
    case 'image': {
      const { at, width, height, href } = item;
      return {
        tag: 'image',
        key,
        attributes: { ...named(item), x: unit(at.x), y: unit(at.y), width: unit(width), height: unit(height), href },
      };
    }
    case 'group': {
      const { move, origin, turn } = item;
      const around = turn === 0 ? '' : ` rotate(${turn})`;
      const transform = `translate(${unit(move.x)} ${unit(move.y)})${around} translate(${unit(-origin.x)} ${unit(-origin.y)})`;
      return {
        tag: 'g',
        key,
        attributes: { ...named(item), transform },
        children: item.items.map((inner) => itemMark(inner, context)),
      };
    }
  }
}
