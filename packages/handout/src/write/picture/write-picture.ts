import type { Sketch } from '@trimwell/sketch';
import { escapeXml } from '../escape.js';
import type { PageFont } from '../font-files.js';
import { inkMark } from '../ink.js';
import type { Photos } from '../look.js';
import { patternId } from '../look-fill.js';
import { lookPatterns } from '../look-patterns.js';
import { markText } from '../mark.js';
import { itemMark, type MarkContext } from '../marks.js';
import { TEXT_FONT } from '../svg.js';
import { TICKS_PER_UNIT, unit } from '../units.js';
import { layOutPicture, type PictureLayout } from './caption.js';
import { castShadows } from './cast-shadows.js';
import { raisedPieces } from './face-scene.js';
import { groundPrints } from './ground-prints.js';
import { checkPictureSize, type PictureSize } from './picture-size.js';
import { pictureTheme } from './picture-theme.js';
import { type PictureSubject, type Scene, sceneOf, wordsOf } from './scene.js';

export interface PictureOptions {
  readonly size: PictureSize;
  /** Words below the drawing. Left out: none, and for a guide the name of its paper. */
  readonly title?: string;
  /** The colour of what lies around, as #rrggbb. Default a quiet grey-green. */
  readonly ground?: string;
  /** Photographs of sheets as data URLs by hash; the print drawn by us stands in for any other. */
  readonly photos?: Photos;
  /** Fonts that the picture carries along, as data URLs: a picture that is drawn as an image sees no other fonts of a page. */
  readonly fonts?: readonly PictureFont[];
  /** Start of all ids, so that several pictures stand on one page. Letters, digits and hyphens. Default `trimwell`. */
  readonly prefix?: string;
}

/** A font with the address of its bytes. */
export interface PictureFont extends PageFont {
  readonly href: string;
}

const GROUND = '#d9ddd5';
/** How far the shadow of a card falls, in pixels, for each pixel of the picture's smaller side. */
const SHADOW = 0.007;
/** @throws RangeError for an address that leads out of the file, because a picture holds all that it shows */
function checkPhotos(photos: Photos): void {
  for (const [hash, address] of photos)
    if (!/^data:image\/[a-z+.-]+;base64,/i.test(address))
      throw new RangeError(
        `photos[${JSON.stringify(hash)}] is ${JSON.stringify(address.slice(0, 40))}; allowed: a data URL of an image.`,
      );
}

/** The fonts of a picture as a style. @throws RangeError for an address that leads out of the file */
function fontStyle(fonts: readonly PictureFont[]): string {
  const faces = fonts.map(({ family, weight, style, letters, href }) => {
    if (!/^data:[a-z]+\/[a-z+.-]+;base64,[a-z0-9+/=]*$/i.test(href))
      throw new RangeError(
        `fonts[${JSON.stringify(family)}] is ${JSON.stringify(href.slice(0, 40))}; allowed: a data URL of a font.`,
      );
    return `@font-face{font-family:'${family}';font-weight:${weight};font-style:${style};unicode-range:${letters};src:url(${href})}`;
  });
  return `<style>${escapeXml(faces.join(''))}</style>`;
}

function checkGround(ground: string): void {
  if (!/^#[0-9a-f]{6}$/i.test(ground))
    throw new RangeError(`ground is ${JSON.stringify(ground)}; allowed: a colour as #rrggbb.`);
}

/** A number of pixels, to a thousandth. */
function pixel(value: number): string {
  return String(Math.round(value * 1000) / 1000);
}

/** The drawing of a scene as SVG lines, in the middle of its area. */
function sceneLines(sketch: Sketch, scene: Scene, { area }: PictureLayout, context: MarkContext, side: number) {
  const { box } = scene;
  const scale = Math.min((area.width * TICKS_PER_UNIT) / box.width, (area.height * TICKS_PER_UNIT) / box.height);
  const theme = pictureTheme(scale, side);
  const across = area.x + area.width / 2 - ((box.x + box.width / 2) / TICKS_PER_UNIT) * scale;
  const down = area.y + area.height / 2 - ((box.y + box.height / 2) / TICKS_PER_UNIT) * scale;
  const shadows = {
    length: (((side * SHADOW) / scale) * TICKS_PER_UNIT) / Math.sqrt(Math.max(1, scene.places.length)),
    raised: raisedPieces(sketch),
  };
  const { prefix, looks } = context;
  const grounds = new Map(
    Object.entries(looks).map(([paper, { ground }]) => [`url(#${patternId(prefix, paper)})`, ground]),
  );
  const drawn = scene.drawings.map((items) =>
    castShadows(items, shadows)
      .map((item) => markText(groundPrints(inkMark(itemMark(item, context), theme), grounds)))
      .join('\n'),
  );
  const frame = `<g transform="translate(${pixel(across)} ${pixel(down)}) scale(${Number(scale.toPrecision(9))})">`;
  const shared = scene.places.length > 1;
  const id = (drawing: number): string => `${prefix}-card-${drawing + 1}`;
  return {
    defs: shared ? drawn.map((text, drawing) => `<g id="${id(drawing)}">\n${text}\n</g>`) : [],
    lines: [
      frame,
      ...(shared
        ? scene.places.map(({ drawing, x, y }) => `<use href="#${id(drawing)}" x="${unit(x)}" y="${unit(y)}"/>`)
        : drawn),
      '</g>',
    ],
  };
}

/**
 * A picture for a page or a post as SVG text of exactly the size asked for, in pixels: the drawing in the middle of a quiet
 * ground, with words below or beside it. It holds all that it shows and refers to nothing outside. A guide names its sheet
 * and its letters and carries the caution for blades. The same sketch, subject and options give the same text.
 * @throws RangeError for a size, a number of cards, a sheet, a ground or a photograph's address that is not allowed
 */
export function writePicture(sketch: Sketch, subject: PictureSubject, options: PictureOptions): string {
  const { size, title, ground = GROUND, photos, fonts = [], prefix = 'trimwell' } = options;
  checkPictureSize(size);
  checkGround(ground);
  if (photos) checkPhotos(photos);
  const side = Math.min(size.width, size.height);
  const layout = layOutPicture(size, wordsOf(sketch, subject, title));
  const scene = sceneOf(sketch, subject, layout, side);
  const context: MarkContext = { looks: scene.looks, prefix, ...(photos ? { photos } : {}) };
  const { defs, lines } = sceneLines(sketch, scene, layout, context, side);
  const style = fonts.length > 0 ? [fontStyle(fonts)] : [];
  const shared = [...style, ...lookPatterns(context).map(markText), ...defs];
  const [width, height] = [size.width, size.height].map(String);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" font-family="${escapeXml(TEXT_FONT)}" fill="none">`,
    `<title>${escapeXml(scene.title)}</title>`,
    `<desc>${escapeXml(scene.description)}</desc>`,
    ...(shared.length > 0 ? [`<defs>${shared.join('\n')}</defs>`] : []),
    `<rect width="${width}" height="${height}" fill="${ground}"/>`,
    ...lines,
    ...layout.texts,
    '</svg>\n',
  ].join('\n');
}
