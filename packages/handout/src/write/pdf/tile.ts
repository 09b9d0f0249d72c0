import type { PDFImage } from '@cantoo/pdf-lib';
import type { SheetLook } from '../../drawing/drawing.js';
import { printInk } from '../look.js';
import { printPaths } from '../prints.js';
import { rgb } from './colour.js';
import { allPoints, points } from './number.js';
import { dataOperators } from './path-operators.js';

/** One repeat of a paper's look: its content, its size in units of its own, and the ticks in a unit. */
export interface Tile {
  readonly content: string;
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  /** The names of the opacities that it uses. */
  readonly opacities: readonly string[];
}

function ground(colour: string, width: number, height: number): string {
  return `${rgb(colour)} rg\n${allPoints(0, 0, width, height)} re\nf`;
}

/** A photograph over the whole sheet, cut to its proportion, upright where y points down. */
function photoTile(look: SheetLook, photo: PDFImage, sheet: NonNullable<SheetLook['sheet']>): Tile {
  const { width, height } = sheet;
  const fit = Math.max(width / photo.width, height / photo.height);
  const [wide, tall] = [photo.width * fit, photo.height * fit];
  const place = allPoints(wide, 0, 0, -tall, (width - wide) / 2, (height + tall) / 2);
  const content = `${ground(look.ground, width, height)}\nq\n${place} cm\n/@ Do\nQ`;
  return { content, width, height, scale: 1, opacities: [] };
}

/** The tile of a look; a photograph is drawn by the name `@`, which the writer fills in. `opacity` names a share. */
export function tileOf(look: SheetLook, photo: PDFImage | undefined, opacity: (share: number) => string): Tile {
  if (photo && look.sheet) return photoTile(look, photo, look.sheet);
  const opacities: string[] = [];
  const marks = printPaths(look.pattern).map(({ d, ink, line, opacity: share }) => {
    const colour = rgb(printInk(look, ink));
    if (line > 0) return `${colour} RG\n${points(line)} w\n${dataOperators(d)}\nS`;
    const state = share < 1 ? opacity(share) : null;
    if (state !== null) opacities.push(state);
    const fill = `${colour} rg\n${dataOperators(d)}\nf`;
    return state === null ? fill : `q\n/${state} gs\n${fill}\nQ`;
  });
  const content = [ground(look.ground, 100, 100), '1 J\n1 j', ...marks].join('\n');
  return { content, width: 100, height: 100, scale: look.repeat / 100, opacities };
}
