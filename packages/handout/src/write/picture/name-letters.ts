/** What the family of a font with the extended Latin letters of another is called. */
export const MORE = ' More';

/** Letters that stand in the fonts of extended Latin only (the ranges of `PAGE_FONTS`). */
const MORE_LETTERS =
  /[\u0100-\u0130\u0132-\u0151\u0154-\u02ba\u02bd-\u02c5\u02c7-\u02cc\u02ce-\u02d7\u02dd-\u02ff\u1e00-\u1e9f\u1ef2-\u1eff\u20a0-\u20ab\u20ad-\u20c0]+/g;
const TEXT = /(<text\b[^>]*>)([^<]*)(<\/text>)/g;

/**
 * The SVG of a picture with the family of each letter said, for a program that looks for a letter which a font lacks in any
 * font at all, whatever its family. Our fonts come in two files each, of which the second has the extended Latin letters;
 * `loadPictureFonts` gives it under the family's name with ` More` behind it.
 */
export function nameLetters(svg: string, { sans, serif }: { readonly sans: string; readonly serif: string }): string {
  return svg.replace(TEXT, (_whole, start: string, text: string, end: string) => {
    const family = `${start.includes(serif) ? serif : sans}${MORE}`;
    return `${start}${text.replace(MORE_LETTERS, (letters) => `<tspan font-family="${family}">${letters}</tspan>`)}${end}`;
  });
}
