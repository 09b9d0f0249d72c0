/** The width and height of a picture, in pixels. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** Sizes for pages and posts, by plain names (common practice, no source). */
export const PICTURE_SIZES = {
  post: { width: 1200, height: 800 },
  square: { width: 1080, height: 1080 },
  tall: { width: 1000, height: 1500 },
  wide: { width: 1200, height: 630 },
  'tall screen': { width: 1080, height: 1920 },
} as const satisfies Readonly<Record<string, PictureSize>>;

export type PictureSizeName = keyof typeof PICTURE_SIZES;

/** Least and most pixels of a side; a picture of the most both ways takes 256 MB to draw, in four bytes a pixel. */
export const PICTURE_SIDE = { least: 100, most: 8000 } as const;

/** What can be said for a size, for messages. */
export const PICTURE_SIZES_ALLOWED = `${Object.keys(PICTURE_SIZES).join(', ')}, or pixels such as 1200x800, each side from ${PICTURE_SIDE.least} to ${PICTURE_SIDE.most}`;

function isSide(side: number): boolean {
  return Number.isSafeInteger(side) && side >= PICTURE_SIDE.least && side <= PICTURE_SIDE.most;
}

/** A size by its name (a hyphen does for a space) or as `1200x800`; null for anything else. */
export function readPictureSize(text: string): PictureSize | null {
  const name = text.trim().toLowerCase().replaceAll('-', ' ');
  if (Object.hasOwn(PICTURE_SIZES, name)) return PICTURE_SIZES[name as PictureSizeName];
  const [, across, down] = /^(\d{1,5})\s*[x×]\s*(\d{1,5})$/.exec(name) ?? [];
  const size = { width: Number(across), height: Number(down) };
  return isSide(size.width) && isSide(size.height) ? size : null;
}

/** @throws RangeError for a side that is no whole number of pixels within `PICTURE_SIDE` */
export function checkPictureSize(size: PictureSize): void {
  for (const side of ['width', 'height'] as const)
    if (!isSide(size[side]))
      throw new RangeError(
        `size.${side} is ${size[side]}; allowed: a whole number of pixels from ${PICTURE_SIDE.least} to ${PICTURE_SIDE.most}.`,
      );
}
