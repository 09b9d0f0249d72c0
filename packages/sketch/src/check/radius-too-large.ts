import { type Length, ticks, tightEdges } from '@trimwell/geometry';
import type { Check } from './finding.js';

/** Radii of two corners that need more than their edge; mended by the largest equal radius that fits everywhere. */
export const radiusTooLarge: Check = (_field, piece) => {
  const tight = piece.shape === 'rectangle' ? tightEdges(piece, piece.corners) : [];
  const [worst] = tight;
  if (!worst) return null;
  const most = ticks(Math.floor(Math.min(piece.width, piece.height) / 2));
  const within = (radius: Length): Length => (radius > most ? most : radius);
  const { tl, tr, br, bl } = piece.corners;
  const corners = { tl: within(tl), tr: within(tr), br: within(br), bl: within(bl) };
  return {
    code: 'radius-too-large',
    severity: 'stops the build',
    piece: piece.id,
    amount: ticks(worst.needed - worst.length),
    fixes: [[{ do: 'round', piece: piece.id, corners }]],
  };
};
