/** One cell: its text, and whether it stood in quotes, so that spaces at its ends are meant. */
export interface CsvCell {
  readonly text: string;
  readonly quoted: boolean;
}

/** The separators that are told apart, by name. */
export const CSV_SEPARATORS = { ',': 'comma', ';': 'semicolon', '\t': 'tab' } as const;
export type CsvSeparator = keyof typeof CSV_SEPARATORS;

/** What stands against RFC 4180 in one cell: its row and its place in the row, both counted from 1. */
export interface CsvFault {
  readonly row: number;
  readonly cell: number;
  readonly text: string;
  readonly fault: 'quote not closed' | 'text after a quote';
}

export interface CsvTable {
  readonly separator: CsvSeparator;
  /** All rows of the file with their empty ones, so that the place of a row is its number in a spreadsheet. */
  readonly rows: readonly (readonly CsvCell[])[];
  readonly faults: readonly CsvFault[];
}

/** How often `sign` stands outside quotes in the first row of `text`. */
function separatorsInHead(text: string, sign: CsvSeparator): number {
  let quoted = false;
  let count = 0;
  for (const letter of text) {
    if (letter === '"') quoted = !quoted;
    else if (!quoted && (letter === '\n' || letter === '\r')) break;
    else if (!quoted && letter === sign) count += 1;
  }
  return count;
}

function separatorOf(text: string): CsvSeparator {
  const signs = Object.keys(CSV_SEPARATORS) as CsvSeparator[];
  const counts = signs.map((sign) => separatorsInHead(text, sign));
  return signs[counts.indexOf(Math.max(...counts))] ?? ',';
}

/** Reads one cell from `at` on; `next` is where it ended. */
function readCell(text: string, at: number, separator: CsvSeparator) {
  const end = (from: number): number => {
    let to = from;
    while (to < text.length && text[to] !== separator && text[to] !== '\n' && text[to] !== '\r') to += 1;
    return to;
  };
  if (text[at] !== '"') {
    const next = end(at);
    return { cell: { text: text.slice(at, next), quoted: false }, next, fault: null };
  }
  let value = '';
  let from = at + 1;
  for (;;) {
    const quote = text.indexOf('"', from);
    if (quote < 0) {
      const whole = value + text.slice(from);
      return { cell: { text: whole, quoted: true }, next: text.length, fault: 'quote not closed' } as const;
    }
    value += text.slice(from, quote);
    if (text[quote + 1] !== '"') {
      const next = end(quote + 1);
      const after = text.slice(quote + 1, next);
      const fault = after.trim() === '' ? null : ('text after a quote' as const);
      return { cell: { text: fault ? value + after : value, quoted: true }, next, fault };
    }
    value += '"';
    from = quote + 2;
  }
}

/**
 * Reads CSV (RFC 4180, section 2), with or without a byte order mark, rows ended by CR LF, LF or CR, cells separated by
 * whichever of comma, semicolon and tab stands most often outside quotes in the first row. A quote inside a cell that
 * does not begin with one is taken as it is (`4 1/4"`). Never throws; what it could not read as it stands is in `faults`.
 */
export function readCsv(text: string): CsvTable {
  const plain = text.replace(/^\ufeff/, '');
  const separator = separatorOf(plain);
  const rows: CsvCell[][] = [];
  const faults: CsvFault[] = [];
  let row: CsvCell[] = [];
  for (let at = 0; at < plain.length; ) {
    const { cell, next, fault } = readCell(plain, at, separator);
    row.push(cell);
    if (fault) faults.push({ row: rows.length + 1, cell: row.length, text: cell.text, fault });
    at = next;
    if (plain[at] === separator) {
      at += 1;
      // A separator at the very end of the text stands before one more, empty, cell.
      if (at === plain.length) row.push({ text: '', quoted: false });
      continue;
    }
    if (plain[at] === '\r' && plain[at + 1] === '\n') at += 1;
    at += 1;
    rows.push(row);
    row = [];
  }
  if (row.length > 0) rows.push(row);
  return { separator, rows, faults };
}
