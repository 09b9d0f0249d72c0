import { type Problem, showValue } from '../../model/problem.js';

/** Something in a piece list that cannot be accepted, with its place as a spreadsheet counts it. */
export interface ListProblem extends Problem {
  /** Row of the file, counted from 1, empty rows and the head too; null for the list as a whole. */
  readonly row: number | null;
  /** Name of the column as it stands in the file; null for a whole row or the list as a whole. */
  readonly column: string | null;
}

/** A problem with its sentence: `Row 4, column "width" is "wide"; allowed: a length such as 4 1/4 in.` */
export function listProblem(
  code: string,
  place: { readonly row: number | null; readonly column?: string | null },
  value: unknown,
  allowed: string,
): ListProblem {
  const { row, column = null } = place;
  const shown = showValue(value);
  const where =
    row === null
      ? (column ?? 'The piece list')
      : column === null
        ? `Row ${row}`
        : `Row ${row}, column ${JSON.stringify(column)}`;
  const path = row === null ? (column ?? '') : column === null ? `rows[${row}]` : `rows[${row}].${column}`;
  return { code, path, value: shown, allowed, message: `${where} is ${shown}; allowed: ${allowed}.`, row, column };
}
