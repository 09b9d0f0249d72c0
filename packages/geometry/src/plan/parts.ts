import { fitsOf } from '../cut/fit.js';
import { mayTurn, type Task } from '../sheet/kinds.js';

/** Kinds that share a paper, directly or through others, and are therefore planned together. */
export function components(task: Task, among: readonly number[]): readonly (readonly number[])[] {
  const group = task.kinds.map((_, index) => index);
  const first = new Map<number, number>();
  const root = (index: number): number => {
    let at = index;
    while ((group[at] ?? at) !== at) at = group[at] ?? at;
    return at;
  };
  for (const index of among) {
    for (const paper of task.kinds[index]?.papers ?? []) {
      const other = first.get(paper);
      if (other === undefined) first.set(paper, index);
      else group[root(index)] = root(other);
    }
  }
  const found = new Map<number, number[]>();
  for (const index of among) {
    found.set(root(index), [...(found.get(root(index)) ?? []), index]);
  }
  return [...found.values()];
}

/**
 * The task of some kinds alone. Papers that none of them may come from stay, so that numbers of stocks mean the same;
 * they are never used.
 */
export function partOf(task: Task, kinds: readonly number[]): Task {
  return { ...task, kinds: kinds.flatMap((index) => task.kinds[index] ?? []) };
}

/** True when some sheet that a kind may come from is large enough for it. */
export function roomy(task: Task, index: number): boolean {
  const kind = task.kinds[index];
  return (kind?.papers ?? []).some((paper) => {
    const stock = task.stocks[paper];
    if (!kind || !stock || stock.sheets === 0) return false;
    const holds = (w: number, h: number): boolean => w <= stock.width && h <= stock.height;
    return holds(kind.width, kind.height) || (mayTurn(kind, stock) && holds(kind.height, kind.width));
  });
}

/** True when some paper that a kind may come from is large enough, and the trimmer can cut the kind out of it. */
export function cuttable(task: Task, index: number): boolean {
  const kind = task.kinds[index];
  return (kind?.papers ?? []).some((paper) => {
    const stock = task.stocks[paper];
    if (!kind || !stock || stock.sheets === 0) return false;
    const fits = (w: number, h: number): boolean =>
      fitsOf(task.job.trimmer, stock.width, stock.height, w, h).length > 0;
    return fits(kind.width, kind.height) || (mayTurn(kind, stock) && fits(kind.height, kind.width));
  });
}
