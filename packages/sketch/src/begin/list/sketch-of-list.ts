import { flatCardBase, type Size, ticks, type Unit } from '@trimwell/geometry';
import type { Piece, Sketch } from '../../model/sketch.js';
import type { ListCard } from './list-card.js';
import { listPapers, type PaperWish } from './list-papers.js';
import type { ListRow } from './list-row.js';
import { placePieces } from './place-pieces.js';
import { plainId } from './plain-id.js';

/** What the paper of a row is called that names none, and that of a base of which the list says nothing. */
export const UNNAMED_PAPER = 'Paper';
const BASE_PAPER = 'Base card';

function paperOf({ paper }: ListRow): string {
  return paper === '' ? UNNAMED_PAPER : paper;
}

/** Papers by name, that of the base first, each with all that is cut from it. */
function paperWishes(rows: readonly ListRow[], card: ListCard): readonly PaperWish[] {
  const base = rows.find(({ kind }) => kind === 'card base');
  const known = new Set(rows.map(paperOf));
  const own = known.has(BASE_PAPER) ? `${BASE_PAPER} (folded)` : BASE_PAPER;
  const blanks = new Map<string, Size[]>([[base ? paperOf(base) : own, [flatCardBase(card)]]]);
  for (const row of rows) {
    if (row.kind === 'card base') continue;
    const { width, height, blank } = row;
    const all = blanks.get(paperOf(row)) ?? [];
    all.push(blank ?? { width, height });
    blanks.set(paperOf(row), all);
  }
  return [...blanks].map(([name, sizes], index) => ({ name, blanks: sizes, base: index === 0 }));
}

/** What a row without a name is called: its kind and its row, `Strip 7`. */
function nameOf({ name, kind, row }: ListRow): string {
  return name === '' ? `${kind === 'other' ? 'Piece' : kind.charAt(0).toUpperCase() + kind.slice(1)} ${row}` : name;
}

/** The rows of the pieces, largest first, those of equal area in their order. */
function inStackOrder(rows: readonly ListRow[]): readonly ListRow[] {
  const area = ({ width, height }: Size): number => width * height;
  return rows
    .filter(({ kind }) => kind !== 'card base')
    .toSorted((one, other) => area(other) - area(one) || one.row - other.row);
}

/** The pieces of the rows, each face laid out by itself. */
function piecesOf(rows: readonly ListRow[], card: ListCard, unit: Unit, papers: Sketch['papers']): readonly Piece[] {
  const order = inStackOrder(rows);
  const taken = new Set(['card-base']);
  const square = ticks(0);
  const places = new Map(
    (['front', 'inside'] as const).flatMap((face) => {
      const own = order.filter((row) => row.face === face);
      const found = placePieces(card, own, unit);
      return own.map((row, index) => [row, found[index]] as const);
    }),
  );
  return order.map((row): Piece => {
    const { x, y } = places.get(row) ?? { x: square, y: square };
    return {
      id: plainId(nameOf(row), 'piece', taken),
      name: nameOf(row),
      kind: row.kind === 'card base' ? 'other' : row.kind,
      face: row.face,
      shape: row.shape,
      x,
      y,
      width: row.width,
      height: row.height,
      tilt: 0,
      corners: { tl: square, tr: square, br: square, bl: square },
      punched: {},
      from: papers.find(({ name }) => name === paperOf(row))?.id ?? '',
      raise: square,
      perCard: row.perCard,
    };
  });
}

/** The sketch that rows stand for, for one card at first, and what a person should know of it. */
export function sketchOfList(
  rows: readonly ListRow[],
  { card, unit, title }: { readonly card: ListCard; readonly unit: Unit; readonly title: string },
): { readonly sketch: Sketch; readonly told: readonly string[] } {
  const papers = listPapers(paperWishes(rows, card), card, unit);
  const pieces = piecesOf(rows, card, unit, papers);
  const off = pieces.filter(({ width, height }) => width > card.width || height > card.height);
  return {
    sketch: {
      trimwell: 1,
      id: plainId(title, 'piece-list', new Set()),
      title,
      links: [],
      supplies: [],
      unit,
      card: { width: card.width, height: card.height, fold: card.fold, base: papers[0]?.id ?? '' },
      papers,
      mixes: [],
      punches: [],
      pieces,
      batch: { cards: 1, contrast: [], stoppedCuts: false, hiddenCentres: false },
      variations: [],
    },
    told: off.map(({ name }) => `${JSON.stringify(name)} is larger than the card and hangs over its edges.`),
  };
}
