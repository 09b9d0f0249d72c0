import type { CutNode } from '../cut/cut-tree.js';
import { cutAllowed } from '../cut/fit.js';
import type { Trimmer } from '../cut/job.js';
import { ticks } from '../length/length.js';
import { mayTurn, type Stock, type Task } from './kinds.js';
import type { Pattern } from './pattern.js';

type Direction = 'vertical' | 'horizontal';

/** Cuts `wanted` off the near side of a part `across` wide; what is left is an offcut. Null when the trimmer cannot. */
function cutOff(
  trimmer: Trimmer,
  direction: Direction,
  across: number,
  wanted: number,
  along: number,
  inner: CutNode,
): CutNode | null {
  if (wanted === across) return inner;
  if (!cutAllowed(trimmer, across, wanted, along)) return null;
  return { is: 'cut', direction, at: ticks(wanted), first: inner, second: { is: 'offcut' } };
}

/** `count` equal parts of `size`, cut in halves again and again, so that the tree is as flat as can be. */
function evenly(
  trimmer: Trimmer,
  direction: Direction,
  count: number,
  size: number,
  along: number,
  part: CutNode,
): CutNode | null {
  if (count === 1) return part;
  const near = Math.ceil(count / 2);
  const at = near * (size + trimmer.kerf) - trimmer.kerf;
  if (!cutAllowed(trimmer, count * (size + trimmer.kerf) - trimmer.kerf, at, along)) return null;
  const first = evenly(trimmer, direction, near, size, along, part);
  const second = evenly(trimmer, direction, count - near, size, along, part);
  return first && second ? { is: 'cut', direction, at: ticks(at), first, second } : null;
}

/**
 * One kind in rows and columns, as many as fit and are wanted (whole columns, or one column that is not full): what
 * there is to fall back on when no work is left for a search. Null when the trimmer cannot cut it so.
 */
function gridOf(
  task: Task,
  stock: Stock,
  kindIndex: number,
  turned: boolean,
  left: number,
): Pick<Pattern, 'counts' | 'tree'> | null {
  const kind = task.kinds[kindIndex];
  if (!kind) return null;
  const { trimmer } = task.job;
  const { kerf } = trimmer;
  const [w, h] = turned ? [kind.height, kind.width] : [kind.width, kind.height];
  const rows = Math.min(left, Math.floor((stock.height + kerf) / (h + kerf)));
  const columns = Math.min(Math.floor((stock.width + kerf) / (w + kerf)), Math.floor(left / Math.max(1, rows)));
  if (rows < 1 || columns < 1) return null;
  const [wide, high] = [columns * (w + kerf) - kerf, rows * (h + kerf) - kerf];
  const column = evenly(trimmer, 'horizontal', rows, h, w, { is: 'blank', blank: String(kindIndex), turned });
  const block = column && evenly(trimmer, 'vertical', columns, w, high, column);
  const strip = block && cutOff(trimmer, 'horizontal', stock.height, high, wide, block);
  const tree = strip && cutOff(trimmer, 'vertical', stock.width, wide, stock.height, strip);
  return tree && { counts: task.kinds.map((_, index) => (index === kindIndex ? rows * columns : 0)), tree };
}

/** The grid of most value among all kinds and turns; null when there is none. */
export function bestGrid(
  task: Task,
  stock: Stock,
  stockIndex: number,
  left: readonly number[],
  values: readonly number[],
): Pattern | null {
  let best: Pattern | null = null;
  for (const [index, kind] of task.kinds.entries()) {
    const wanted = left[index] ?? 0;
    if (wanted === 0 || !kind.papers.includes(stockIndex)) continue;
    for (const turned of mayTurn(kind, stock) ? [false, true] : [false]) {
      const grid = gridOf(task, stock, index, turned, wanted);
      const value = grid ? (grid.counts[index] ?? 0) * (values[index] ?? 0) : 0;
      if (grid && value > (best?.value ?? 0)) best = { ...grid, value };
    }
  }
  return best;
}
