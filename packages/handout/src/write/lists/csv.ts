import { safeCell } from '@trimwell/sketch';

/**
 * One table as CSV (RFC 4180, section 2): CRLF after every record, quotes doubled inside a quoted field. No cell is a
 * formula to a spreadsheet (see `safeCell`). Quoted are, beside what the RFC asks for, texts with a semicolon or a tab,
 * which programs of some countries take for the separator, and texts that begin or end with a space.
 */
export function writeCsv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const safe = safeCell(value);
  return /[",;\t\r\n]|^\s|\s$/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
