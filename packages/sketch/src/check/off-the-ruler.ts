import { type Length, nearestStep, ticks } from '@trimwell/geometry';
import type { Edit, Piece } from '../model/sketch.js';
import type { CheckField } from './check-field.js';
import type { Check } from './finding.js';

/** How far `length` is from the nearest multiple of `step`. */
export function offMark(length: Length, step: Length): number {
  return Math.abs(length - nearestStep(length, step));
}

/** What brings the sides of a mat to marks of the ruler when what it mats lies on them: another reveal. */
function revealOnMark({ sketch, step }: CheckField, piece: Piece): readonly (readonly Edit[])[] {
  const inner = sketch.pieces.find(({ id }) => id === piece.mats?.piece);
  if (!piece.mats || !inner || offMark(inner.width, step) + offMark(inner.height, step) > 0) return [];
  const reveal = ticks(Math.max(step, nearestStep(piece.mats.reveal, step)));
  return [[{ do: 'mat', piece: piece.id, mats: { ...piece.mats, reveal } }]];
}

/**
 * A size that lies on no 1/16 in or 1 mm mark, mended by the nearest one. What a mat follows is mended instead of the mat,
 * unless its own reveal is what puts it off.
 */
export const offTheRuler: Check = (field, piece) => {
  const { step } = field;
  const amount = Math.max(offMark(piece.width, step), offMark(piece.height, step));
  if (amount === 0) return null;
  const found = { code: 'off-the-ruler', severity: 'worth knowing', piece: piece.id, amount: ticks(amount) } as const;
  if (piece.mats) {
    const fixes = revealOnMark(field, piece);
    return fixes.length > 0 ? { ...found, other: piece.mats.piece, fixes } : null;
  }
  const side = (length: Length): Length => ticks(Math.max(step, nearestStep(length, step)));
  const less = (length: Length): Length => ticks(Math.max(step, Math.floor(length / step) * step));
  const sized = (width: Length, height: Length): readonly Edit[] => [
    { do: 'resize', piece: piece.id, x: piece.x, y: piece.y, width, height },
  ];
  return {
    ...found,
    fixes: [sized(side(piece.width), side(piece.height)), sized(less(piece.width), less(piece.height))],
  };
};
