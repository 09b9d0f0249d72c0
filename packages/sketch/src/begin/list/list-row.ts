import type { Length, Size } from '@trimwell/geometry';
import { LONGEST_NAME, MOST_PER_CARD, PIECE_KINDS, type Piece, SHAPES } from '../../model/sketch.js';
import type { CsvCell } from '../../read/read-csv.js';
import { type BareUnit, cellText, type ListColumnName, type ListHead, unitNamed } from './list-columns.js';
import { LENGTH_ALLOWED, readListLength, readListSize } from './list-lengths.js';
import { type ListProblem, listProblem } from './list-problem.js';

/** One row as a piece, or as the card base. */
export interface ListRow extends Size {
  readonly row: number;
  readonly kind: Piece['kind'] | 'card base';
  /** Empty where the row names none. */
  readonly name: string;
  readonly paper: string;
  readonly perCard: number;
  readonly shape: Piece['shape'];
  readonly face: Piece['face'];
  /** What has to be cut for it, where the list says so. */
  readonly blank: Size | null;
  /** Whether a length was no whole number of ticks. */
  readonly rounded: boolean;
}

/** What came of a row; `bare` says where a bare number stands whose unit nobody states. */
export interface RowReading {
  readonly row: ListRow | null;
  readonly problems: readonly ListProblem[];
  readonly bare: readonly { readonly row: number; readonly column: string; readonly value: string }[];
}

const KINDS = [...PIECE_KINDS, 'card base'] as const;
const FACES = ['front', 'inside'] as const;

/** Reads the cells of one row. */
class RowReader {
  readonly problems: ListProblem[] = [];
  readonly bare: { row: number; column: string; value: string }[] = [];
  rounded = false;

  constructor(
    readonly head: ListHead,
    readonly row: number,
    readonly cells: readonly CsvCell[],
    readonly unit: BareUnit | null,
  ) {}

  text(column: ListColumnName): string {
    const cell = this.cells[this.head.columns.get(column)?.at ?? -1];
    return cell ? cellText(cell) : '';
  }

  title(column: ListColumnName): string {
    return this.head.columns.get(column)?.title ?? column;
  }

  refuse(code: string, column: ListColumnName, allowed: string): void {
    this.problems.push(listProblem(code, { row: this.row, column: this.title(column) }, this.text(column), allowed));
  }

  /** One of `allowed`, whatever its capitals; `usual` for an empty cell. */
  word<Word extends string>(column: ListColumnName, allowed: readonly Word[], usual: Word): Word {
    const text = this.text(column).toLowerCase().replace(/\s+/g, ' ').trim();
    if (text === '') return usual;
    const found = allowed.find((word) => word === text);
    if (!found) this.refuse('unknown-word', column, `one of ${allowed.join(', ')}, or nothing for ${usual}`);
    return found ?? usual;
  }

  named(column: ListColumnName): string {
    const text = this.text(column);
    if (text.length > LONGEST_NAME) this.refuse('too-long', column, `at most ${LONGEST_NAME} characters`);
    return text;
  }

  count(): number {
    const column = this.head.columns.has('perCard') ? 'perCard' : 'quantity';
    const text = this.text(column).trim();
    if (text === '') return 1;
    const value = Number(text);
    if (/^\d{1,9}$/.test(text) && value >= 1 && value <= MOST_PER_CARD) return value;
    this.refuse('not-a-count', column, `how many there are on one card, a whole number from 1 to ${MOST_PER_CARD}`);
    return 1;
  }

  bareUnit(column: ListColumnName): BareUnit | null {
    const text = this.text('unit').trim();
    return (text === '' ? null : unitNamed(text)) ?? this.head.columns.get(column)?.unit ?? this.unit;
  }

  private refused(column: ListColumnName, why: 'no unit' | 'no length', allowed: string): null {
    if (why === 'no unit') this.bare.push({ row: this.row, column: this.title(column), value: this.text(column) });
    else this.refuse('not-a-length', column, allowed);
    return null;
  }

  length(column: ListColumnName): Length | null {
    const reading = readListLength(this.text(column), this.bareUnit(column));
    if (!reading.ok) return this.refused(column, reading.why, LENGTH_ALLOWED);
    this.rounded ||= reading.rounded;
    return reading.length;
  }

  size(): Size | null {
    if (this.head.columns.has('size')) {
      const reading = readListSize(this.text('size'), this.bareUnit('size'));
      if (!reading.ok) return this.refused('size', reading.why, `a width and a height, such as 3 3/4 x 5 in`);
      this.rounded ||= reading.rounded;
      return reading.size;
    }
    const [width, height] = [this.length('width'), this.length('height')];
    return width === null || height === null ? null : { width, height };
  }

  blank(): Size | null {
    if (this.text('blankWidth') === '' || this.text('blankHeight') === '') return null;
    const [width, height] = [this.length('blankWidth'), this.length('blankHeight')];
    return width === null || height === null ? null : { width, height };
  }

  /** More cells than the head names are a sign of a separator inside a cell that is not quoted. */
  checkWidth(): void {
    const { titles } = this.head;
    const beyond = this.cells
      .slice(titles.length)
      .map(cellText)
      .filter((text) => text !== '');
    if (beyond.length === 0) return;
    const allowed = `at most ${titles.length} cells, as in the head; a text with a separator in it stands in quotes`;
    this.problems.push(listProblem('too-many-cells', { row: this.row }, this.cells.map(cellText).join(' | '), allowed));
  }
}

/** Reads row number `row` of a list. `unit` is that of bare numbers for which neither the row nor the column states one. */
export function readListRow(head: ListHead, row: number, cells: readonly CsvCell[], unit: BareUnit | null): RowReading {
  const reader = new RowReader(head, row, cells, unit);
  reader.checkWidth();
  const written = reader.text('unit').trim();
  if (written !== '' && !unitNamed(written)) reader.refuse('unknown-word', 'unit', 'one of in, mm, cm');
  const kind = reader.word('kind', KINDS, 'other');
  const [name, paper] = [reader.named('name'), reader.named('paper')];
  const perCard = kind === 'card base' ? 1 : reader.count();
  const shape = reader.word('shape', SHAPES, 'rectangle');
  const face = reader.word('face', FACES, 'front');
  const size = reader.size();
  const blank = reader.blank();
  const { problems, bare, rounded } = reader;
  if (!size || problems.length > 0 || bare.length > 0) return { row: null, problems, bare };
  return { row: { ...size, row, kind, name, paper, perCard, shape, face, blank, rounded }, problems, bare };
}
