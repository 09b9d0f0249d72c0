import type { LoadedFont } from './fonts.js';

/** A piece of text that is set in one font. */
export interface LetterRun {
  readonly font: LoadedFont;
  readonly text: string;
}

/** Letters without ink that steer joining and direction only; a line of a handout needs none of them. */
const UNSEEN = /\p{Default_Ignorable_Code_Point}/gu;

/** A whole number before a fraction that is made of figures: apart, or 4 and an eighth would read 41 eighths. */
const MIXED = /(?<=\d)(?=[\u2150-\u215e\u2189])/gu;

const BLANK = /[\p{Zs}\p{Cc}\u2028\u2029]/u;

function plainly(text: string): string {
  return text.normalize('NFC').replace(UNSEEN, '').replace(MIXED, ' ');
}

function fontFor(text: string, fonts: readonly LoadedFont[]): LoadedFont | undefined {
  return fonts.find(({ letters }) => [...text].every((letter) => letters.has(letter.codePointAt(0) ?? 0)));
}

/**
 * What is shown for a letter that no font has: its code point, which can be looked up, and never an empty box. Of a letter
 * that is made of several the first stands for all, or it would be longer than a line.
 */
export function codeOf(letter: string): string {
  const [first = ''] = letter;
  const more = letter.length > first.length ? '…' : '';
  return `[U+${(first.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}${more}]`;
}

function runOf(letter: string, fonts: readonly LoadedFont[]): LetterRun | null {
  const own = fonts.slice(0, 2);
  const font = fontFor(letter, own);
  if (font) return { font, text: letter };
  const plain = BLANK.test(letter) ? ' ' : letter.normalize('NFKD');
  const made = fontFor(plain, own);
  // A wide space becomes a space, an eighth 1, fraction slash, 8: better than the same sign of another hand.
  if (made) return { font: made, text: plain };
  const other = fontFor(letter, fonts);
  if (other) return { font: other, text: letter };
  const last = fontFor(plain, fonts);
  return last ? { font: last, text: plain } : null;
}

/** The letters of `text` that none of `fonts` has, each once. */
export function missingLetters(text: string, fonts: readonly LoadedFont[]): readonly string[] {
  return [...new Set(clustersOf(plainly(text)))].filter((cluster) => isMissing(cluster, fonts));
}

const CLUSTERS = new Intl.Segmenter(undefined, { granularity: 'grapheme' });

/** What a reader takes for one letter each, however many code points it has. */
function clustersOf(text: string): readonly string[] {
  return [...CLUSTERS.segment(text)].map(({ segment }) => segment);
}

function isMissing(cluster: string, fonts: readonly LoadedFont[]): boolean {
  return [...cluster].some((letter) => runOf(letter, fonts) === null);
}

/** A cluster as runs; one of which any part is missing is shown by one number. */
function clusterRuns(cluster: string, first: LoadedFont, fonts: readonly LoadedFont[]): readonly LetterRun[] {
  const runs = [...cluster].flatMap((letter) => runOf(letter, fonts) ?? []);
  return runs.length === [...cluster].length ? runs : [{ font: first, text: codeOf(cluster) }];
}

/** `text` in runs of one font each, the first that has the letter; what none has is shown as its code point. */
export function letterRuns(text: string, fonts: readonly LoadedFont[]): readonly LetterRun[] {
  const [first] = fonts;
  if (!first) throw new Error('A face has no font.');
  const runs: LetterRun[] = [];
  for (const run of clustersOf(plainly(text)).flatMap((cluster) => clusterRuns(cluster, first, fonts))) {
    const last = runs.at(-1);
    if (last && last.font === run.font) runs[runs.length - 1] = { font: last.font, text: last.text + run.text };
    else runs.push(run);
  }
  return runs;
}
