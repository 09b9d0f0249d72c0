/**
 * What a spreadsheet would take for the beginning of a formula: = + - @ and their full-width forms, a tab or a line end
 * (common practice, no source).
 */
const GUARDED = /^'*[=+\-@＝＋－＠\t\r\n]/;

/**
 * `text` as the content of a CSV cell that no spreadsheet takes for a formula. An apostrophe is put before a text that
 * begins like one, and before a text in which apostrophes stand before such a beginning, so that nothing is lost:
 * `plainCell` takes exactly that apostrophe away again. Any other text stays as it is.
 */
export function safeCell(text: string): string {
  return GUARDED.test(text) ? `'${text}` : text;
}

/** The reverse of `safeCell`: `plainCell(safeCell(text))` is `text`, whatever it is. */
export function plainCell(cell: string): string {
  return cell.startsWith("'") && GUARDED.test(cell) ? cell.slice(1) : cell;
}
