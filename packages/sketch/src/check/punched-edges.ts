import type { Length } from '@trimwell/geometry';
import { EDGES, type Edge, type Piece, type Punch, type Sketch } from '../model/sketch.js';

/** A punched edge of a rectangle: its length, and how far the piece reaches across it. */
export interface PunchedEdge {
  readonly edge: Edge;
  readonly punch: Punch;
  readonly length: Length;
  readonly across: Length;
}

/** The punched edges of `piece`, clockwise from the top; only a rectangle has some. */
export function punchedEdges(sketch: Sketch, piece: Piece): readonly PunchedEdge[] {
  if (piece.shape !== 'rectangle' || EDGES.every((edge) => piece.punched[edge] === undefined)) return [];
  return EDGES.flatMap((edge): readonly PunchedEdge[] => {
    const punch = sketch.punches.find(({ id }) => id === piece.punched[edge]);
    if (!punch) return [];
    const level = edge === 'top' || edge === 'bottom';
    return [
      level
        ? { edge, punch, length: piece.width, across: piece.height }
        : { edge, punch, length: piece.height, across: piece.width },
    ];
  });
}
