import type { ImageItem, Item, PathItem } from '../../drawing/drawing.js';
import { isFlat } from '../look.js';
import { type Ink, PAPER_THEME } from '../theme.js';
import { rgb } from './colour.js';
import { textOperators } from './draw-text.js';
import { combine, groupMatrix, type Matrix, place } from './matrix.js';
import { allPoints, points } from './number.js';
import { outlineOperators } from './path-operators.js';
import type { Resources } from './resources.js';

/** Points in a hundredth of a millimetre, the unit of inks. */
const POINTS_PER_HUNDREDTH = 72 / 2540;

/** The usual width of a line of which no width is said: a unit of the SVG writer, 0.1 mm. */
const USUAL_WIDTH = 10;

function strokeState(colour: string, { width = USUAL_WIDTH, dash }: Ink): readonly string[] {
  return [
    `${rgb(colour)} RG`,
    `${points(width * POINTS_PER_HUNDREDTH)} w`,
    ...(dash ? [`[${allPoints(...dash.map((part) => part * POINTS_PER_HUNDREDTH))}] 0 d`] : []),
  ];
}

/** How an area is filled: each fill in turn, lowest first. */
function fills(item: PathItem, ink: Ink, matrix: Matrix, resources: Resources): readonly string[] {
  if (item.fill) {
    const { look, photo } = resources.look(item.fill.paper);
    const ground = `${rgb(look.ground)} rg`;
    if (isFlat(look) && !photo) return [ground];
    const pattern = `/Pattern cs\n/${resources.pattern(item.fill.paper, matrix)} scn`;
    // The ground lies under the tiles too, so that no seam of theirs shows the sheet below; clear ink would double it.
    return ink.opacity === undefined || ink.opacity === 1 ? [ground, pattern] : [pattern];
  }
  return ink.fill === undefined || ink.fill === 'none' ? [] : [`${rgb(ink.fill)} rg`];
}

function pathOperators(item: PathItem, ink: Ink, matrix: Matrix, resources: Resources): string {
  const path = outlineOperators(item.outline, matrix, item.open);
  const stroke = item.ink ?? ink.stroke;
  const stroked = stroke === undefined || stroke === 'none' ? [] : [...strokeState(stroke, ink), path, 'S'];
  const filled = ink.opacity === 0 ? [] : fills(item, ink, matrix, resources).flatMap((fill) => [fill, path, 'f']);
  if (filled.length === 0 && stroked.length === 0) return '';
  const clear = filled.length > 0 && ink.opacity !== undefined && ink.opacity < 1;
  return ['q', ...(clear ? [`/${resources.opacity(ink.opacity ?? 1)} gs`] : []), ...filled, ...stroked, 'Q'].join('\n');
}

/** A picture as large as fits its rectangle, in the middle of it. */
function imageOperators({ at, width, height, href }: ImageItem, matrix: Matrix, resources: Resources): string {
  const image = resources.pictureAt(href);
  const fit = Math.min(width / image.width, height / image.height);
  const [wide, tall] = [image.width * fit, image.height * fit];
  const [left, bottom] = [at.x + (width - wide) / 2, at.y + (height + tall) / 2];
  return `q\n${allPoints(...combine(matrix, [wide, 0, 0, -tall, left, bottom]))} cm\n/${resources.picture(image)} Do\nQ`;
}

/**
 * An item as content operators; nothing for an item without ink. `matrix` takes its ticks to the points of the page;
 * `after` is what is set behind its texts.
 */
export function itemOperators(item: Item, matrix: Matrix, resources: Resources, after = ''): string {
  const ink = PAPER_THEME[item.role];
  switch (item.kind) {
    case 'path':
      return pathOperators(item, ink, matrix, resources);
    case 'line': {
      if (ink.stroke === undefined || ink.stroke === 'none') return '';
      const [from, to] = [place(matrix, item.from), place(matrix, item.to)];
      const line = `${allPoints(from.x, from.y)} m\n${allPoints(to.x, to.y)} l`;
      return ['q', ...strokeState(ink.stroke, ink), line, 'S', 'Q'].join('\n');
    }
    case 'text':
      return textOperators(item, ink, matrix, resources, after);
    case 'image':
      return imageOperators(item, matrix, resources);
    case 'group': {
      const inner = combine(matrix, groupMatrix(item));
      const parts = item.items.map((each) => itemOperators(each, inner, resources, after));
      return parts.filter((part) => part !== '').join('\n');
    }
  }
}
