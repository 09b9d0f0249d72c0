import { type Length, type PlacedBounds, placedBounds, ticks } from '@trimwell/geometry';
import { placedPiece } from '../batch/hidden-centres.js';
import type { Face, Piece, Sketch } from '../model/sketch.js';
import { type Caliper, estimateCaliper } from './estimate-caliper.js';

/** The thickest spot of a stack: how thick, of which pieces from the card up, and whether some caliper is an estimate. */
export interface ThickestSpot {
  readonly height: Length;
  readonly pieces: readonly string[];
  readonly estimated: boolean;
}

/** The caliper of the thickest paper that `from` may stand for. */
export function caliperOf({ papers, mixes }: Sketch, from: string): Caliper {
  const ids = mixes.find(({ id }) => id === from)?.papers ?? [from];
  const calipers = papers.filter(({ id }) => ids.includes(id)).map(estimateCaliper);
  return calipers.reduce((most, each) => (each.caliper > most.caliper ? each : most), {
    caliper: ticks(0),
    estimated: false,
  });
}

interface Layer {
  readonly id: string;
  readonly box: PlacedBounds;
  readonly height: number;
  readonly estimated: boolean;
}

function layerOf(sketch: Sketch, piece: Piece): Layer {
  const { caliper, estimated } = caliperOf(sketch, piece.from);
  return { id: piece.id, box: placedBounds(placedPiece(sketch, piece)), height: caliper + piece.raise, estimated };
}

/** Starts and middles of stretches between the sides of all boxes: over each, the same layers lie. */
function stretches(ends: readonly number[]): readonly number[] {
  const sorted = [...new Set(ends)].sort((a, b) => a - b);
  return sorted.slice(1).map((end, index) => (end + (sorted[index] ?? end)) / 2);
}

/**
 * The thickest spot of one face's leaf of the card (or, with `closed`, of the folded card with both faces), by a sweep over
 * the boxes that the outlines reach to: the base, and of every piece there its caliper and the foam under it. Exact for
 * upright rectangles; round and tilted pieces count with their boxes, so never too little. Of equal spots the leftmost,
 * then the topmost. Cost: the cube of the number of pieces.
 */
export function thickestSpot(sketch: Sketch, face: Face | 'closed'): ThickestSpot {
  const base = caliperOf(sketch, sketch.card.base);
  const leaves = face === 'closed' && sketch.card.fold !== 'none' ? 2 : 1;
  const layers = sketch.pieces
    .filter((piece) => face === 'closed' || piece.face === face)
    .map((piece) => layerOf(sketch, piece));
  let most: { readonly height: number; readonly layers: readonly Layer[] } = { height: 0, layers: [] };
  for (const x of stretches(layers.flatMap(({ box }) => [box.left, box.right]))) {
    const column = layers.filter(({ box }) => box.left < x && x < box.right);
    for (const y of stretches(column.flatMap(({ box }) => [box.top, box.bottom]))) {
      const here = column.filter(({ box }) => box.top < y && y < box.bottom);
      const height = here.reduce((sum, layer) => sum + layer.height, 0);
      if (height > most.height) most = { height, layers: here };
    }
  }
  return {
    height: ticks(leaves * base.caliper + most.height),
    pieces: most.layers.map(({ id }) => id),
    estimated: base.estimated || most.layers.some(({ estimated }) => estimated),
  };
}
