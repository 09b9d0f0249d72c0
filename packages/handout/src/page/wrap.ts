import type { TextMeasure } from './measure.js';
import type { TextStyle } from './text-style.js';

/** A space that no line is broken at; it is drawn as a plain space. */
export const TIED = '\u00a0';

/** `text` as it is drawn and read: tied spaces are spaces. */
export function plainSpaces(text: string): string {
  return text.replaceAll(TIED, ' ');
}

/** `text` with all its spaces tied, so that a size stays in one line. */
export function tied(text: string): string {
  return text.replaceAll(' ', TIED);
}

type Style = Pick<TextStyle, 'face' | 'size'>;

/** Letters as a reader counts them, so that a break never parts an accent from its letter. */
const LETTERS = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/** A word too long for a line, broken where it must be; a tied space is the better place. */
function brokenWord(word: string, width: number, style: Style, measure: TextMeasure): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const { segment } of LETTERS.segment(word)) {
    if (line !== '' && measure.width(plainSpaces(line + segment), style.size, style.face) > width) {
      const at = line.lastIndexOf(TIED);
      lines.push(at > 0 ? line.slice(0, at) : line);
      line = at > 0 ? line.slice(at + 1) : '';
    }
    line += segment;
  }
  return [...lines, line];
}

/** Words in lines by `fits`, which is asked about every line as it grows. */
function filledLines(
  words: readonly string[],
  fits: (line: readonly string[]) => boolean,
): readonly (readonly string[])[] {
  const lines: string[][] = [];
  let line: string[] = [];
  for (const word of words) {
    if (line.length > 0 && !fits([...line, word])) {
      lines.push(line);
      line = [];
    }
    line.push(word);
  }
  return [...lines, line];
}

/**
 * `text` in lines no wider than `width`, broken at spaces, at line ends of its own, and inside a word only where the word
 * alone is wider. At least one line. Words are measured one by one, since the same words come again and again, and then
 * each line as a whole, since the fit of letters across a space may differ by a hair.
 */
export function wrapText(text: string, width: number, style: Style, measure: TextMeasure): readonly string[] {
  const wide = (part: string): number => measure.width(plainSpaces(part), style.size, style.face);
  const space = wide(' ');
  return text.split(/\r\n|\r|\n/).flatMap((paragraph) => {
    const words = paragraph
      .split(/[ \t]+/)
      .filter((word) => word !== '')
      .flatMap((word) => (wide(word) <= width ? [word] : brokenWord(word, width, style, measure)));
    const byWords = filledLines(words, (line) => line.reduce((sum, word) => sum + wide(word) + space, -space) <= width);
    const whole = (line: readonly string[]): boolean => wide(line.join(' ')) <= width;
    const lines = byWords.every(whole) ? byWords : filledLines(words, whole);
    return lines.map((line) => plainSpaces(line.join(' ')));
  });
}
