import type { SheetLook } from '../drawing/drawing.js';
import { type Photos, photoOf } from './look-fill.js';
import type { Mark } from './mark.js';
import { printPaths } from './prints.js';
import { unit } from './units.js';

export { isFlat, lookFill, type Photos } from './look-fill.js';

/** What an ink of a print is when the paper names none. */
const USUAL_INK = '#7c8a80';

/** The colour of an ink of a look's print; a paper that names too few inks prints the rest in its last. */
export function printInk({ inks }: Pick<SheetLook, 'inks'>, ink: number): string {
  return inks[Math.min(ink, inks.length - 1)] ?? USUAL_INK;
}

function printMark(look: SheetLook): Mark {
  const paths = printPaths(look.pattern).map(({ d, ink, line, opacity }): Mark => {
    const colour = printInk(look, ink);
    const inked: Record<string, string> =
      line > 0 ? { fill: 'none', stroke: colour, 'stroke-width': String(line) } : { fill: colour };
    const clear: Record<string, string> = opacity < 1 ? { 'fill-opacity': String(opacity) } : {};
    return { tag: 'path', key: '', attributes: { d, ...inked, ...clear } };
  });
  const transform = `scale(${Number(unit(look.repeat)) / 100})`;
  return {
    tag: 'g',
    key: '',
    attributes: { transform, 'stroke-linecap': 'round', 'stroke-linejoin': 'round' },
    children: paths,
  };
}

/**
 * The pattern that fills areas of a paper: its ground and one repeat of its print, or, when it has a photograph that is
 * among `photos`, the whole sheet as photographed. In user units; `id` is its own.
 */
export function lookPattern(look: SheetLook, id: string, photos?: Photos): Mark {
  const photo = photoOf(look, photos);
  const size = {
    width: unit(photo?.sheet.width ?? look.repeat),
    height: unit(photo?.sheet.height ?? look.repeat),
  };
  const print: Mark = photo
    ? { tag: 'image', key: '', attributes: { ...size, href: photo.href, preserveAspectRatio: 'xMidYMid slice' } }
    : printMark(look);
  return {
    tag: 'pattern',
    key: id,
    attributes: { id, patternUnits: 'userSpaceOnUse', ...size },
    children: [{ tag: 'rect', key: '', attributes: { ...size, fill: look.ground } }, print],
  };
}
