import { holdsPiece } from '@trimwell/geometry';
import { type Region, regionArea, regionOf, share, unite } from '@trimwell/geometry/regions';
import type { FaceStack } from './face-stack.js';

/** How much of a piece may stand free and it still counts as borne all over: the error of its curves is less. */
const FREE = 0.001;

/**
 * What of the piece at `at` lies over those of `lower`, given by their places in the stack, that bear it; null when that is all of it,
 * or when it lies on the card itself.
 */
export function borneBy({ placed }: FaceStack, at: number, lower: readonly number[]): Region | null {
  const bearing = lower.flatMap((each) => placed[each] ?? []);
  const piece = placed[at];
  if (bearing.length === 0 || !piece || bearing.some((each) => holdsPiece(each, piece))) return null;
  const whole = regionOf(piece);
  const borne = share(unite(bearing.map(regionOf)), whole);
  return regionArea(borne) < regionArea(whole) * (1 - FREE) ? borne : null;
}
