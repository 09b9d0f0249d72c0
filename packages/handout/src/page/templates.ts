import type { Point } from '@trimwell/geometry';
import type { GroupItem, Item } from '../drawing/drawing.js';
import { type Atom, blockAt } from './atom.js';
import type { HandoutContext } from './context.js';
import type { TextMeasure } from './measure.js';
import type { PageBlock } from './page.js';
import type { Pager } from './pager.js';
import { type PageFrame, POINT } from './sheet-of-paper.js';
import { type TemplatePart, templateParts } from './template-parts.js';
import { tileAtoms } from './template-tiles.js';
import { headingAtom, textAtom } from './text-atoms.js';
import { STYLES } from './text-style.js';

const GAP = 16 * POINT;

/** A part with its caption in a row, turned by a quarter where it is too wide for the page otherwise. */
interface TemplateCell {
  readonly part: TemplatePart;
  readonly turned: boolean;
  readonly width: number;
  readonly height: number;
  readonly caption: Atom;
}

interface Room {
  readonly width: number;
  readonly height: number;
}

function cellOf(part: TemplatePart, turned: boolean, room: Room, { measure }: HandoutContext): TemplateCell | null {
  const { size, face } = STYLES.small;
  const [width, height] = turned ? [part.height, part.width] : [part.width, part.height];
  // A narrow piece's caption may be wider than the piece, but goes over to a second line before it is very much so.
  const words = Math.ceil(measure.width(part.caption, size, face)) + 1;
  const cell = Math.min(room.width, Math.max(width, Math.min(words, 150 * POINT)));
  const caption = textAtom(part.caption, STYLES.small, cell, measure, { tag: 'Caption' });
  const tall = Math.ceil(height + caption.height + 2 * POINT);
  return width > room.width || tall > room.height ? null : { part, turned, width: cell, height: tall, caption };
}

/** Height of a part's letter, and the least; a smaller part goes without, its caption says it. */
const LETTER = 14 * POINT;
const LEAST_LETTER = 4 * POINT;

/** The letter of a part in the middle of it, or of its half before the fold; upright on the page, whichever way the part lies. */
function letterOf({ part, turned }: TemplateCell, measure: TextMeasure): readonly Item[] {
  const { piece, letter, fold } = part;
  const width = fold && fold[0].x === fold[1].x ? fold[0].x : part.width;
  const height = fold && fold[0].y === fold[1].y ? fold[0].y : part.height;
  const [across, down] = turned ? [height, width] : [width, height];
  const size = Math.min(LETTER, down * 0.7, across / (1.1 * measure.width(letter, 1, 'heading')));
  if (size < LEAST_LETTER) return [];
  const drop = 0.35 * size;
  const at = turned ? { x: width / 2 + drop, y: height / 2 } : { x: width / 2, y: height / 2 + drop };
  const turn = turned ? -90 : 0;
  return [
    {
      kind: 'text',
      key: `template:${piece}:letter`,
      role: 'note',
      piece,
      at,
      text: letter,
      size,
      align: 'middle',
      turn,
      face: 'heading',
    },
  ];
}

/** The outline of a part with its upper left corner at `at`, exact to the tick. */
function partGroup(cell: TemplateCell, at: Point, measure: TextMeasure): GroupItem {
  const { part, turned } = cell;
  const { piece, outlines, fold, width, height } = part;
  const [w, h] = turned ? [height, width] : [width, height];
  const items: readonly Item[] = [
    ...outlines.map(
      (outline, index): Item => ({ kind: 'path', key: `template:${piece}:${index}`, role: 'outline', piece, outline }),
    ),
    ...(fold
      ? [{ kind: 'line', key: `template:${piece}:fold`, role: 'fold', piece, from: fold[0], to: fold[1] } as const]
      : []),
    ...letterOf(cell, measure),
  ];
  const middle = { x: at.x + w / 2, y: at.y + h / 2 };
  return {
    kind: 'group',
    key: `template:${piece}`,
    role: 'outline',
    piece,
    origin: { x: width / 2, y: height / 2 },
    move: middle,
    turn: turned ? 90 : 0,
    items,
  };
}

function drawCell(cell: TemplateCell, at: Point, context: HandoutContext): readonly PageBlock[] {
  const { part, turned, caption } = cell;
  const [width, height] = turned ? [part.height, part.width] : [part.width, part.height];
  const alt = context.speech.say.templates.pieceAlt(part.name);
  const figure = blockAt('Figure', { ...at, width, height }, [partGroup(cell, at, context.measure)], { alt });
  return [figure, ...caption.draw({ x: at.x, y: at.y + height + 2 * POINT })];
}

/** Cells under each other, as wide as the first, and such columns side by side. */
type Row = { readonly height: number; readonly columns: TemplateCell[][] };

function columnHeight(column: readonly TemplateCell[]): number {
  return column.reduce((sum, { height }) => sum + height + GAP, -GAP);
}

function rowWidth({ columns }: Row): number {
  return columns.reduce((sum, [first]) => sum + (first?.width ?? 0) + GAP, -GAP);
}

/** Puts `cell` below a cell of `row` that is as wide, or at the end of the row; false when it goes nowhere. */
function joinsRow(cell: TemplateCell, row: Row, room: Room): boolean {
  const below = row.columns.find(
    (column) => cell.width <= (column[0]?.width ?? 0) && columnHeight(column) + GAP + cell.height <= row.height,
  );
  if (below) below.push(cell);
  else if (rowWidth(row) + GAP + cell.width <= room.width) row.columns.push([cell]);
  else return false;
  return true;
}

/** Cells in rows, from the tallest down. */
function rowsOf(cells: readonly TemplateCell[], room: Room): readonly Row[] {
  const rows: Row[] = [];
  for (const cell of [...cells].sort((a, b) => b.height - a.height)) {
    if (!rows.some((row) => joinsRow(cell, row, room))) rows.push({ height: cell.height, columns: [[cell]] });
  }
  return rows;
}

function rowAtom({ height, columns }: Row, context: HandoutContext): Atom {
  const draw = (at: Point): readonly PageBlock[] => {
    let x = at.x;
    return columns.flatMap((column) => {
      let y = at.y;
      const blocks = column.flatMap((cell) => {
        const drawn = drawCell(cell, { x, y }, context);
        y += cell.height + GAP;
        return drawn;
      });
      x += (column[0]?.width ?? 0) + GAP;
      return blocks;
    });
  };
  return { height, before: GAP, draw };
}

/** Rows page by page, each on the first page with room for it; the first page has `head` less. */
function pagesOf(rows: readonly Row[], room: Room, head: number): readonly (readonly Row[])[] {
  const pages: { left: number; readonly rows: Row[] }[] = [{ left: room.height - head, rows: [] }];
  for (const row of rows) {
    const needed = row.height + GAP;
    const page = pages.find(({ left }) => needed <= left);
    if (page) {
      page.rows.push(row);
      page.left -= needed;
    } else pages.push({ left: room.height - row.height, rows: [row] });
  }
  return pages.map((page) => page.rows);
}

/** Every piece at true size, as many to a page as fit; a piece larger than a page is parted into tiles. */
export function setTemplates(pager: Pager, frame: PageFrame, context: HandoutContext): void {
  const { speech, measure } = context;
  const { say } = speech;
  const room = { width: frame.right - frame.left, height: frame.bottom - frame.top };
  const title = say.heads.templates;
  const parts = templateParts(context);
  const cells = parts.map((part) => cellOf(part, false, room, context) ?? cellOf(part, true, room, context));
  const large = parts.filter((_, index) => !cells[index]);
  const small = cells.filter((cell) => cell !== null);
  const head = headingAtom(title, 2, room.width, measure, { mark: { title, level: 1 }, stays: false });
  const [first = [], ...others] = pagesOf(rowsOf(small, room), room, head.height);
  const atomsOf = (rows: readonly Row[]): readonly Atom[] => rows.map((row) => rowAtom(row, context));
  pager.set({ x: frame.left, atoms: [head, ...atomsOf(first)] });
  for (const rows of others) {
    pager.breakPage();
    pager.set({ x: frame.left, atoms: atomsOf(rows) });
  }
  for (const part of large) {
    for (const atom of tileAtoms(part, room, context)) {
      pager.breakPage();
      pager.set({ x: frame.left, atoms: [atom] });
    }
  }
}
