import type { BatchPlan, Sketch } from '@trimwell/sketch';
import { fileStem, type TextFile } from '../sheet-guides.js';
import { listByPaper } from './by-paper.js';
import { listBySetting } from './by-setting.js';
import { writeCsv } from './csv.js';
import type { ListContent } from './list-content.js';
import { writeMarkdown } from './markdown.js';
import { listPieces } from './piece-list.js';
import { writePlainText } from './plain-text.js';

/** The ways in which a piece list is written. */
export const LIST_FORMATS = ['csv', 'json', 'markdown', 'text'] as const;
export type ListFormat = (typeof LIST_FORMATS)[number];

/** The ways in which a piece list is arranged. */
export const LIST_ARRANGEMENTS = ['card', 'batch', 'paper', 'setting'] as const;
export type ListArrangement = (typeof LIST_ARRANGEMENTS)[number];

/** What a piece list is of: one card, a batch, a batch by paper (with the sheets of a plan of it), a plan by setting. */
export type PieceList =
  | { readonly arrange: 'card' }
  | { readonly arrange: 'batch'; readonly cards: number }
  | { readonly arrange: 'paper'; readonly cards: number; readonly plan?: BatchPlan }
  | { readonly arrange: 'setting'; readonly plan: BatchPlan; readonly stack?: number };

const FILES: Readonly<Record<ListFormat, { readonly type: string; readonly ending: string }>> = {
  csv: { type: 'text/csv', ending: 'csv' },
  json: { type: 'application/json', ending: 'json' },
  markdown: { type: 'text/markdown', ending: 'md' },
  text: { type: 'text/plain', ending: 'txt' },
};

function contentOf(sketch: Sketch, list: PieceList): ListContent {
  switch (list.arrange) {
    case 'card':
      return listPieces(sketch, null);
    case 'batch':
      return listPieces(sketch, list.cards);
    case 'paper':
      return listByPaper(sketch, list.cards, list.plan);
    case 'setting':
      return listBySetting(sketch, list.plan, list.stack === undefined ? {} : { stack: list.stack });
  }
}

function textOf(content: ListContent, format: ListFormat): string {
  switch (format) {
    case 'csv':
      return writeCsv(content.records);
    case 'json':
      return `${JSON.stringify(content.document, null, 2)}\n`;
    case 'markdown':
      return writeMarkdown(content);
    case 'text':
      return writePlainText(content);
  }
}

/**
 * A piece list as a file to be saved. The same sketch, list and format give the same text; FORMATS.md says what stands in it.
 * @throws RangeError when a list by paper has a plan for another number of cards, or `stack` is no whole number above 0
 */
export function writePieceList(sketch: Sketch, list: PieceList, format: ListFormat): TextFile {
  const { type, ending } = FILES[format];
  const name = `${fileStem(sketch.title)}-${list.arrange === 'card' ? 'pieces' : `pieces-${list.arrange}`}.${ending}`;
  return { name, type, text: textOf(contentOf(sketch, list), format) };
}
