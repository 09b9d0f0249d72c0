import { boundaryIn, FACE, type PlacedPiece } from './placed-piece.js';

/** A stretch of a line, from the left or from the top of the face, in floating ticks. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/**
 * Where a straight line across the face meets `piece`: along y the line that lies `at` ticks from the left, along x the one that lies
 * `at` ticks from the top. Its holes and the gaps of a punched edge are left out. A line along an edge takes the side
 * to its right or below it. Curves are within 1/400 in of it.
 */
export function sectionSpans(piece: PlacedPiece, along: 'x' | 'y', at: number): readonly Span[] {
  const across = along === 'x' ? 'y' : 'x';
  const crossings = boundaryIn(FACE, piece)
    .edges.flatMap(({ from, to }) => {
      if (from[across] <= at === to[across] <= at) return [];
      return [from[along] + ((at - from[across]) / (to[across] - from[across])) * (to[along] - from[along])];
    })
    .sort((a, b) => a - b);
  return crossings.flatMap((to, index) => (index % 2 === 1 ? [{ from: crossings[index - 1] ?? to, to }] : []));
}
