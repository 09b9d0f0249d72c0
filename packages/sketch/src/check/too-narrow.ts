import { inches, millimetres, ticks } from '@trimwell/geometry';
import { pieceBlank } from '../batch/recipe.js';
import type { Sketch } from '../model/sketch.js';
import type { Check } from './finding.js';
import { resizedAlong } from './resized-edge.js';

/** The narrowest strip that can be held while it is cut: 1/4 in or 6 mm (common practice, no source). */
export function narrowestHeld(unit: Sketch['unit']) {
  return unit === 'in' ? inches(1 / 4) : millimetres(6);
}

/** A piece whose blank is narrower than can be held at the trimmer; mended by making it just wide enough. */
export const tooNarrow: Check = ({ sketch }, piece) => {
  const least = narrowestHeld(sketch.unit);
  const { width, height } = pieceBlank(sketch, piece);
  if (width >= least && height >= least) return null;
  const level = width < height;
  const missing = least - Math.min(width, height);
  const side = ticks((level ? piece.width : piece.height) + missing);
  return {
    code: 'too-narrow',
    severity: 'worth knowing',
    piece: piece.id,
    amount: ticks(Math.min(width, height)),
    fixes: [[resizedAlong(sketch, piece, level ? 'top' : 'left', side)]],
  };
};
