import { ticks } from '@trimwell/geometry';
import type { Check } from './finding.js';
import { punchedEdges } from './punched-edges.js';

/** A punch that cuts as deep as the piece is, or deeper; mended by leaving that edge plain. */
export const punchTooDeep: Check = ({ sketch }, piece) => {
  const found = punchedEdges(sketch, piece).find(({ punch, across }) => punch.depth >= across);
  if (!found) return null;
  const { edge, punch, across } = found;
  return {
    code: 'punch-too-deep',
    severity: 'stops the build',
    piece: piece.id,
    edge,
    amount: ticks(punch.depth - across),
    fixes: [[{ do: 'punch', piece: piece.id, edge, punch: null }]],
  };
};
