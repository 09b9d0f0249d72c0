import type { Unit } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import { drawCard } from '../../draw/card.js';
import type { Drawing, Item } from '../../drawing/drawing.js';
import { inkMark } from '../ink.js';
import { lookPatterns } from '../look-patterns.js';
import { type Mark, markText } from '../mark.js';
import { itemMark } from '../marks.js';
import { TEXT_FONT } from '../svg.js';
import { PAPER_THEME, type Theme } from '../theme.js';
import { unit as units } from '../units.js';
import { escapeHtml, htmlElement } from './html.js';

/** The room that the drawing is fitted into, in pixels: the width of the narrowest column with a margin. */
const ROOM = { width: 264, height: 340 };
/** Height of the figures and letters as they are seen, in pixels. */
const FIGURE = 12;

/** What stands beside the card takes the colour of the page's own text: the page may be dark. */
const PAGE_THEME: Theme = {
  ...PAPER_THEME,
  dimension: { ...PAPER_THEME.dimension, stroke: 'currentColor' },
  figure: { fill: 'currentColor' },
};

/** Attributes of items that hold places and sizes; transforms keep their figures, since turning multiplies what they lose. */
const PLACES: ReadonlySet<string> = new Set(['d', 'x', 'y', 'x1', 'y1', 'x2', 'y2', 'width', 'height', 'font-size']);

/** A mark with its places to 0.01 mm: a picture in a page shows no more, and half the letters are saved. */
function coarsely(mark: Mark): Mark {
  const attributes = Object.fromEntries(
    Object.entries(mark.attributes).map(([name, value]) => [
      name,
      PLACES.has(name)
        ? value.replace(/-?\d+\.\d\d+/g, (figure) => String(Math.round(Number(figure) * 10) / 10))
        : value,
    ]),
  );
  return { ...mark, attributes, ...(mark.children ? { children: mark.children.map(coarsely) } : {}) };
}

/** The papers that something on the drawing is cut from. */
function papersOn(items: readonly Item[]): ReadonlySet<string> {
  const found = new Set<string>();
  for (const item of items) {
    if (item.kind === 'path' && item.fill) found.add(item.fill.paper);
    if (item.kind === 'group') for (const paper of papersOn(item.items)) found.add(paper);
  }
  return found;
}

/** The card's face, its figures `FIGURE` pixels high at the size that it is shown at. */
function faceFor(
  sketch: Sketch,
  unit: Unit,
): { readonly drawing: Drawing; readonly width: number; readonly height: number } {
  const options = { face: 'front', style: { unit }, labels: true } as const;
  // The figures take room of their own, so the scale is looked for from the card alone and then taken again with them.
  let scale = Math.min(ROOM.width / sketch.card.width, ROOM.height / sketch.card.height);
  let drawing = drawCard(sketch, { ...options, size: FIGURE / scale });
  for (let turn = 0; turn < 3; turn += 1) {
    scale = Math.min(ROOM.width / drawing.box.width, ROOM.height / drawing.box.height);
    drawing = drawCard(sketch, { ...options, size: FIGURE / scale });
  }
  const fit = Math.min(ROOM.width / drawing.box.width, ROOM.height / drawing.box.height);
  return {
    drawing,
    width: Math.max(1, Math.round(drawing.box.width * fit)),
    height: Math.max(1, Math.round(drawing.box.height * fit)),
  };
}

/**
 * The card's face as an SVG for the inside of a page: no wider than the narrowest column, without styles, scripts and
 * addresses, with `prefix` before its ids. Its places are to 0.01 mm. Photographs are left out: the prints stand in.
 */
export function cardFigure(sketch: Sketch, unit: Unit, prefix: string): string {
  const { drawing, width, height } = faceFor(sketch, unit);
  const used = papersOn(drawing.items);
  const looks = Object.fromEntries(Object.entries(drawing.looks).filter(([paper]) => used.has(paper)));
  const context = { looks, prefix };
  const patterns = lookPatterns(context).map(markText);
  const { box } = drawing;
  const marks = drawing.items
    .filter((item) => item.role !== 'shadow')
    .map((item) => markText(coarsely(inkMark(itemMark(item, context), PAGE_THEME))));
  const attributes = {
    xmlns: 'http://www.w3.org/2000/svg',
    width: String(width),
    height: String(height),
    viewBox: [box.x, box.y, box.width, box.height].map((value) => units(Math.round(value))).join(' '),
    role: 'img',
    'font-family': TEXT_FONT,
    fill: 'none',
  };
  const defs = patterns.length > 0 ? [htmlElement('defs', {}, ...patterns)] : [];
  return htmlElement('svg', attributes, htmlElement('title', {}, escapeHtml(drawing.title)), ...defs, ...marks);
}
