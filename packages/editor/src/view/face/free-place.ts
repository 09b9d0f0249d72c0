import type { Extent } from './face-view.js';

interface Place {
  readonly x: number;
  readonly y: number;
}

/** What a sum of pixels may be off by. */
const ROUNDING = 1e-6;

function within(at: number, edge: number, length: number): number {
  return Math.min(Math.max(at, edge), Math.max(edge, length - edge));
}

/**
 * The place nearest to `wanted` where a target of `side` lies on none at `taken`, and within the stage, if there is one. Where the stage is
 * full, as near to `wanted` as the stage allows.
 */
export function freePlace(wanted: Place, taken: readonly Place[], side: number, stage: Extent | null): Place {
  const inside = (at: Place): Place =>
    stage ? { x: within(at.x, side / 2, stage.width), y: within(at.y, side / 2, stage.height) } : at;
  const apart = side - ROUNDING;
  const isFree = ({ x, y }: Place): boolean =>
    !taken.some((other) => Math.abs(other.x - x) < apart && Math.abs(other.y - y) < apart);
  const start = inside(wanted);
  if (isFree(start)) return start;
  // The nearest place is beside one that is taken, level or upright with the wanted one, or in the corner between two.
  const columns = [start.x, ...taken.flatMap(({ x }) => [x - side, x + side])];
  const rows = [start.y, ...taken.flatMap(({ y }) => [y - side, y + side])];
  let best = start;
  let least = Number.POSITIVE_INFINITY;
  for (const x of columns) {
    for (const y of rows) {
      const far = Math.hypot(x - start.x, y - start.y);
      if (far >= least) continue;
      const at = { x, y };
      const { x: column, y: row } = inside(at);
      if (column !== x || row !== y || !isFree(at)) continue;
      best = at;
      least = far;
    }
  }
  return best;
}
