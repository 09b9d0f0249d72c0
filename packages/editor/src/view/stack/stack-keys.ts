/** The cell of the stack that has the Tab key's stop: its row, and 0 for the name, 1 for the pin, 2 for the slip mark. */
export interface GridPlace {
  readonly row: string;
  readonly column: number;
}

const COLUMNS = 3;

/** Where a key leads from `at` among `rows`, topmost first; null for any other key. Ends are not passed. */
export function gridStep(key: string, { row, column }: GridPlace, rows: readonly string[]): GridPlace | null {
  const from = Math.max(0, rows.indexOf(row));
  const to = (index: number): GridPlace => ({
    row: rows[Math.min(Math.max(index, 0), rows.length - 1)] ?? row,
    column,
  });
  switch (key) {
    case 'ArrowUp':
      return to(from - 1);
    case 'ArrowDown':
      return to(from + 1);
    case 'Home':
      return to(0);
    case 'End':
      return to(rows.length - 1);
    case 'ArrowLeft':
      return { row, column: Math.max(0, column - 1) };
    case 'ArrowRight':
      return { row, column: Math.min(COLUMNS - 1, column + 1) };
    default:
      return null;
  }
}
