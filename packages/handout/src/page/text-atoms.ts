import { type Point, rectangle } from '@trimwell/geometry';
import type { Item, TextItem } from '../drawing/drawing.js';
import { type Atom, type AtomGroup, blockAt } from './atom.js';
import type { TextMeasure } from './measure.js';
import type { BlockTag, PageBlock, PageMark } from './page.js';
import { POINT } from './sheet-of-paper.js';
import { BOX_INK, RULE_INK, STYLES, type TextStyle } from './text-style.js';
import { wrapText } from './wrap.js';

/** Text in one hand. */
export interface Words {
  readonly text: string;
  readonly style: TextStyle;
  readonly link?: string;
}

/** A cell of a row, from `x` in its column of text; its words stand under each other. */
export interface Cell {
  readonly x: number;
  readonly width: number;
  readonly words: readonly Words[];
  readonly align?: 'start' | 'end';
  readonly tag?: BlockTag;
}

/** One line of text whose upper edge is at `top`. */
function lineItem(
  text: string,
  style: TextStyle,
  at: Point,
  measure: TextMeasure,
  align: TextItem['align'] = 'start',
): Item {
  const { face, size, leading, role } = style;
  const above = (leading + (measure.ascent(face) - measure.descent(face)) * size) / 2;
  return {
    kind: 'text',
    key: `text:${Math.round(at.x)}:${Math.round(at.y)}`,
    role,
    at: { x: at.x, y: at.y + above },
    text,
    size,
    align,
    face,
  };
}

/** A quiet line across a column. */
export function ruleItem(x: number, y: number, width: number, key: string): Item {
  const outline = { start: { x, y }, steps: [{ kind: 'line', to: { x: x + width, y } }] } as const;
  return { kind: 'path', key, role: 'dimension', outline, open: true, ink: RULE_INK };
}

function linesOf({ words, width }: Cell, measure: TextMeasure) {
  return words
    .filter(({ text }) => text !== '')
    .flatMap(({ text, style }) => wrapText(text, width, style, measure).map((line) => ({ line, style })));
}

function cellHeight(lines: ReturnType<typeof linesOf>): number {
  return Math.ceil(lines.reduce((sum, { style }) => sum + style.leading, 0));
}

export interface RowOptions {
  readonly tag: BlockTag;
  readonly before?: number;
  readonly group?: AtomGroup;
  readonly stays?: boolean;
  readonly mark?: Pick<PageMark, 'title' | 'level'>;
  /** Room for a box to be ticked, at the left of the first line. */
  readonly box?: boolean;
  /** A quiet line below, over so many ticks. */
  readonly rule?: number;
  readonly link?: string;
  /** A cell below all others, as in a row with notes. */
  readonly below?: Cell;
}

/** Room between a row and the line below it, and between that and the next row. */
const RULE_ROOM = 2.6 * POINT;
export const BOX_SIDE = 8 * POINT;

function tickBox(at: Point): Item {
  const y = at.y + (STYLES.body.leading - BOX_SIDE) / 2;
  return {
    kind: 'path',
    key: `box:${Math.round(at.y)}`,
    role: 'dimension',
    outline: rectangle(at.x, y, BOX_SIDE, BOX_SIDE),
    ink: BOX_INK,
  };
}

/** Cells side by side as one atom. A row of a table has a block for each cell; any other is one block. */
export function rowAtom(cells: readonly Cell[], measure: TextMeasure, options: RowOptions): Atom {
  const side = cells.map((cell) => ({ cell, lines: linesOf(cell, measure), down: 0 }));
  const across = Math.max(options.box ? STYLES.body.leading : 0, ...side.map(({ lines }) => cellHeight(lines)));
  const { below } = options;
  const laid = below ? [...side, { cell: below, lines: linesOf(below, measure), down: across }] : side;
  const tall = Math.max(across, ...laid.map(({ lines, down }) => down + cellHeight(lines)));
  const { tag, before = 0, group, stays, mark, rule, link } = options;
  const height = Math.ceil(tall + (rule === undefined ? 0 : 2 * RULE_ROOM));
  const draw = (at: Point): readonly PageBlock[] => {
    const drawn = laid.map(({ cell, lines, down }) => {
      let y = at.y + down;
      const x = at.x + cell.x + (cell.align === 'end' ? cell.width : 0);
      const items = lines.map(({ line, style }) => {
        const item = lineItem(line, style, { x, y }, measure, cell.align);
        y += style.leading;
        return item;
      });
      const height = cell === below ? tall - across : across;
      return { box: { x: at.x + cell.x, y: at.y + down, width: cell.width, height }, items, tag: cell.tag };
    });
    const right = Math.max(...cells.map(({ x, width }) => x + width), rule ?? 0);
    const left = options.box
      ? 0
      : Math.min(...cells.map(({ x }) => x), rule === undefined ? Number.POSITIVE_INFINITY : 0);
    const box = { x: at.x + left, y: at.y, width: right - left, height };
    const line: readonly PageBlock[] =
      rule === undefined
        ? []
        : [
            blockAt('Artifact', { x: at.x, y: at.y + tall, width: rule, height: height - tall }, [
              ruleItem(at.x, at.y + tall + RULE_ROOM, rule, `rule:${Math.round(at.y)}`),
            ]),
          ];
    if (tag === 'TR') {
      const blocks = [...drawn.map((each) => blockAt(each.tag ?? 'TD', each.box, each.items)), ...line];
      return [blockAt(tag, box, [], { blocks })];
    }
    const items = [...(options.box ? [tickBox(at)] : []), ...drawn.flatMap((each) => each.items)];
    const more = { ...(line.length > 0 ? { blocks: line } : {}), ...(link === undefined ? {} : { link }) };
    return [blockAt(tag, box, items, more)];
  };
  return {
    height,
    before,
    ...(stays === undefined ? {} : { stays }),
    ...(group ? { group } : {}),
    ...(mark ? { mark } : {}),
    draw,
  };
}

type Plain = Omit<RowOptions, 'tag'> & { readonly tag?: BlockTag };

/** One piece of text in one hand, kept together. */
export function textAtom(
  text: string,
  style: TextStyle,
  width: number,
  measure: TextMeasure,
  options: Plain = {},
): Atom {
  return rowAtom([{ x: 0, width, words: [{ text, style }] }], measure, { tag: 'P', ...options });
}

/** A text that may go over to the next page between any of its lines; each of its own lines is a paragraph. */
export function paragraphAtoms(
  text: string,
  style: TextStyle,
  width: number,
  measure: TextMeasure,
  before = 0,
): readonly Atom[] {
  return text
    .split(/\r\n|\r|\n/)
    .filter((paragraph) => paragraph.trim() !== '')
    .flatMap((paragraph, at) => {
      const group: AtomGroup = { tag: 'P' };
      return wrapText(paragraph, width, style, measure).map((line, index, lines) =>
        textAtom(line, style, width, measure, {
          group,
          before: index > 0 ? 0 : at > 0 ? Math.ceil(style.leading * 0.4) : before,
          // Neither the first nor the last line of several stands alone on a page.
          stays: lines.length > 1 && (index === 0 || index === lines.length - 2),
        }),
      );
    });
}

/** A heading, which stays with what follows; `level` 2 heads a section, 3 a part of one. */
export function headingAtom(text: string, level: 2 | 3, width: number, measure: TextMeasure, more: Plain = {}): Atom {
  const style = level === 2 ? STYLES.section : STYLES.part;
  const before = Math.ceil((level === 2 ? 16 : 11) * POINT);
  return textAtom(text, style, width, measure, { tag: level === 2 ? 'H2' : 'H3', before, stays: true, ...more });
}
