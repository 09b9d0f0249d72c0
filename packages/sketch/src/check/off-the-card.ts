import { type Length, ticks } from '@trimwell/geometry';
import { movedBy } from '../edit/apply-edit.js';
import type { Check } from './finding.js';

/** How far a tilted outline may reach over before it is told, in ticks: the error of turning it. */
const NEAR_ENOUGH = 2;

/** How far a piece from `low` to `high` has to move to lie within 0 to `whole`; upright ones exactly, else by whole marks. */
function inwards(low: number, high: number, whole: number, step: Length | 1): number {
  const marks = (over: number): number => Math.ceil(over / step) * step;
  if (low < 0) return Math.min(marks(-low), Math.max(Math.ceil(-low), Math.floor(whole - high)));
  if (high > whole) return -Math.min(marks(high - whole), Math.max(Math.ceil(high - whole), Math.floor(low)));
  return 0;
}

/**
 * A piece whose true outline, tilted and round as it is, reaches over the edge of its face; mended by moving it in, where
 * it is not larger than the card.
 */
export const offTheCard: Check = ({ sketch: { card }, bounds, step }, piece) => {
  const { left, top, right, bottom } = bounds(piece);
  const over = Math.max(-left, -top, right - card.width, bottom - card.height);
  const upright = piece.tilt % 180 === 0;
  if (over <= (upright ? 0 : NEAR_ENOUGH)) return null;
  const fits = Math.ceil(right - left) <= card.width && Math.ceil(bottom - top) <= card.height;
  const by = upright ? 1 : step;
  const move = movedBy(piece, inwards(left, right, card.width, by), inwards(top, bottom, card.height, by));
  return {
    code: 'off-the-card',
    severity: 'looks wrong',
    piece: piece.id,
    amount: ticks(Math.round(over)),
    fixes: fits ? [[move]] : [],
  };
};
