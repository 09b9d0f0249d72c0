import { type Length, nearestStep, ticks } from '@trimwell/geometry';
import type { Edit } from '../model/sketch.js';
import type { Check } from './finding.js';
import { offMark } from './off-the-ruler.js';

/**
 * An upright piece that lies on no mark of the ruler and not halfway between two either, where centring may put it; mended
 * by the nearest mark, or else the nearest half. Mats lie where what they mat lies.
 */
export const placeOffTheRuler: Check = ({ step }, piece) => {
  if (piece.mats || piece.tilt !== 0) return null;
  const half = ticks(step / 2);
  const amount = Math.max(offMark(piece.x, half), offMark(piece.y, half));
  if (amount === 0) return null;
  const placed = (to: Length): readonly Edit[] => [
    { do: 'place', piece: piece.id, x: nearestStep(piece.x, to), y: nearestStep(piece.y, to) },
  ];
  return {
    code: 'place-off-the-ruler',
    severity: 'worth knowing',
    piece: piece.id,
    amount: ticks(amount),
    fixes: [placed(step), placed(half)],
  };
};
