import type { Language, ListArrangement, ListFormat, PagePaper } from '@trimwell/handout';
import { PICTURE_SIZES, PICTURE_SIZES_ALLOWED, type PictureSizeName, readPictureSize } from '@trimwell/handout/picture';

export const PAPER_NAMES: Readonly<Record<PagePaper, string>> = {
  letter: 'Letter, 8 1/2 x 11 in',
  a4: 'A4, 210 x 297 mm',
};

export const LANGUAGE_NAMES: Readonly<Record<Language, string>> = { en: 'English', de: 'Deutsch' };

export const LENGTH_WORDS = { in: 'inches', mm: 'millimetres' } as const;

export const CUT_FORMAT_WORDS = { svg: 'SVG', dxf: 'DXF' } as const;

export const CUT_GROUP_WORDS = { sheet: 'each sheet', piece: 'each piece' } as const;

/** For how many cards something is made. */
export const CARDS_WORDS = (cards: number) =>
  ({ whole: cards === 1 ? 'the one card of the batch' : `all ${cards} cards`, one: 'one card' }) as const;

export const LIST_WORDS = (cards: number): Readonly<Record<ListArrangement, string>> => ({
  batch: cards === 1 ? 'the batch of one card' : `all ${cards} cards`,
  card: 'one card',
  paper: 'the batch, by paper',
  setting: 'the batch, by setting',
});

export const LIST_FORMAT_WORDS: Readonly<Record<ListFormat, string>> = {
  csv: 'CSV',
  json: 'JSON',
  markdown: 'Markdown',
  text: 'plain text',
};

export const WEB_WORDS = {
  element: 'a live sketch',
  frame: 'a live sketch in a frame',
  plain: 'plain, without scripts',
} as const;

/** What each way is good for. */
export const WEB_WAY_WORDS = {
  element: 'Readers change papers, units and cards in your page. Its card and sizes stand where scripts do not run.',
  frame: 'For sites that take no scripts of others. The frame has a height of its own; change it to suit your page.',
  plain:
    'The card and a table of sizes, for mail and feeds. Programs for mail may leave the card out; the table stands.',
} as const;

export const PICTURE_WORDS = {
  card: 'the card',
  inside: 'the inside',
  batch: 'all cards of the batch',
  guide: 'a cutting guide',
} as const;

export const PICTURE_FORMAT_WORDS = { png: 'PNG', svg: 'SVG' } as const;

export const OTHER_SIZE = 'other';

const words = (name: PictureSizeName, text: string): string => {
  const { width, height } = PICTURE_SIZES[name];
  return `${text}, ${width} x ${height}`;
};

export const PICTURE_SIZE_WORDS: Readonly<Record<PictureSizeName | typeof OTHER_SIZE, string>> = {
  post: words('post', 'for a post'),
  square: words('square', 'square'),
  tall: words('tall', 'tall'),
  wide: words('wide', 'wide'),
  'tall screen': words('tall screen', 'a tall screen'),
  other: 'another size',
};

export { PICTURE_SIZES };

/** The name of a size, `other` when it has none. */
export function pictureSizeName(size: {
  readonly width: number;
  readonly height: number;
}): PictureSizeName | typeof OTHER_SIZE {
  const names = Object.keys(PICTURE_SIZES) as PictureSizeName[];
  const found = names.find((name) => {
    const { width, height } = PICTURE_SIZES[name];
    return width === size.width && height === size.height;
  });
  return found ?? OTHER_SIZE;
}

/** A size in pixels as it is typed, or what is wrong with it as a sentence. */
export function readSides(text: string): { readonly width: number; readonly height: number } | string {
  return readPictureSize(text) ?? `${JSON.stringify(text)} is no size; allowed: ${PICTURE_SIZES_ALLOWED}.`;
}

/** What a password does and does not protect. */
export const PASSWORD_WORDS =
  'Without it nobody can open or read the file (AES-256). Whoever has it can print, copy and pass on the pages, and the ' +
  'password with them: it keeps strangers out, not those you gave it to. A short word can be guessed; several words are ' +
  'better. It is kept nowhere: if it is lost, save the pages anew.';

/** Most bytes of UTF-8 that a PDF's password may have (ISO 32000-2, 7.6.4.3.3). */
const MOST_BYTES = 127;

/** What is wrong with a password, as a sentence, or null. */
export function passwordProblem(password: string): string | null {
  const bytes = new TextEncoder().encode(password).length;
  if (bytes === 0) return 'There is no password yet.';
  return bytes > MOST_BYTES ? `The password takes ${bytes} bytes; allowed: 1 to ${MOST_BYTES}.` : null;
}
