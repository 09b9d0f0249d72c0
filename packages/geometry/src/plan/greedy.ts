import { type CutNode, mapParts } from '../cut/cut-tree.js';
import { valuableSlice } from '../sheet/bounded-table.js';
import { bestGrid } from '../sheet/grid.js';
import type { Stock, Task } from '../sheet/kinds.js';
import type { Meter } from '../sheet/meter.js';
import { type Pattern, PatternSearch } from '../sheet/pattern.js';
import { realise } from '../sheet/realise.js';
import type { Draft, DraftSheet } from './draft.js';

/** Places for cuts on a side of a table for one sheet: in the first pass, in those after it, and now and then. */
export const FEW_POINTS = 14;
export const MORE_POINTS = 28;
export const MANY_POINTS = 40;

interface Found {
  readonly stock: number;
  readonly pattern: Pattern;
}

/** Places for cuts on a side when no work is left. */
const FEWEST_POINTS = 6;

/**
 * The pattern of most value that is found for one stock: by a table that does not know the trimmer's rules where what it
 * finds can be cut, else by a search that does, or in rows and columns.
 */
function patternOf(
  task: Task,
  index: number,
  left: readonly number[],
  values: readonly number[],
  points: number,
  meter: Meter,
): Pattern {
  const stock = task.stocks[index] as Stock;
  // Once the work is used up, what is left is placed roughly.
  const { best, work } = valuableSlice(task, index, left, values, meter.empty ? FEWEST_POINTS : points);
  meter.spend(work);
  const tree = best && realise(task.job.trimmer, best.slice, stock.width, stock.height);
  if (best && tree) return { value: best.value, counts: best.counts, tree };
  const searched = new PatternSearch(task, stock, index, left, values, meter, points).best();
  const grid = bestGrid(task, stock, index, left, values);
  return grid && grid.value > searched.value ? grid : searched;
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
    const pattern = patternOf(task, index, left, values, points, meter);
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
 * `repeats` bounds how often a pattern is taken at once. The draft is complete or runs out of sheets.
 */
export function fillGreedily(
  task: Task,
  values: readonly number[],
  points: number,
  meter: Meter,
  repeats = Number.POSITIVE_INFINITY,
): Draft {
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
    const copies = Math.min(repeats, sheets[stock] ?? 0, ...times);
    done.push({ stock, tree: pattern.tree, copies });
    sheets[stock] = (sheets[stock] ?? 0) - copies;
    pattern.counts.forEach((count, kind) => {
      left[kind] = (left[kind] ?? 0) - count * copies;
    });
  }
}

/**
 * Values for the next filling: a kind that lay on badly filled sheets becomes dearer, so that it is placed sooner (value
 * correction; Chen, Cui and Chen 2016, whose formula this follows from memory). `share` says how far the new values
 * count. Values are areas to a power a little above 1, so that large blanks come first.
 */
export function correctValues(
  task: Task,
  draft: Draft,
  values: readonly number[],
  random: () => number,
): readonly number[] {
  const power = 1 + 0.06 * random();
  const made = task.kinds.map(() => 0);
  const corrected = [...values];
  for (const { stock, tree, copies } of draft.sheets) {
    const counts = task.kinds.map(() => 0);
    countLeaves(tree, counts);
    const { width, height } = task.stocks[stock] as Stock;
    const used = counts.reduce((sum, count, kind) => sum + count * areaOf(task, kind), 0) / (width * height);
    counts.forEach((count, kind) => {
      if (count === 0) return;
      const now = count * copies;
      const before = made[kind] ?? 0;
      made[kind] = before + now;
      const share = (0.3 + 0.6 * random()) * (now / (now + before));
      const dear = areaOf(task, kind) ** power / Math.max(used, 1e-9);
      corrected[kind] = (1 - share) * (corrected[kind] ?? 0) + share * dear;
    });
  }
  return corrected;
}

function areaOf(task: Task, kind: number): number {
  const { width, height } = task.kinds[kind] as { width: number; height: number };
  return width * height;
}

function countLeaves(node: CutNode, counts: number[]): void {
  if (node.is === 'blank') counts[Number(node.blank)] = (counts[Number(node.blank)] ?? 0) + 1;
  else
    mapParts(node, (part) => {
      countLeaves(part, counts);
      return part;
    });
}
