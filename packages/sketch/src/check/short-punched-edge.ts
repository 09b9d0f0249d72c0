import { ticks } from '@trimwell/geometry';
import type { Check } from './finding.js';
import { punchedEdges } from './punched-edges.js';
import { resizedAlong } from './resized-edge.js';

/** A punched edge shorter than one repeat of its punch; mended by making it one repeat long, or else plain. */
export const shortPunchedEdge: Check = ({ sketch }, piece) => {
  const found = punchedEdges(sketch, piece).find(({ punch, length }) => length < punch.repeat);
  if (!found) return null;
  const { edge, punch, length } = found;
  return {
    code: 'short-punched-edge',
    severity: 'looks wrong',
    piece: piece.id,
    edge,
    amount: ticks(punch.repeat - length),
    fixes: [[resizedAlong(sketch, piece, edge, punch.repeat)], [{ do: 'punch', piece: piece.id, edge, punch: null }]],
  };
};
