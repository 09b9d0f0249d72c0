import { flatCardBase, type Length } from '@trimwell/geometry';
import { CARD_BASE, type Face, pieceBlank, type Shape, type Sketch } from '@trimwell/sketch';
import { labelPieces } from './labels.js';

/** One piece of the card in numbers; lengths in ticks. */
export interface PieceRow {
  readonly label: string;
  readonly id: string;
  readonly name: string;
  readonly kind: string;
  /** Name of the paper, or of the mix. */
  readonly paper: string;
  readonly width: Length;
  readonly height: Length;
  readonly blankWidth: Length;
  readonly blankHeight: Length;
  readonly perCard: number;
  /** For all the cards asked for. */
  readonly quantity: number;
  readonly shape: Shape;
  readonly face: Face;
}

/** The piece table for `cards` cards: the opened-flat base first, then the pieces in gluing order. */
export function pieceTable(sketch: Sketch, cards: number): readonly PieceRow[] {
  const labels = labelPieces(sketch);
  const source = (id: string): string => [...sketch.papers, ...sketch.mixes].find((each) => each.id === id)?.name ?? id;
  const { card } = sketch;
  const flat = flatCardBase(card);
  const base: PieceRow = {
    label: labels.get(CARD_BASE) ?? 'A',
    id: CARD_BASE,
    name: 'Card base',
    kind: 'card base',
    paper: source(card.base),
    width: card.width,
    height: card.height,
    blankWidth: flat.width,
    blankHeight: flat.height,
    perCard: 1,
    quantity: cards,
    shape: 'rectangle',
    face: 'front',
  };
  const rows = sketch.pieces.map((piece): PieceRow => {
    const blank = pieceBlank(sketch, piece);
    return {
      label: labels.get(piece.id) ?? '?',
      id: piece.id,
      name: piece.name,
      kind: piece.kind,
      paper: source(piece.from),
      width: piece.width,
      height: piece.height,
      blankWidth: blank.width,
      blankHeight: blank.height,
      perCard: piece.perCard,
      quantity: piece.perCard * cards,
      shape: piece.shape,
      face: piece.face,
    };
  });
  return [base, ...rows];
}
