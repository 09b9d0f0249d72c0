import type { SheetLook } from '../drawing/drawing.js';

/** Addresses (object or data URLs) of the users' own photographs of sheets that are at hand, by hash. */
export type Photos = ReadonlyMap<string, string>;

/** The address of the look's photograph, with the sheet that it spans; null where a print drawn by us is shown. */
export function photoOf({ photo, sheet }: SheetLook, photos?: Photos) {
  const href = photo === undefined ? undefined : photos?.get(photo);
  return href === undefined || !sheet ? null : { href, sheet };
}

/** True for a look that is one flat colour: plain paper without a photograph among `photos`. */
export function isFlat(look: SheetLook, photos?: Photos): boolean {
  return look.pattern === 'plain' && !photoOf(look, photos);
}

/** The id of a paper's pattern; papers' ids are plain, so it is safe in a URL and in XML. */
export function patternId(prefix: string, paper: string): string {
  return `${prefix}-paper-${paper}`;
}

/** The `fill` of an area of a paper: a flat colour, or the address of its pattern. */
export function lookFill(look: SheetLook, id: string, photos?: Photos): string {
  return isFlat(look, photos) ? look.ground : `url(#${id})`;
}
