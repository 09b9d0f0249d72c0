import { formatSize } from '@trimwell/geometry';
import { counted, type Paper, type Sketch } from '@trimwell/sketch';
import type { SourceUses } from '../../state/paper-uses.js';

/** Every sentence of the tray of papers. */

/** Words in a row: `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

export function sheetsAtHandText(sheets: number | undefined): string {
  return sheets === undefined ? 'as many as needed' : `${counted(sheets, 'sheet')} at hand`;
}

export function sizeText(paper: Paper, { unit }: Sketch): string {
  return formatSize(paper, { unit });
}

/** What is cut from a paper, in a few words below its sheet. */
export function cutText({ base, pieces, mixes }: SourceUses): string {
  const words = [
    ...(base ? ['the card base'] : []),
    ...(pieces.length > 0 ? [counted(pieces.length, 'piece')] : []),
    ...(mixes.length > 0 ? [counted(mixes.length, 'mix', 'mixes')] : []),
  ];
  return words.length === 0 ? 'nothing cut from it' : `for ${listed(words)}`;
}

/** All that needs a paper or a mix, as a sentence; `name` is what it is called. */
export function usesText(name: string, { base, pieces, mixes, variations }: SourceUses): string {
  const cut = [...(base ? ['the card base'] : []), ...pieces.map((piece) => piece.name)];
  const sentences = [
    ...(cut.length > 0 ? [`${listed(cut)} ${cut.length === 1 ? 'is' : 'are'} cut from it`] : []),
    ...(mixes.length > 0 ? [`it takes turns in ${listed(mixes.map((mix) => mix.name))}`] : []),
    ...(variations.length > 0
      ? [
          `the ${variations.length === 1 ? 'variation' : 'variations'} ${listed(variations.map((one) => one.name))} ${variations.length === 1 ? 'needs' : 'need'} it`,
        ]
      : []),
  ];
  return `${name} is in use: ${sentences.join('; ')}.`;
}

/** What a mix of so many papers does, in words; `pieces` are the names of those that are cut from it. */
export function mixText(papers: number, pieces: readonly string[]): string {
  if (papers === 1) return 'With one paper all cards are alike; put in another one, and they take turns.';
  if (pieces.length === 0) return `${papers} papers take turns in the pieces that are cut from this mix. None is yet.`;
  return `${papers} papers take turns in ${listed(pieces)}, so that no two cards look alike as long as there are enough of them.`;
}

export const LAST_PAPER = 'A card needs at least one paper.';
export const UPWARD_PRINT = 'This print has an up. Mark the sheet so that pieces are not turned when they are cut.';
export const MARGINS_TOO_LARGE = 'Margins must leave something of the sheet.';
export const PHOTO_HINT =
  'It is shown at true scale on the table, and stays in this browser: it is not sent with the sketch.';
export const PHOTO_OF_PAGE_HINT =
  'It is shown at true scale on the table, and kept only while this page is open: it is neither stored nor sent with the sketch.';
export const PHOTO_SHOWN = 'Shown with your own photograph.';
export const PHOTO_MISSING =
  'The photograph of this sheet is not on this machine. The print below stands in for it; take the photograph again to see it.';
export const PHOTO_STANDS_IN = 'Where the photograph is not at hand, this print stands in for it.';
