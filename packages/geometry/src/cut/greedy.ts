import type { Draft, DraftSheet } from './draft.js';
import { bestGrid } from './grid.js';
import type { Task } from './kinds.js';
import type { Meter } from './meter.js';
import { type Pattern, PatternSearch } from './pattern.js';

interface Found {
  readonly stock: number;
  readonly pattern: Pattern;
}

/** The stock and pattern of most value for its cost among the stocks that still have sheets. */
function bestPattern(
  task: Task,
  left: readonly number[],
  values: readonly number[],
  sheets: readonly number[],
  points: number,
  meter: Meter,
): Found | null {
  let best: Found | null = null;
  let most = 0;
  task.stocks.forEach((stock, index) => {
    if ((sheets[index] ?? 0) <= 0) return;
    const wanted = task.kinds.some((kind, at) => (left[at] ?? 0) > 0 && kind.papers.includes(index));
    if (!wanted) return;
    const searched = new PatternSearch(task, stock, index, left, values, meter, points).best();
    const grid = bestGrid(task, stock, index, left, values);
    const pattern = grid && grid.value > searched.value ? grid : searched;
    const worth = pattern.value / Math.max(stock.cost, 1e-9);
    if (worth > most) {
      best = { stock: index, pattern };
      most = worth;
    }
  });
  return best;
}

/**
 * Fills sheet after sheet with the pattern of most value, each as many times as the demand allows, so that sheets cut
 * alike come out by themselves (sequential value heuristic; Chen, Cui and Chen 2016 correct the values between runs).
 * The draft is complete or runs out of sheets.
 */
export function fillGreedily(task: Task, values: readonly number[], points: number, meter: Meter): Draft {
  const left = task.kinds.map((kind) => kind.demand);
  const sheets = task.stocks.map((stock) => stock.sheets);
  const done: DraftSheet[] = [];
  for (;;) {
    const found = left.some((count) => count > 0) ? bestPattern(task, left, values, sheets, points, meter) : null;
    if (!found) return { sheets: done, missing: left };
    const { stock, pattern } = found;
    const times = pattern.counts.map((count, kind) =>
      count > 0 ? Math.floor((left[kind] ?? 0) / count) : Number.POSITIVE_INFINITY,
    );
    const copies = Math.min(sheets[stock] ?? 0, ...times);
    done.push({ stock, tree: pattern.tree, copies });
    sheets[stock] = (sheets[stock] ?? 0) - copies;
    pattern.counts.forEach((count, kind) => {
      left[kind] = (left[kind] ?? 0) - count * copies;
    });
  }
}
