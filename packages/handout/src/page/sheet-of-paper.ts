import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';

export const PAGE_PAPERS = ['letter', 'a4'] as const;
/** The papers that a handout is printed on: 8 1/2 x 11 in, 210 x 297 mm (ISO 216). */
export type PagePaper = (typeof PAGE_PAPERS)[number];

/** The area of a page that is laid out, in ticks from its upper left corner; the foot stands below it. */
export interface PageFrame {
  readonly width: Length;
  readonly height: Length;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  /** The line that the foot is written on. */
  readonly foot: number;
}

/** Ticks in a typographic point of 1/72 in, to the nearest: good for text and never for a length of paper. */
export const POINT = 226;

/** Wide enough for any printer and for a hand that holds the page. */
const SIDE = millimetres(18);
const TOP = millimetres(16);
const BOTTOM = millimetres(21);

/** The frame of a page of `paper`. */
export function pageFrame(paper: PagePaper): PageFrame {
  const letter = paper === 'letter';
  const width = letter ? inches(8.5) : millimetres(210);
  const height = letter ? inches(11) : millimetres(297);
  return {
    width,
    height,
    left: SIDE,
    top: TOP,
    right: ticks(width - SIDE),
    bottom: ticks(height - BOTTOM),
    foot: ticks(height - millimetres(12)),
  };
}
