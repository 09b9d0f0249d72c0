import type { Unit } from '@trimwell/geometry';
import { LONGEST_NAME, MOST_PAPERS, MOST_PIECES, type Sketch } from '../../model/sketch.js';
import { CSV_SEPARATORS, type CsvTable, readCsv } from '../../read/read-csv.js';
import { readSketch } from '../../read/read-sketch.js';
import { writeSketch } from '../../read/write-sketch.js';
import type { Fold } from '../card-sizes.js';
import { listCard } from './list-card.js';
import { type BareUnit, cellText, type ListHead, readListHead } from './list-columns.js';
import { statedUnit } from './list-lengths.js';
import { type ListProblem, listProblem } from './list-problem.js';
import { type ListRow, readListRow } from './list-row.js';
import { sketchOfList, UNNAMED_PAPER } from './sketch-of-list.js';

/** What is known beside the list. */
export interface PieceListWish {
  /** The size of the closed card, `4 1/4 x 5 1/2 in`; wanted unless the list has a row of the kind `card base`. */
  readonly card?: string;
  /** Left out: as the base's opened size tells, else the usual fold of a card of that size. */
  readonly fold?: Fold;
  /** The unit of bare numbers, and of the sketch. Left out: that of `card`, else the one that most lengths state. */
  readonly unit?: Unit;
  /** Left out: `Piece list`. */
  readonly title?: string;
}

export type PieceListReading =
  | {
      readonly ok: true;
      readonly sketch: Sketch;
      /** Sentences about what was taken to be meant, and what a list cannot say. */
      readonly told: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly ListProblem[] };

/** Longest text that is looked at: two hundred ample rows are a tenth of it. */
const LONGEST_LIST = 1_000_000;

function refused(...problems: readonly ListProblem[]): PieceListReading {
  return { ok: false, problems };
}

/** What stands against RFC 4180, in the words of the list's own columns. */
function faultProblems({ faults }: CsvTable, head: ListHead | null): readonly ListProblem[] {
  return faults.map(({ row, cell, text, fault }) => {
    const column = head?.titles[cell - 1] ?? `${cell}`;
    const allowed =
      fault === 'quote not closed'
        ? 'a text in quotes that ends with a quote'
        : 'a text wholly in quotes, with each quote inside it written twice';
    return listProblem(fault.replaceAll(' ', '-'), { row, column }, text, allowed);
  });
}

/** The unit that most cells with lengths state; null where none does. */
function usualUnit({ rows }: CsvTable, head: ListHead): BareUnit | null {
  const places = (['width', 'height', 'size'] as const).flatMap((name) => head.columns.get(name) ?? []);
  const stated = [
    ...places.flatMap(({ unit }) => unit ?? []),
    ...rows.slice(head.row).flatMap((cells) =>
      places.flatMap(({ at }) => {
        const cell = cells[at];
        return (cell && statedUnit(cellText(cell))) ?? [];
      }),
    ),
  ];
  const inches = stated.filter((unit) => unit === 'in').length;
  return stated.length === 0 ? null : inches * 2 >= stated.length ? 'in' : 'mm';
}

/** Reads the rows below the head; empty ones are passed over. */
function readRows({ rows }: CsvTable, head: ListHead, bareUnit: BareUnit | null) {
  const found: ListRow[] = [];
  const problems: ListProblem[] = [];
  const bare: { readonly row: number; readonly column: string; readonly value: string }[] = [];
  let pieces = 0;
  for (const [index, cells] of rows.entries()) {
    if (index < head.row || cells.every((cell) => cellText(cell) === '')) continue;
    const reading = readListRow(head, index + 1, cells, bareUnit);
    if (reading.row?.kind !== 'card base') pieces += 1;
    if (pieces > MOST_PIECES) {
      problems.push(
        listProblem(
          'too-many-pieces',
          { row: index + 1 },
          cells.map(cellText).join(' | '),
          `at most ${MOST_PIECES} pieces`,
        ),
      );
      break;
    }
    if (reading.row) found.push(reading.row);
    problems.push(...reading.problems);
    bare.push(...reading.bare);
  }
  const [first] = bare;
  if (first) {
    const others = bare.length === 1 ? '' : `; so do ${bare.length - 1} more cells`;
    const allowed = `a length with its unit, such as 3 in or 76 mm, or a unit for the whole list${others}`;
    problems.push(listProblem('no-unit', first, first.value, allowed));
  }
  return { found, problems };
}

/** What no row by itself can be wrong about: one base, and papers that a sketch has room for. */
function checkRows(rows: readonly ListRow[]): readonly ListProblem[] {
  const [, ...more] = rows.filter(({ kind }) => kind === 'card base');
  const problems = more.map(({ row }) =>
    listProblem('repeated-base', { row, column: 'kind' }, 'card base', 'one card base in a list'),
  );
  // One paper is kept free for a base that the list does not name.
  const most = rows.some(({ kind }) => kind === 'card base') ? MOST_PAPERS : MOST_PAPERS - 1;
  const papers = new Set<string>();
  for (const { row, paper } of rows) {
    papers.add(paper === '' ? UNNAMED_PAPER : paper);
    if (papers.size <= most) continue;
    problems.push(listProblem('too-many-papers', { row, column: 'paper' }, paper, `at most ${most} papers`));
    break;
  }
  return problems;
}

/** Things that a person wants to know of how their list was read. */
function toldOf(table: CsvTable, head: ListHead, rows: readonly ListRow[]): readonly string[] {
  const { ignored } = head;
  const names = ignored.map((title) => JSON.stringify(title)).join(', ');
  return [
    ...(table.separator === ',' ? [] : [`The list is separated by ${CSV_SEPARATORS[table.separator]}s.`]),
    ...(ignored.length === 0 ? [] : [`Left out, because they mean nothing here: the columns ${names}.`]),
    ...rows.flatMap(({ row, rounded, kind, blank, width, height }) => [
      ...(rounded ? [`Row ${row}: a length lies between ticks of 1/16256 in and went to the nearest.`] : []),
      ...(kind !== 'card base' && blank && (blank.width !== width || blank.height !== height)
        ? [`Row ${row}: its blank is larger than the piece, as for a punched edge; which punch, no list says.`]
        : []),
    ]),
  ];
}

/**
 * Begins a sketch from a piece list as CSV (RFC 4180; comma, semicolon or tab): each row becomes a piece, largest first in
 * the stack, laid out in the middle of the card and in rows on it, each paper that is named one of plain cardstock. It reads
 * our own lists for one card or a batch, and lists with a width and a height (or a size) under other usual names; a
 * quantity without a column "per card" is the number on one card. Every mistake is told by its row and column. Never
 * throws, whatever the text. What a list does not hold (places, mats, corners, tilt, punches, foam) takes its default.
 */
export function readPieceList(text: string, wish: PieceListWish = {}): PieceListReading {
  if (text.length > LONGEST_LIST)
    return refused(listProblem('too-large', { row: null }, text, `at most ${LONGEST_LIST} characters`));
  if (wish.title !== undefined && (wish.title === '' || wish.title.length > LONGEST_NAME))
    return refused(
      listProblem('not-a-title', { row: null, column: 'The title' }, wish.title, `1 to ${LONGEST_NAME} characters`),
    );
  const table = readCsv(text);
  const head = readListHead(table);
  if (!('columns' in head)) return refused(...faultProblems(table, null), ...head);
  const faults = faultProblems(table, head);
  if (faults.length > 0) return refused(...faults);
  const bare = wish.unit ?? (wish.card === undefined ? null : statedUnit(wish.card));
  const stated = bare ?? usualUnit(table, head);
  const unit: Unit = stated === 'in' || stated === null ? 'in' : 'mm';
  const { found, problems } = readRows(table, head, bare);
  const card = listCard(
    wish,
    found.find(({ kind }) => kind === 'card base'),
    { bare, unit },
  );
  const all = [...problems, ...checkRows(found), ...('code' in card ? [card] : [])];
  if ('code' in card || all.length > 0) return refused(...all);
  const { sketch, told } = sketchOfList(found, { card, unit, title: wish.title ?? 'Piece list' });
  const checked = readSketch(writeSketch(sketch));
  if (!checked.ok) return refused(...checked.problems.map((problem) => ({ ...problem, row: null, column: null })));
  return { ok: true, sketch: checked.sketch, told: [...toldOf(table, head, found), ...told] };
}
