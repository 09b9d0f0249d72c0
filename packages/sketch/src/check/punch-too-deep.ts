import { punchReach, ticks } from '@trimwell/geometry';
import type { Check } from './finding.js';
import { punchedEdges } from './punched-edges.js';

/** A punch that cuts as deep as the piece is, eyelets included, or deeper; mended by leaving that edge plain. */
export const punchTooDeep: Check = ({ sketch }, piece) => {
  const found = punchedEdges(sketch, piece).find(({ punch, across }) => punchReach(punch) >= across);
  if (!found) return null;
  const { edge, punch, across } = found;
  return {
    code: 'punch-too-deep',
    severity: 'stops the build',
    piece: piece.id,
    edge,
    amount: ticks(Math.ceil(punchReach(punch)) - across),
    fixes: [[{ do: 'punch', piece: piece.id, edge, punch: null }]],
  };
};
