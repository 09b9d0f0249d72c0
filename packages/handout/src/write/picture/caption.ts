import { estimateMeasure } from '../../page/measure.js';
import { wrapText } from '../../page/wrap.js';
import { markText } from '../mark.js';
import type { PictureSize } from './picture-size.js';

/** The words of a picture: a heading in the headings' serif and lines below it. */
export interface CaptionWords {
  readonly heading: string | null;
  readonly lines: readonly CaptionLine[];
}

/** A line of words; where all words take too much room `short` stands for it. */
export interface CaptionLine {
  readonly text: string;
  readonly short?: string;
}

/** Where words and drawing stand, in pixels. */
export interface PictureLayout {
  readonly texts: readonly string[];
  readonly area: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
}

const INK = '#22302f';
const QUIET = '#575e59';
/** Of the smaller side: the rim around everything, letters of the heading and of the lines. */
const RIM = 0.07;
const HEADING = 0.048;
const LINE = 0.025;
const HEADING_SIZES = [1, 0.9, 0.8, 0.7];
const LEADING = 1.3;
/** From this proportion on the words stand beside the drawing, in this share of the width. */
const BESIDE_FROM = 1.25;
const BESIDE = 0.34;
/** Words below the drawing take at most this share of the height. */
const HIGHEST = 0.5;

interface SetLine {
  readonly text: string;
  readonly face: 'heading' | 'text';
  readonly size: number;
  /** Baseline, below the top of the words. */
  readonly y: number;
}

/** The size of a heading: smaller where that spares it a second line. */
function headingSize(heading: string, width: number, usual: number): number {
  const fits = (size: number): boolean =>
    wrapText(heading, width, { face: 'heading', size }, estimateMeasure).length === 1;
  return HEADING_SIZES.map((share) => share * usual).find(fits) ?? usual;
}

/** Smaller letters, where the usual ones take too much room. */
const SMALLER = [1, 0.85, 0.7];

/** The words in lines no wider than `width`, smaller or shorter where they would be higher than `most`. */
function setWords(words: CaptionWords, width: number, most: number, side: number) {
  const short: CaptionWords = {
    ...words,
    lines: words.lines.map(({ text, short: other }) => ({ text: other ?? text })),
  };
  const tries = [words, short].flatMap((each) => SMALLER.map((smaller) => () => setLines(each, width, side * smaller)));
  for (const attempt of tries) {
    const found = attempt();
    if (found.height <= most) return found;
  }
  return setLines(short, width, side * 0.5);
}

/** The words in lines no wider than `width`; `height` is what they take. */
function setLines({ heading, lines }: CaptionWords, width: number, side: number) {
  const set: SetLine[] = [];
  let y = 0;
  const add = (text: string, face: 'heading' | 'text', size: number, after: number): void => {
    for (const line of wrapText(text, width, { face, size }, estimateMeasure)) {
      y += size * LEADING;
      set.push({ text: line, face, size, y: y - size * 0.3 });
    }
    y += after;
  };
  if (heading !== null) add(heading, 'heading', headingSize(heading, width, side * HEADING), side * LINE * 0.5);
  for (const { text } of lines) add(text, 'text', side * LINE, side * LINE * 0.4);
  return { set, height: y };
}

function textMark({ text, face, size }: SetLine, x: number, y: number, align: 'start' | 'middle'): string {
  const hand: Record<string, string> =
    face === 'heading' ? { 'font-family': "'Source Serif 4', Georgia, serif", 'font-weight': '600' } : {};
  const places = { x: x.toFixed(2), y: y.toFixed(2), 'font-size': size.toFixed(2), 'text-anchor': align };
  return markText({
    tag: 'text',
    key: '',
    attributes: { ...places, ...hand, fill: face === 'heading' ? INK : QUIET },
    text,
  });
}

/**
 * Words and drawing in a picture: without words the drawing has all but the rim; a heading alone stands below it, in the
 * middle; lines stand below it too, or beside it in a wide picture.
 */
export function layOutPicture(size: PictureSize, words: CaptionWords): PictureLayout {
  const side = Math.min(size.width, size.height);
  const rim = side * RIM;
  const whole = { x: rim, y: rim, width: size.width - 2 * rim, height: size.height - 2 * rim };
  if (words.heading === null && words.lines.length === 0) return { texts: [], area: whole };
  if (words.lines.length > 0 && size.width > size.height * BESIDE_FROM) {
    const width = whole.width * BESIDE;
    const { set, height } = setWords(words, width, whole.height, side);
    const [x, top] = [size.width - rim - width, Math.max(rim, (size.height - height) / 2)];
    const texts = set.map((line) => textMark(line, x, top + line.y, 'start'));
    return { texts, area: { ...whole, width: whole.width - width - rim } };
  }
  const { set, height } = setWords(words, whole.width, whole.height * HIGHEST, side);
  const top = size.height - rim - height;
  const middle = words.lines.length === 0;
  const texts = set.map((line) =>
    textMark(line, middle ? size.width / 2 : rim, top + line.y, middle ? 'middle' : 'start'),
  );
  return { texts, area: { ...whole, height: Math.max(side * RIM, top - rim * 0.6 - whole.y) } };
}
