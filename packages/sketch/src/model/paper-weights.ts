import { inches, type Length, ticks } from '@trimwell/geometry';
import { GRAMS_PER_POUND } from './weight-units.js';

/** Kinds of paper whose weight the United States state in pounds. */
export const PAPER_GRADES = ['bond', 'cover', 'text', 'index', 'tag', 'bristol'] as const;
export type PaperGrade = (typeof PAPER_GRADES)[number];

/**
 * The basic size of each grade, in inches: its basis weight is that of 500 sheets of this size (TAPPI T 410; sizes as in trade
 * handbooks). Text is also called book or offset, bond writing; the basic size of newsprint is that of tag.
 */
export const BASIC_SIZES: Readonly<Record<PaperGrade, readonly [width: number, height: number]>> = {
  bond: [17, 22],
  cover: [20, 26],
  text: [25, 38],
  index: [25.5, 30.5],
  tag: [24, 36],
  bristol: [22.5, 28.5],
};

/** Sheets that a basis weight counts. */
const REAM = 500;
/** Metres in an inch, exactly (international yard and pound agreement, 1959). */
const METRES_PER_INCH = 0.0254;

/**
 * Grams per square metre (ISO 536) of a basis weight in pounds: pounds x 453.59237 / (500 x area x 0.0254^2), with the area of the
 * basic size in square inches. Not rounded.
 */
export function gsmOfBasisWeight(pounds: number, grade: PaperGrade): number {
  const [width, height] = BASIC_SIZES[grade];
  return (pounds * GRAMS_PER_POUND) / (REAM * width * height * METRES_PER_INCH ** 2);
}

/** The basis weight in pounds of a paper of `gsm` grams per square metre, if it is sold as `grade`. Not rounded. */
export function basisWeightOfGsm(gsm: number, grade: PaperGrade): number {
  return gsm / gsmOfBasisWeight(1, grade);
}

/** A weight as it is printed on a packet of paper. */
export interface PaperWeight {
  readonly gsm: number;
  /** The grade, where the weight was stated in pounds. */
  readonly grade: PaperGrade | null;
}

/** What a weight may be written as, for a message. */
export const PAPER_WEIGHT_ALLOWED = `80 lb cover (or ${PAPER_GRADES.filter((grade) => grade !== 'cover').join(', ')}), or 216 g/m2, from 10 to 2000 g/m2`;

const LIGHTEST = 10;
const HEAVIEST = 2_000;

/**
 * Reads `80 lb cover`, `65# Cover`, `216 gsm` or `216 g/m²`. Pounds without a grade say nothing, since 80 lb of text are half as
 * heavy as 80 lb of cover. Null when `text` is none of these, or no paper is so heavy (see `PAPER_WEIGHT_ALLOWED`).
 */
export function readPaperWeight(text: string): PaperWeight | null {
  const words = text.trim().toLowerCase();
  const metric = /^(\d{1,4}(?:\.\d{1,3})?) ?(?:gsm|g\/m2|g\/m²)$/.exec(words);
  const pounds = /^(\d{1,3}(?:\.\d{1,2})?) ?(?:lbs?\.?|#) ?([a-z]+)$/.exec(words);
  const grade = PAPER_GRADES.find((each) => each === pounds?.[2]) ?? null;
  const gsm = metric ? Number(metric[1]) : pounds && grade ? gsmOfBasisWeight(Number(pounds[1]), grade) : 0;
  return gsm >= LIGHTEST && gsm <= HEAVIEST ? { gsm, grade } : null;
}

/** A caliper in points of a thousandth of an inch, as a length. */
export function pointsThick(points: number): Length {
  return ticks(Math.round(points * inches(1) * 0.001));
}

/**
 * How thick a paper of that weight may be: from smooth, coated stock to uncoated craft stock. Estimates, never a measurement: a
 * printer's chart of smooth and coated cover begins at 0.86 cm3/g, mills' charts of bond and the uncoated cover of card makers 1.2 to 1.45 (common
 * practice; the sources disagree).
 */
export function estimatedCalipers(gsm: number): {
  readonly least: Length;
  readonly most: Length;
  readonly estimated: true;
} {
  const thick = (bulk: number): Length => ticks(Math.round((gsm * bulk * inches(1)) / 25_400));
  return { least: thick(0.86), most: thick(1.45), estimated: true };
}
