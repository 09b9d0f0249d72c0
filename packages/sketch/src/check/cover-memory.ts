import { type Covering, holdsPoint, type PlacedPiece, type Point } from '@trimwell/geometry';

/** That a piece shows below some covers, and a point of it that does. */
interface Seen {
  readonly at: Point;
  readonly below: ReadonlySet<PlacedPiece>;
}

/**
 * What was found while one sketch and the ways to mend it are looked at. Whoever is below all of a set is below any set that holds
 * it, and where something shows it goes on showing until something else is laid there; so a change elsewhere asks for nothing new.
 * It ends with its sketch, so that what is found does not depend on what was looked at before.
 */
export interface CoverMemory {
  readonly hidden: WeakMap<PlacedPiece, readonly (readonly PlacedPiece[])[]>;
  readonly shown: WeakMap<PlacedPiece, readonly Seen[]>;
}

/** A memory that knows nothing yet. */
export function coverMemory(): CoverMemory {
  return { hidden: new WeakMap(), shown: new WeakMap() };
}

/** What is remembered for one piece: enough for the ways to mend it that are tried in turn. */
const MOST = 8;

/** Whether `target` is hidden below `covers`; null when memory does not tell. */
function recall({ hidden, shown }: CoverMemory, target: PlacedPiece, covers: readonly PlacedPiece[]): boolean | null {
  const stillShows = ({ at, below }: Seen): boolean =>
    covers.every((cover) => below.has(cover) || !holdsPoint(cover, at));
  if (shown.get(target)?.some(stillShows)) return false;
  return hidden.get(target)?.some((some) => some.every((cover) => covers.includes(cover))) ? true : null;
}

/** True when nothing of `target` shows below `covers`: from memory where that tells it, else as `find` finds it. */
export function isHidden(
  memory: CoverMemory,
  target: PlacedPiece,
  covers: readonly PlacedPiece[],
  find: () => Covering,
): boolean {
  const known = recall(memory, target, covers);
  if (known !== null) return known;
  const { hidden, shown } = memory;
  const found = find();
  if (found.is === 'hidden') hidden.set(target, [found.by, ...(hidden.get(target) ?? [])].slice(0, MOST));
  else shown.set(target, [{ at: found.at, below: new Set(covers) }, ...(shown.get(target) ?? [])].slice(0, MOST));
  return found.is === 'hidden';
}
