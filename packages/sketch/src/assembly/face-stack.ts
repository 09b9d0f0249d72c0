import { type PlacedBounds, type PlacedPiece, placedBounds } from '@trimwell/geometry';
import { type ProfileStretch, type StackHeights, sideProfile, stackHeights } from '@trimwell/geometry/regions';
import { placedPiece } from '../batch/hidden-centres.js';
import { caliperOf } from '../check/caliper-of.js';
import { thickPiece } from '../check/levels.js';
import type { Face, Piece, Sketch } from '../model/sketch.js';

/** One face of a card as it is glued: its pieces in gluing order, and what belongs to each by its place in that order. */
export interface FaceStack {
  readonly face: Face;
  readonly pieces: readonly Piece[];
  /** Where each lies. */
  readonly placed: readonly PlacedPiece[];
  /** How high each piece lies above the card. */
  readonly heights: StackHeights;
  /** True when the height of the highest piece rests on a caliper that nobody measured. */
  readonly estimated: boolean;
}

/** Everything that the pieces of `face` do to each other where they lie. */
export function faceStack(sketch: Sketch, face: Face): FaceStack {
  const pieces = sketch.pieces.filter((piece) => piece.face === face);
  const placed = pieces.map((piece) => placedPiece(sketch, piece));
  const calipers = pieces.map(({ from }) => caliperOf(sketch, from));
  const heights = stackHeights(pieces.map((piece) => thickPiece(sketch, piece)));
  const estimated = heights.chain.some((at) => calipers[at]?.estimated);
  return { face, pieces, placed, heights, estimated };
}

/** The pieces that lie on each other where the face is highest, from the card up. */
export function highestChain({ pieces, heights }: FaceStack): readonly Piece[] {
  return heights.chain.flatMap((at) => pieces[at] ?? []);
}

/** The box around the highest piece of a face, in floating ticks; null on an empty one. */
export function highestPlace(sketch: Sketch, { pieces, heights }: FaceStack): PlacedBounds | null {
  const piece = heights.highest === null ? undefined : pieces[heights.highest];
  return piece ? placedBounds(placedPiece(sketch, piece)) : null;
}

/** The outline of a face seen from its lower edge (along y) or from its left one (along x), the card's own edge from 0. */
export function faceProfile(
  sketch: Sketch,
  { pieces, heights }: FaceStack,
  axis: 'x' | 'y',
): readonly ProfileStretch[] {
  const thick = pieces.map((piece) => thickPiece(sketch, piece));
  return sideProfile(thick, heights, axis, axis === 'y' ? sketch.card.width : sketch.card.height);
}
