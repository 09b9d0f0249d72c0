import type { Piece, Sketch } from '@trimwell/sketch';
import type { Watched } from './found.js';

/**
 * The piece that mending `watched` changes or brings: not always the one that it is told of, since a lap may be mended at the upper paper.
 * Null when it is taken away, or when only the card is changed.
 */
export function mendedPiece({ pieces }: Sketch, { piece, fix }: Watched): Piece | null {
  if (fix.some((edit) => edit.do === 'remove-piece')) return null;
  const [first] = fix;
  const changed = first && 'piece' in first ? first.piece : piece;
  return typeof changed === 'string' ? (pieces.find(({ id }) => id === changed) ?? null) : changed;
}
