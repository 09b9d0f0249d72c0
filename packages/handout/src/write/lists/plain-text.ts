import type { ListColumn, ListContent, ListTable } from './list-content.js';
import { shownText } from './shown-text.js';
import { brokenText, columnsOf, padded } from './text-columns.js';

/** How wide a text list is at most, where its columns can be made that narrow. */
const WIDEST = 100;
/** A column that breaks is never narrower. */
const NARROWEST = 12;
const GAP = 2;

/** One line that keeps its columns: a slash of fractions, which many programs set as one narrow figure, becomes a plain one. */
function plainLine(text: string): string {
  return shownText(text).replaceAll('\u2044', '/');
}

/** The widths of columns: as their texts need, the widest of those that break made narrower until all fit. */
function columnWidths(columns: readonly ListColumn[], rows: readonly (readonly string[])[]): readonly number[] {
  const widths = columns.map((_, index) => Math.max(...rows.map((cells) => columnsOf(cells[index] ?? ''))));
  const total = (): number => widths.reduce((sum, width) => sum + width + GAP, -GAP);
  while (total() > WIDEST) {
    const open = widths.map((width, index) => (columns[index]?.breaks && width > NARROWEST ? width : 0));
    const widest = open.indexOf(Math.max(...open));
    if ((open[widest] ?? 0) === 0) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
}

/** A row, in as many lines as its most broken cell has. */
function rowLines(cells: readonly string[], columns: readonly ListColumn[], widths: readonly number[]): string[] {
  const broken = cells.map((cell, index) => brokenText(cell, widths[index] ?? 0));
  const height = Math.max(...broken.map(({ length }) => length));
  return Array.from({ length: height }, (_, at) =>
    broken
      .map((lines, index) => padded(lines[at] ?? '', widths[index] ?? 0, columns[index]?.align ?? 'start'))
      .join(' '.repeat(GAP))
      .trimEnd(),
  );
}

function tableLines({ heading, lines, columns, rows }: ListTable): readonly string[] {
  const shown = rows.map((cells) => cells.map(plainLine));
  const head = columns.map(({ title }) => title);
  const widths = columnWidths(columns, [head, ...shown]);
  const rule = widths.map((width) => '-'.repeat(width)).join(' '.repeat(GAP));
  return [
    ...(heading === null ? [] : brokenText(plainLine(heading), WIDEST)),
    ...lines.flatMap((line) => brokenText(plainLine(line), WIDEST)),
    ...(heading === null && lines.length === 0 ? [] : ['']),
    ...rowLines(head, columns, widths),
    rule,
    ...shown.flatMap((cells) => rowLines(cells, columns, widths)),
    '',
  ];
}

/** A list as plain text for a typewriter face, in columns, 100 letters wide at most where its columns can be broken. */
export function writePlainText({ title, lines, tables }: ListContent): string {
  const parts = [title, ...lines].flatMap((line) => brokenText(plainLine(line), WIDEST));
  return `${[...parts, '', ...tables.flatMap(tableLines)].join('\n').trimEnd()}\n`;
}
