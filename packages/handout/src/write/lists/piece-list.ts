import {
  formatSize,
  type Length,
  type LengthStyle,
  toInches,
  toMillimetres,
  type Unit,
  writeLength,
} from '@trimwell/geometry';
import { counted, type Sketch } from '@trimwell/sketch';
import { type PieceRow, pieceTable } from '../../draw/piece-table.js';
import type { ListColumn, ListContent } from './list-content.js';

const HEAD = [
  'label',
  'name',
  'kind',
  'paper',
  'width',
  'height',
  'blank width',
  'blank height',
  'blank width in',
  'blank height in',
  'blank width mm',
  'blank height mm',
  'per card',
  'quantity',
  'shape',
  'face',
];

/** Five decimals of an inch, three of a millimetre: enough to read back as the same tick on any ruler mark. */
export function decimals(length: Length): readonly [inches: number, millimetres: number] {
  return [Number(toInches(length).toFixed(5)), Number(toMillimetres(length).toFixed(3))];
}

function record(piece: PieceRow, unit: Unit): readonly (string | number)[] {
  const [inchWidth, mmWidth] = decimals(piece.blankWidth);
  const [inchHeight, mmHeight] = decimals(piece.blankHeight);
  const sizes = [piece.width, piece.height, piece.blankWidth, piece.blankHeight].map((each) => writeLength(each, unit));
  const numbers = [inchWidth, inchHeight, mmWidth, mmHeight, piece.perCard, piece.quantity];
  return [piece.label, piece.name, piece.kind, piece.paper, ...sizes, ...numbers, piece.shape, piece.face];
}

function documentOf(sketch: Sketch, cards: number, rows: readonly PieceRow[]): object {
  const length = (value: Length): string => writeLength(value, sketch.unit);
  const pieces = rows.map((piece) => ({
    ...piece,
    width: length(piece.width),
    height: length(piece.height),
    blankWidth: length(piece.blankWidth),
    blankHeight: length(piece.blankHeight),
  }));
  return { trimwellPieces: 1, title: sketch.title, unit: sketch.unit, cards, pieces };
}

const COLUMNS: readonly ListColumn[] = [
  { title: 'Letter', align: 'start' },
  { title: 'Piece', align: 'start', breaks: true },
  { title: 'Kind', align: 'start' },
  { title: 'Paper', align: 'start', breaks: true },
  { title: 'Size', align: 'start' },
  { title: 'Cut', align: 'start' },
];

/** The unit of a list's sizes, as it is said above them. */
export function unitLine(unit: Unit): string {
  return `Sizes are width × height, all in ${unit === 'in' ? 'inches' : 'millimetres'}.`;
}

/** The pieces of one card, or of `cards` cards: the opened-flat card base first, then the pieces in gluing order. */
export function listPieces(sketch: Sketch, cards: number | null): ListContent {
  const { unit } = sketch;
  const rows = pieceTable(sketch, cards ?? 1);
  const style: LengthStyle = { unit, bare: true };
  const count: readonly ListColumn[] = [
    { title: 'Per card', align: 'end' },
    ...(cards === null ? [] : [{ title: `For ${counted(cards, 'card')}`, align: 'end' } as const]),
  ];
  return {
    title: `${sketch.title}: pieces for ${cards === null ? 'one card' : counted(cards, 'card')}`,
    lines: [unitLine(unit)],
    tables: [
      {
        heading: null,
        lines: [],
        columns: [...COLUMNS, ...count],
        rows: rows.map((piece) => [
          piece.label,
          piece.name,
          piece.kind,
          piece.paper,
          formatSize(piece, style),
          formatSize({ width: piece.blankWidth, height: piece.blankHeight }, style),
          String(piece.perCard),
          ...(cards === null ? [] : [String(piece.quantity)]),
        ]),
      },
    ],
    records: [HEAD, ...rows.map((piece) => record(piece, unit))],
    document: documentOf(sketch, cards ?? 1, rows),
  };
}
