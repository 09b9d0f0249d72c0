import { type Length, toInches, toMillimetres, writeLength } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import { type PieceRow, pieceTable } from '../draw/piece-table.js';
import { writeCsv } from './csv.js';

export interface PieceListOptions {
  /** How many cards the quantities are for; 1 for the list of a single card. */
  readonly cards: number;
}

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
];

/** Five decimals of an inch, three of a millimetre: enough to read back as the same tick on any ruler mark. */
function decimals(length: Length): readonly [inches: number, millimetres: number] {
  return [Number(toInches(length).toFixed(5)), Number(toMillimetres(length).toFixed(3))];
}

/** The piece list as CSV (RFC 4180), one piece a row, the opened-flat card base first. */
export function writePieceListCsv(sketch: Sketch, { cards }: PieceListOptions): string {
  const length = (value: Length): string => writeLength(value, sketch.unit);
  const row = (piece: PieceRow): readonly (string | number)[] => {
    const [inchWidth, mmWidth] = decimals(piece.blankWidth);
    const [inchHeight, mmHeight] = decimals(piece.blankHeight);
    const sizes = [piece.width, piece.height, piece.blankWidth, piece.blankHeight].map(length);
    return [
      piece.label,
      piece.name,
      piece.kind,
      piece.paper,
      ...sizes,
      inchWidth,
      inchHeight,
      mmWidth,
      mmHeight,
      piece.perCard,
      piece.quantity,
    ];
  };
  return writeCsv([HEAD, ...pieceTable(sketch, cards).map(row)]);
}

/**
 * The piece list as JSON: `{ "trimwellPieces": 1, "title", "unit", "cards", "pieces": [{ "label", "id", "name", "kind",
 * "paper", "width", "height", "blankWidth", "blankHeight", "perCard", "quantity" }] }`, lengths as texts that read back exactly.
 */
export function writePieceListJson(sketch: Sketch, { cards }: PieceListOptions): string {
  const length = (value: Length): string => writeLength(value, sketch.unit);
  const pieces = pieceTable(sketch, cards).map((piece) => ({
    ...piece,
    width: length(piece.width),
    height: length(piece.height),
    blankWidth: length(piece.blankWidth),
    blankHeight: length(piece.blankHeight),
  }));
  return `${JSON.stringify({ trimwellPieces: 1, title: sketch.title, unit: sketch.unit, cards, pieces }, null, 2)}\n`;
}
