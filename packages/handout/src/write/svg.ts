import { toInches, toMillimetres, type Unit } from '@trimwell/geometry';
import type { Drawing } from '../drawing/drawing.js';
import { escapeXml } from './escape.js';
import type { Photos } from './look.js';
import { type Mark, markText } from './mark.js';
import { itemMark, lookPatterns } from './marks.js';
import { type Ink, PAPER_THEME, type Theme } from './theme.js';
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

const FONT = "'Source Sans 3', 'Helvetica Neue', Arial, sans-serif";

/** Hundredths of a millimetre as user units (a unit is 0.1 mm). */
function hundredths(value: number): string {
  return String(value / 10);
}

/** Letters have no outline of their own but a rim of the halo's colour behind them. */
function letterAttributes({ fill, weight, halo }: Ink): Record<string, string> {
  return {
    ...(fill === undefined || fill === 'none' ? {} : { fill }),
    ...(weight === undefined ? {} : { 'font-weight': String(weight) }),
    ...(halo === undefined
      ? {}
      : { stroke: halo, 'stroke-width': '0.25em', 'stroke-linejoin': 'round', 'paint-order': 'stroke' }),
  };
}

function inkAttributes(ink: Ink): Record<string, string> {
  return {
    ...(ink.stroke === undefined ? {} : { stroke: ink.stroke }),
    ...(ink.fill === undefined ? {} : { fill: ink.fill }),
    ...(ink.width === undefined ? {} : { 'stroke-width': hundredths(ink.width) }),
    ...(ink.dash === undefined ? {} : { 'stroke-dasharray': ink.dash.map(hundredths).join(' ') }),
    ...(ink.opacity === undefined || ink.opacity === 1 ? {} : { 'fill-opacity': String(ink.opacity) }),
  };
}

function inked(mark: Mark, theme: Theme): Mark {
  const role = mark.attributes['data-role'] as keyof Theme | undefined;
  const { children } = mark;
  const style = mark.tag === 'text' ? letterAttributes : inkAttributes;
  const ink = mark.tag === 'g' || !role ? {} : style(theme[role]);
  const all = { ...mark, attributes: { ...ink, ...mark.attributes } };
  return children ? { ...all, children: children.map((child) => inked(child, theme)) } : all;
}

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
  const marks = drawing.items.map((item) => markText(inked(itemMark(item, context), theme)));
  const size = `width="${sizeAttribute(box.width, options.unit)}" height="${sizeAttribute(box.height, options.unit)}"`;
  const view = `viewBox="${[box.x, box.y, box.width, box.height].map(unit).join(' ')}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${view} role="img" font-family="${escapeXml(FONT)}" fill="none">`,
    `<title>${escapeXml(drawing.title)}</title>`,
    `<desc>${escapeXml(drawing.description)}</desc>`,
    ...(patterns.length > 0 ? [`<defs>${patterns.join('')}</defs>`] : []),
    ...marks,
    '</svg>\n',
  ].join('\n');
}
