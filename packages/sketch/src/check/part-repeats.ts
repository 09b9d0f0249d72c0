import { repeatsAlong, ticks } from '@trimwell/geometry';
import type { Check } from './finding.js';
import { punchedEdges } from './punched-edges.js';
import { resizedAlong } from './resized-edge.js';

/** A punched edge that ends in part of a repeat at both ends; mended by the nearest whole number of repeats that does. */
export const partRepeats: Check = ({ sketch }, piece) => {
  const found = punchedEdges(sketch, piece)
    .filter(({ punch, length }) => length >= punch.repeat)
    .find(({ punch, length }) => repeatsAlong(length, punch).rest !== 0);
  if (!found) return null;
  const { edge, punch, length } = found;
  const exact = length / punch.repeat;
  const [near, far] = [Math.round(exact), exact < Math.round(exact) ? Math.floor(exact) : Math.ceil(exact)];
  return {
    code: 'part-repeats',
    severity: 'looks wrong',
    piece: piece.id,
    edge,
    amount: ticks(Math.round(repeatsAlong(length, punch).rest)),
    fixes: [near, far]
      .filter((repeats) => repeats > 0)
      .map((repeats) => [resizedAlong(sketch, piece, edge, ticks(repeats * punch.repeat))]),
  };
};
