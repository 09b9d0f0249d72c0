import { toInches, toMillimetres, type Unit } from '@trimwell/geometry';
import type { Drawing } from '../drawing/drawing.js';
import { escapeXml } from './escape.js';
import { inkMark } from './ink.js';
import type { Photos } from './look.js';
import { lookPatterns } from './look-patterns.js';
import { markText } from './mark.js';
import { itemMark } from './marks.js';
import { PAPER_THEME, type Theme } from './theme.js';
import { unit } from './units.js';

export interface SvgOptions {
  /** Unit of the width and height attributes. */
  readonly unit: Unit;
  readonly theme?: Theme;
  /** Start of all ids, so that several drawings stand on one page. Letters, digits and hyphens. Default `trimwell`. */
  readonly prefix?: string;
  /** What is shown at true size, in ticks; default the drawing's box. */
  readonly box?: Drawing['box'];
  /** Photographs of sheets as data URLs, by hash; without them the prints drawn by us are shown. */
  readonly photos?: Photos;
}

/** The hand of every drawing whose text has no other. */
export const TEXT_FONT = "'Source Sans 3', 'Helvetica Neue', Arial, sans-serif";

function sizeAttribute(ticks: number, measure: Unit): string {
  const value = measure === 'in' ? toInches(ticks) : toMillimetres(ticks);
  return `${Number(value.toFixed(6))}${measure}`;
}

/**
 * A drawing as SVG text at true size: width and height in inches or millimetres, a view box in tenths of a millimetre.
 * The same drawing and options give the same text. Numbers are exact for whole ticks; all text is escaped.
 */
export function writeSvg(drawing: Drawing, options: SvgOptions): string {
  const { theme = PAPER_THEME, prefix = 'trimwell', box = drawing.box } = options;
  const context = { looks: drawing.looks, prefix, ...(options.photos ? { photos: options.photos } : {}) };
  const patterns = lookPatterns(context).map(markText);
  const marks = drawing.items.map((item) => markText(inkMark(itemMark(item, context), theme)));
  const size = `width="${sizeAttribute(box.width, options.unit)}" height="${sizeAttribute(box.height, options.unit)}"`;
  const view = `viewBox="${[box.x, box.y, box.width, box.height].map(unit).join(' ')}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${view} role="img" font-family="${escapeXml(TEXT_FONT)}" fill="none">`,
    `<title>${escapeXml(drawing.title)}</title>`,
    `<desc>${escapeXml(drawing.description)}</desc>`,
    ...(patterns.length > 0 ? [`<defs>${patterns.join('')}</defs>`] : []),
    ...marks,
    '</svg>\n',
  ].join('\n');
}
