import type { PlacedPiece } from '@trimwell/geometry';
import type { Edge, Piece } from '../model/sketch.js';
import { coveredBy } from './covered.js';
import type { Check } from './finding.js';
import { placedRectangle } from './placed-rectangle.js';
import { punchedEdges } from './punched-edges.js';

/** Stretches by piece, and for each edge by its depth, so that what was found about one is remembered with it. */
const stretches = new WeakMap<Piece, Map<string, PlacedPiece>>();

function stretchOf(piece: Piece, edge: Edge, depth: number): PlacedPiece {
  const known = stretches.get(piece) ?? new Map<string, PlacedPiece>();
  stretches.set(piece, known);
  const stretch = known.get(`${edge} ${depth}`) ?? shapedStretch(piece, edge, depth);
  known.set(`${edge} ${depth}`, stretch);
  return stretch;
}

/** The stretch of an upright rectangle that a punch shapes, as a piece of its own. */
function shapedStretch(piece: Piece, edge: Edge, depth: number): PlacedPiece {
  const deep = Math.min(depth, edge === 'top' || edge === 'bottom' ? piece.height : piece.width);
  const { x, y, width, height } = piece;
  switch (edge) {
    case 'top':
      return placedRectangle(x, y, width, deep);
    case 'bottom':
      return placedRectangle(x, y + height - deep, width, deep);
    case 'left':
      return placedRectangle(x, y, deep, height);
    case 'right':
      return placedRectangle(x + width - deep, y, deep, height);
  }
}

/** A punched edge of an upright piece of which nothing shows, so that punching it is for nothing; mended by leaving it plain. */
export const punchedEdgeCovered: Check = (field, piece) => {
  const { sketch, over, opaque } = field;
  const edges = punchedEdges(sketch, piece);
  if (edges.length === 0 || piece.tilt !== 0) return null;
  const covers = over(piece).filter(opaque);
  const found = edges.find(({ edge, punch }) => {
    return coveredBy(field, stretchOf(piece, edge, punch.depth), covers);
  });
  if (!found) return null;
  return {
    code: 'punched-edge-covered',
    severity: 'worth knowing',
    piece: piece.id,
    edge: found.edge,
    amount: found.punch.depth,
    fixes: [[{ do: 'punch', piece: piece.id, edge: found.edge, punch: null }]],
  };
};
