import { type Length, ticks } from '@trimwell/geometry';
import type { Piece } from '../model/sketch.js';

type Place = Pick<Piece, 'x' | 'y' | 'width' | 'height'>;

/** Where a mat lies that shows `reveal` evenly around `inner`. */
export function matPlace(inner: Place, reveal: Length): Place {
  return {
    x: ticks(inner.x - reveal),
    y: ticks(inner.y - reveal),
    width: ticks(inner.width + 2 * reveal),
    height: ticks(inner.height + 2 * reveal),
  };
}

/** The reverse of `matPlace`: where the matted piece lies, or null when nothing of it is left. */
export function mattedPlace(mat: Place, reveal: Length): Place | null {
  const width = mat.width - 2 * reveal;
  const height = mat.height - 2 * reveal;
  if (width <= 0 || height <= 0) return null;
  return { x: ticks(mat.x + reveal), y: ticks(mat.y + reveal), width: ticks(width), height: ticks(height) };
}

function follows(piece: Piece, inner: Piece): boolean {
  if (!piece.mats) return true;
  const place = matPlace(inner, piece.mats.reveal);
  return (
    piece.x === place.x &&
    piece.y === place.y &&
    piece.width === place.width &&
    piece.height === place.height &&
    piece.tilt === inner.tilt
  );
}

/**
 * `pieces` with every mat that follows `moved`, directly or through another mat, brought to its place around it. Pieces
 * that are in place already are the same objects as before.
 */
export function followMats(pieces: readonly Piece[], moved: string): readonly Piece[] {
  const inner = pieces.find((piece) => piece.id === moved);
  if (!inner) return pieces;
  return pieces
    .filter((piece) => piece.mats?.piece === moved)
    .reduce<readonly Piece[]>((all, mat) => {
      if (!mat.mats || follows(mat, inner)) return all;
      const placed: Piece = { ...mat, ...matPlace(inner, mat.mats.reveal), tilt: inner.tilt };
      return followMats(
        all.map((piece) => (piece.id === mat.id ? placed : piece)),
        mat.id,
      );
    }, pieces);
}
