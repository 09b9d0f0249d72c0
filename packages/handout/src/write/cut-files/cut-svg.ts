import type { Outline, OutlineStep, Point, Unit } from '@trimwell/geometry';
import { escapeXml } from '../escape.js';
import { type CutPage, LINE_KINDS, SCORE_DASH } from './cut-page.js';
import { figure, inUnit } from './figure.js';

const MM_PER_INCH = 25.4;

/** Width of the drawn lines, in millimetres: seen on a screen, and without meaning for a machine. */
const LINE_WIDTH = 0.1;

function stepData(step: OutlineStep, at: (length: number) => string): string {
  const point = ({ x, y }: Point): string => `${at(x)} ${at(y)}`;
  switch (step.kind) {
    case 'line':
      return `L${point(step.to)}`;
    case 'arc':
      return `A${at(step.radiusX)} ${at(step.radiusY)} 0 0 ${step.clockwise ? 1 : 0} ${point(step.to)}`;
    case 'curve':
      return `C${point(step.control1)} ${point(step.control2)} ${point(step.to)}`;
  }
}

/** A last straight step is left to the closing of the path, which would be a step of no length otherwise. */
function outlinePath({ start, steps }: Outline, at: (length: number) => string): string {
  const shown = steps.at(-1)?.kind === 'line' ? steps.slice(0, -1) : steps;
  return `<path d="M${at(start.x)} ${at(start.y)}${shown.map((step) => stepData(step, at)).join('')}Z"/>`;
}

function group(id: keyof typeof LINE_KINDS, more: string, width: string, paths: readonly string[]): string {
  const ink = `fill="none" stroke="${LINE_KINDS[id].colour}" stroke-width="${width}"${more}`;
  return [`<g id="${id}" ${ink}>`, ...paths, '</g>'].join('\n');
}

/**
 * A page as SVG at true size: the view box is in the same real unit as width and height, so that every figure is a
 * length. Scores come first, since they are made while the piece is still held by its sheet (common practice, no source);
 * holes before the outline around them. Real arcs and curves; outlines are closed; lines only, no fill, no text.
 */
export function writeCutSvg(page: CutPage, unit: Unit): string {
  const at = (length: number): string => figure(inUnit(length, unit));
  const millimetres = (length: number): string => figure(unit === 'in' ? length / MM_PER_INCH : length, 6);
  const [width, height, line] = [at(page.width), at(page.height), millimetres(LINE_WIDTH)];
  const scores = page.score.map(([from, to]) => `<path d="M${at(from.x)} ${at(from.y)}L${at(to.x)} ${at(to.y)}"/>`);
  const dashed = ` stroke-dasharray="${SCORE_DASH.map(millimetres).join(' ')}"`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}${unit}" height="${height}${unit}" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${escapeXml(page.title)}</title>`,
    `<desc>${escapeXml(page.description)}</desc>`,
    ...(scores.length > 0 ? [group('score', dashed, line, scores)] : []),
    group(
      'cut',
      '',
      line,
      page.cut.map((outline) => outlinePath(outline, at)),
    ),
    '</svg>\n',
  ].join('\n');
}
