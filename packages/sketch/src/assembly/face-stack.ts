import { type Length, type PlacedBounds, type PlacedPiece, placedBounds } from '@trimwell/geometry';
import { type ProfileStretch, type StackHeights, sideProfile, stackHeights } from '@trimwell/geometry/regions';
import { placedPiece } from '../batch/hidden-centres.js';
import { caliperOf } from '../check/caliper-of.js';
import { type Level, levelsOf } from '../check/levels.js';
import type { Face, Piece, Sketch } from '../model/sketch.js';

/** One face of a card as it is glued: its pieces in gluing order, and what belongs to each by its place in that order. */
export interface FaceStack {
  readonly face: Face;
  readonly pieces: readonly Piece[];
  /** Where each lies. */
  readonly placed: readonly PlacedPiece[];
  /** How high each piece lies above the card. */
  readonly heights: StackHeights;
  /** The same, thin papers not counted: what is glued down reaches as far as this tells. */
  readonly levels: readonly Level[];
  /** True when the height of the highest piece rests on a caliper that nobody measured. */
  readonly estimated: boolean;
}

/** Everything that the pieces of `face` do to each other where they lie. */
export function faceStack(sketch: Sketch, face: Face): FaceStack {
  const pieces = sketch.pieces.filter((piece) => piece.face === face);
  const placed = pieces.map((piece) => placedPiece(sketch, piece));
  const calipers = pieces.map(({ from }) => caliperOf(sketch, from));
  const thick = placed.map((each, at) => ({
    placed: each,
    caliper: calipers[at]?.caliper ?? (0 as Length),
    raise: pieces[at]?.raise ?? (0 as Length),
  }));
  const heights = stackHeights(thick);
  const bearing = (at: number | null): readonly number[] =>
    at === null ? [] : [at, ...bearing(heights.layers[at]?.restsOn[0] ?? null)];
  const estimated = bearing(heights.highest).some((at) => calipers[at]?.estimated);
  const levels = levelsOf(sketch, pieces, (lower, at) => heights.layers[at]?.over.includes(lower) ?? false);
  return { face, pieces, placed, heights, levels, estimated };
}

/** The pieces that bear the highest one, from the card up, itself last. Of equal ones the lower in gluing order. */
export function highestChain({ pieces, heights }: FaceStack): readonly Piece[] {
  const chain: Piece[] = [];
  for (let at = heights.highest; at !== null; at = heights.layers[at]?.restsOn[0] ?? null) {
    const piece = pieces[at];
    if (piece) chain.unshift(piece);
  }
  return chain;
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
  const thick = pieces.map((piece) => ({
    placed: placedPiece(sketch, piece),
    caliper: caliperOf(sketch, piece.from).caliper,
    raise: piece.raise,
  }));
  return sideProfile(thick, heights, axis, axis === 'y' ? sketch.card.width : sketch.card.height);
}
