interface Extent {
  readonly width: number;
  readonly height: number;
}

/** Which part of a picture becomes the sheet. */
export interface PhotoCrop {
  /** Quarter turns clockwise, from 0 to 3. */
  readonly turns: number;
  /** 1 takes as much of the picture as the sheet's proportion allows, 2 half of it, and so on. */
  readonly closer: number;
  /** Where in the room that is left, from 0 (left, top) to 1 (right, bottom). */
  readonly across: number;
  readonly down: number;
}

export const WHOLE_PICTURE: PhotoCrop = { turns: 0, closer: 1, across: 0.5, down: 0.5 };

/** Longest side of a photograph that is kept, in pixels: 130 to the inch of a 12 in sheet. */
export const LONGEST_SIDE = 1600;

/** The picture's size after its quarter turns. */
export function turnedExtent({ width, height }: Extent, turns: number): Extent {
  return turns % 2 === 0 ? { width, height } : { width: height, height: width };
}

/** The quarter turns with which a picture lies as its sheet does: none when both are upright or both lie, else one. */
export function turnsToLieAs(picture: Extent, sheet: Extent): number {
  return picture.width > picture.height === sheet.width > sheet.height || sheet.width === sheet.height ? 0 : 1;
}

/** The part of the turned picture that is kept, in its pixels, in the proportion of `sheet`. */
export function cropBox(picture: Extent, sheet: Extent, { turns, closer, across, down }: PhotoCrop) {
  const { width, height } = turnedExtent(picture, turns);
  const scale = Math.min(width / sheet.width, height / sheet.height) / Math.max(1, closer);
  const box = { width: sheet.width * scale, height: sheet.height * scale };
  return { x: (width - box.width) * across, y: (height - box.height) * down, ...box };
}

/** The size in pixels in which that part is kept: never more than there is, and never longer than `longest`. */
export function keptExtent(box: Extent, longest: number = LONGEST_SIDE): Extent {
  const scale = Math.min(1, longest / Math.max(box.width, box.height));
  return { width: Math.max(1, Math.round(box.width * scale)), height: Math.max(1, Math.round(box.height * scale)) };
}

/** The mean of opaque pixels as `#rrggbb`; `pixels` are red, green, blue, alpha in turn. */
export function meanColour(pixels: ArrayLike<number>): string {
  const sums = [0, 0, 0];
  for (let at = 0; at + 3 < pixels.length; at += 4) {
    for (let channel = 0; channel < 3; channel += 1) sums[channel] = (sums[channel] ?? 0) + (pixels[at + channel] ?? 0);
  }
  const count = Math.max(1, Math.floor(pixels.length / 4));
  const hex = sums.map((sum) =>
    Math.round(sum / count)
      .toString(16)
      .padStart(2, '0'),
  );
  return `#${hex.join('')}`;
}
