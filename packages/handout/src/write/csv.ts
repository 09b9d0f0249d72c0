/**
 * One table as CSV (RFC 4180): CRLF after every record, fields with a comma, quote or line break quoted. A text that a
 * spreadsheet would take for a formula (it begins with = + - @, a tab or a return) gets an apostrophe before it.
 */
export function writeCsv(rows: readonly (readonly (string | number)[])[]): string {
  return rows.map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: string | number): string {
  if (typeof value === 'number') return String(value);
  const safe = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
