import { mayTurn, type Stock, type Task } from './kinds.js';
import { cutPoints, mergeSizes } from './points.js';
import { SheetTable, type Way } from './sheet-table.js';

/** Places for cuts on the two sides of a sheet that `places` gives out at the most. */
export interface TableLimits {
  readonly points: number;
  readonly steps: number;
}

/** What a table of usual size may cost. */
export const USUAL_TABLE: TableLimits = { points: 400, steps: 16_000_000 };

/** Places for cuts on a side up to which pinwheels are looked for everywhere in a sheet. */
export const STOPPED_POINTS = 24;

/** True when a cut may stop inside the sheet: it is allowed, and the blade takes nothing away. */
export function mayStop(task: Task): boolean {
  return task.job.trimmer.stoppedCuts && task.job.trimmer.kerf === 0;
}

/** All ways in which the kinds that `wanted` names lie on one stock. */
export function waysOf(task: Task, stockIndex: number, wanted: (kind: number) => boolean): readonly Way[] {
  const stock = task.stocks[stockIndex] as Stock;
  const { kerf } = task.job.trimmer;
  return task.kinds.flatMap((kind, index): Way[] => {
    if (!wanted(index) || kind.demand === 0 || !kind.papers.includes(stockIndex)) return [];
    const plain = { kind: index, turned: false, w: kind.width + kerf, h: kind.height + kerf };
    const ways = mayTurn(kind, stock) ? [plain, { kind: index, turned: true, w: plain.h, h: plain.w }] : [plain];
    return ways.filter(({ w, h }) => w <= stock.width + kerf && h <= stock.height + kerf);
  });
}

/**
 * Of all sums, those from which what lies beyond cannot be made more use of by a smaller one (raster points;
 * Scheithauer and Terno 1996). Enough for the best sheet when kinds may be used without limit.
 */
function raster(points: readonly number[], length: number): readonly number[] {
  const floor = (at: number): number => {
    let best = 0;
    for (const point of points) {
      if (point > at) break;
      best = point;
    }
    return best;
  };
  const kept = new Set<number>();
  for (const point of [0, ...points]) kept.add(floor(length - floor(length - point)));
  kept.delete(0);
  return [...kept].sort((a, b) => a - b);
}

/**
 * Places for cuts on one side of a sheet: sums of the kinds' sides, each used as often as there are of it, or the raster
 * points of all sums where those are fewer. Null when there are more than `limit`.
 */
function placesOf(
  task: Task,
  ways: readonly Way[],
  side: 'w' | 'h',
  length: number,
  limit: number,
  stopped: boolean,
): readonly number[] | null {
  const bounded = mergeSizes(ways.map((way) => ({ size: way[side], most: task.kinds[way.kind]?.demand ?? 0 })));
  const few = cutPoints(length, bounded, 0, limit);
  if (stopped) return few;
  const endless = bounded.map(({ size }) => ({ size, most: Number.POSITIVE_INFINITY }));
  const all = cutPoints(length, endless, 0, 4 * limit);
  const rastered = all && raster(all, length);
  if (!few || (rastered && rastered.length < few.length)) return rastered && rastered.length <= limit ? rastered : few;
  return few;
}

/** A table for the kinds that `wanted` names, on one stock; null when it would be larger than `limits` allow. */
export function tableOf(
  task: Task,
  stockIndex: number,
  wanted: (kind: number) => boolean,
  limits: TableLimits = USUAL_TABLE,
): SheetTable | null {
  const stock = task.stocks[stockIndex] as Stock;
  const { kerf } = task.job.trimmer;
  const ways = waysOf(task, stockIndex, wanted);
  const stopped = mayStop(task);
  const points = stopped ? Math.min(limits.points, STOPPED_POINTS) : limits.points;
  const xs = placesOf(task, ways, 'w', stock.width + kerf, points, stopped);
  const ys = placesOf(task, ways, 'h', stock.height + kerf, points, stopped);
  if (!xs || !ys || (xs.length * ys.length * (xs.length + ys.length)) / 4 > limits.steps) return null;
  return new SheetTable(task.kinds.length, ways, xs, ys, stopped);
}
