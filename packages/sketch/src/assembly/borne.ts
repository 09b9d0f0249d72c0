import { holdsPiece, LAID_FLAT, type PlacedPiece, reaches } from '@trimwell/geometry';
import { type Region, regionArea, regionOf, share, unite } from '@trimwell/geometry/regions';
import type { FaceStack } from './face-stack.js';

/** How much of a piece may stand free and it still counts as borne all over: the error of its curves is less. */
const FREE = 0.001;

/** True when the piece at `at` lies too high to reach the card: nothing but what it reaches holds it. */
export function standsFree({ heights: { levels } }: FaceStack, at: number): boolean {
  return !reaches(levels[at] ?? LAID_FLAT, LAID_FLAT);
}

/** The places of the pieces below the one at `at` that it reaches, lowest first; a paper follows the steps of other papers. */
export function reachedBy({ heights: { layers, levels } }: FaceStack, at: number): readonly number[] {
  const own = levels[at] ?? LAID_FLAT;
  return (layers[at]?.over ?? []).filter((lower) => reaches(own, levels[lower] ?? LAID_FLAT));
}

/** The pieces at some places of the stack where they lie. */
export function placedAt({ placed }: FaceStack, places: readonly number[]): readonly PlacedPiece[] {
  return places.flatMap((each) => placed[each] ?? []);
}

/** What was found of a piece above others; its answer holds as long as those are the same. */
interface Known {
  readonly bearing: readonly PlacedPiece[];
  readonly borne: Region | null;
}

const known = new WeakMap<PlacedPiece, Known>();

function borneBy(piece: PlacedPiece, bearing: readonly PlacedPiece[]): Region | null {
  if (bearing.some((each) => holdsPiece(each, piece))) return null;
  const whole = regionOf(piece);
  const borne = share(unite(bearing.map(regionOf)), whole);
  return regionArea(borne) < regionArea(whole) * (1 - FREE) ? borne : null;
}

/**
 * What of the piece at `at` lies over those that it reaches, while the rest of it stands free; null when nothing does, since all of it
 * reaches other pieces or the card itself.
 */
export function borneOf(stack: FaceStack, at: number): Region | null {
  const piece = stack.placed[at];
  if (!piece || !standsFree(stack, at)) return null;
  const bearing = placedAt(stack, reachedBy(stack, at));
  const found = known.get(piece);
  if (found && found.bearing.length === bearing.length && found.bearing.every((each, n) => each === bearing[n]))
    return found.borne;
  const borne = borneBy(piece, bearing);
  known.set(piece, { bearing, borne });
  return borne;
}
