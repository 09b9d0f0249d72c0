/** It is made once: making it takes longer than all that it is used for. */
const SEGMENTER = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Letters as a reader counts them: an accent belongs to its letter, a family of signs is one sign. */
const letters = (text: string): readonly string[] => Array.from(SEGMENTER.segment(text), ({ segment }) => segment);

/** Letters that take two columns of a typewriter face: after Unicode Standard Annex 11, by scripts. */
const WIDE =
  /^(?:\p{Script=Han}|\p{Script=Hiragana}|\p{Script=Katakana}|\p{Script=Hangul}|\p{Emoji_Presentation}|[\u3000-\u303e\uff01-\uff60\uffe0-\uffe6])|\ufe0f/u;
/** Letters that take none: a mark without a letter, a joiner, a soft hyphen. */
const NONE = /^[\p{M}\p{Cf}]+$/u;
const PLAIN = /^[\x20-\x7e]*$/;

/** How many columns of a typewriter face a text takes. */
export function columnsOf(text: string): number {
  if (PLAIN.test(text)) return text.length;
  return letters(text).reduce((sum, letter) => sum + (NONE.test(letter) ? 0 : WIDE.test(letter) ? 2 : 1), 0);
}

/** `text` filled up with spaces to `columns`, before it for a figure. */
export function padded(text: string, columns: number, align: 'start' | 'end'): string {
  const space = ' '.repeat(Math.max(0, columns - columnsOf(text)));
  return align === 'end' ? space + text : text + space;
}

/** A word in parts of at most `columns`; a letter wider than that stands alone. */
function brokenWord(word: string, columns: number): readonly string[] {
  if (columnsOf(word) <= columns) return [word];
  const parts: string[] = [];
  let part = '';
  let taken = 0;
  for (const letter of letters(word)) {
    const wide = columnsOf(letter);
    if (part !== '' && taken + wide > columns) {
      parts.push(part);
      part = '';
      taken = 0;
    }
    part += letter;
    taken += wide;
  }
  return [...parts, part];
}

/** Where a line may end: at a space, but in no size and no mixed number. */
const BREAKS = /(?<!×) (?!×|(?<=\d )\d+⁄\d)/;

/** `text` in lines of at most `columns`, broken at spaces, and inside a word only where that alone is too long. */
export function brokenText(text: string, columns: number): readonly string[] {
  if (columnsOf(text) <= columns) return [text];
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(BREAKS).flatMap((each) => brokenWord(each, columns))) {
    if (line !== '' && columnsOf(line) + 1 + columnsOf(word) > columns) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
