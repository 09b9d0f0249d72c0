import { type Length, ticks } from '@trimwell/geometry';
import type { Corners, Piece } from '../model/sketch.js';

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

function eachCorner({ tl, tr, br, bl }: Corners, radius: (of: Length) => Length): Corners {
  return { tl: radius(tl), tr: radius(tr), br: radius(br), bl: radius(bl) };
}

/** True when all four corners are alike. */
export function sameCorners(a: Corners, b: Corners): boolean {
  return a.tl === b.tl && a.tr === b.tr && a.br === b.br && a.bl === b.bl;
}

/** True when any corner is rounded. */
export function isRounded({ tl, tr, br, bl }: Corners): boolean {
  return tl > 0 || tr > 0 || br > 0 || bl > 0;
}

/** Corners that run `reveal` outside those of `inner`, round the same middles; square stays square. */
export function concentricCorners(inner: Corners, reveal: Length): Corners {
  return eachCorner(inner, (radius) => (radius === 0 ? radius : ticks(radius + reveal)));
}

/**
 * Corners that run `reveal` inside those of `outer`, round the same middles. A corner whose middle lies in the reveal
 * is square inside, as the parallel to it is.
 */
export function cornersWithin(outer: Corners, reveal: Length): Corners {
  return eachCorner(outer, (radius) => ticks(Math.max(0, radius - reveal)));
}

/** The reverse of `concentricCorners`, or null when a radius is rounded and yet no larger than the reveal. */
export function mattedCorners(mat: Corners, reveal: Length): Corners | null {
  const inner = cornersWithin(mat, reveal);
  return sameCorners(concentricCorners(inner, reveal), mat) ? inner : null;
}

/** True for a mat whose corners follow those of the piece that it mats. */
export function isConcentric(piece: Piece): boolean {
  return piece.mats?.concentric === true && piece.shape === 'rectangle';
}

function follows(piece: Piece, inner: Piece): boolean {
  if (!piece.mats) return true;
  if (isConcentric(piece) && !sameCorners(piece.corners, concentricCorners(inner.corners, piece.mats.reveal)))
    return false;
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
 * `pieces` with every mat that follows `moved`, directly or through another mat, brought to its place around it, a
 * concentric one with its corners. Pieces
 * that are in place already are the same objects as before.
 */
export function followMats(pieces: readonly Piece[], moved: string): readonly Piece[] {
  const inner = pieces.find((piece) => piece.id === moved);
  if (!inner) return pieces;
  return pieces
    .filter((piece) => piece.mats?.piece === moved)
    .reduce<readonly Piece[]>((all, mat) => {
      if (!mat.mats || follows(mat, inner)) return all;
      const { reveal } = mat.mats;
      const corners = isConcentric(mat) ? concentricCorners(inner.corners, reveal) : mat.corners;
      const placed: Piece = { ...mat, ...matPlace(inner, reveal), tilt: inner.tilt, corners };
      return followMats(
        all.map((piece) => (piece.id === mat.id ? placed : piece)),
        mat.id,
      );
    }, pieces);
}
