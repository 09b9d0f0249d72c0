import type { ListColumn, ListContent, ListTable } from './list-content.js';
import { shownText } from './shown-text.js';

/** Signs that mean something inside a line; a backslash before them makes them plain (CommonMark 0.31.2, section 2.4). */
const SIGNS = /[\\`*_[\]<>#|~&$@]|:(?=\/)/g;

/**
 * `text` as plain words inside a Markdown line or table cell: no markup, no HTML, no link, no break. Spaces at its ends,
 * which tables trim, are written by number.
 */
export function markdownText(text: string): string {
  return shownText(text)
    .replace(SIGNS, '\\$&')
    .replace(/www\./gi, (start) => `${start.slice(0, 3)}\\.`)
    .replace(/^ +| +$/g, (spaces) => '&#32;'.repeat(spaces.length));
}

function row(cells: readonly string[]): string {
  return `| ${cells.join(' | ')} |`;
}

function rule({ align }: ListColumn): string {
  return align === 'end' ? '---:' : '---';
}

function tableLines({ heading, lines, columns, rows }: ListTable): readonly string[] {
  return [
    ...(heading === null ? [] : [`## ${markdownText(heading)}`, '']),
    ...lines.flatMap((line) => [markdownText(line), '']),
    row(columns.map(({ title }) => markdownText(title))),
    row(columns.map(rule)),
    ...rows.map((cells) => row(cells.map(markdownText))),
    '',
  ];
}

/** A list as Markdown with tables (GitHub Flavored Markdown 0.29, section 4.10; the rest CommonMark). */
export function writeMarkdown({ title, lines, tables }: ListContent): string {
  const parts = [`# ${markdownText(title)}`, '', ...lines.flatMap((line) => [markdownText(line), ''])];
  return `${[...parts, ...tables.flatMap(tableLines)].join('\n').trimEnd()}\n`;
}
