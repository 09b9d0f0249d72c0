import { type PieceOutline, type PieceShape, plainOutline } from '@trimwell/geometry';
import type { Piece, Sketch } from '@trimwell/sketch';
import type { GroupItem, Item } from '../drawing/drawing.js';
import type { CardOptions } from './card-options.js';
import { facePaper, pieceShape } from './piece-look.js';

/** What draws the edges and the printed art of pieces, and what is written beside them: exactly, or plainly where little is to be loaded or drawn. */
export interface Hand {
  outline(shape: PieceShape): PieceOutline;
  art(piece: Piece, art: NonNullable<Piece['art']>, key: string): readonly Item[];
  /** Letters and dimensions of a face. */
  marks(sketch: Sketch, shown: readonly Piece[], options: CardOptions & { readonly size: number }): readonly Item[];
}

/** Draws every piece as a plain rectangle or ellipse, without art, letters and dimensions: a first look, in little code and few marks. */
export const PLAIN_HAND: Hand = { outline: plainOutline, art: () => [], marks: () => [] };

/** A piece as a group, drawn by `hand`: its shadow, its paper, its holes, its art, turned by its tilt about its middle. */
export function layPiece(sketch: Sketch, piece: Piece, hand: Hand): GroupItem {
  const key = `piece:${piece.id}`;
  const { outline, holes } = hand.outline(pieceShape(sketch, piece));
  const fill = { paper: facePaper(sketch, piece) };
  const items: Item[] = [
    { kind: 'path', key: `${key}:shadow`, role: 'shadow', piece: piece.id, outline },
    { kind: 'path', key: `${key}:paper`, role: 'outline', piece: piece.id, outline, fill },
    ...holes.map(
      (hole, index): Item => ({
        kind: 'path',
        key: `${key}:hole${index}`,
        role: 'hidden',
        piece: piece.id,
        outline: hole,
      }),
    ),
    ...(piece.art ? hand.art(piece, piece.art, key) : []),
  ];
  return {
    kind: 'group',
    key,
    role: 'outline',
    piece: piece.id,
    origin: { x: piece.width / 2, y: piece.height / 2 },
    move: { x: piece.x + piece.width / 2, y: piece.y + piece.height / 2 },
    turn: piece.tilt,
    items,
    title: piece.name,
  };
}
