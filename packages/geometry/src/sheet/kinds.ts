import { usableRect } from '../cut/cut-tree.js';
import type { CutJob, CutPaper } from '../cut/job.js';

/** Blanks that are the same to a planner: equal size, papers and turning. Members get their names back at the end. */
export interface Kind {
  readonly width: number;
  readonly height: number;
  readonly turn: boolean;
  /** Index of each paper that it may be cut from. */
  readonly papers: readonly number[];
  readonly demand: number;
  readonly members: readonly { readonly id: string; readonly quantity: number }[];
}

/** Sheets of one paper: the size inside the margins, how many there are, and what one costs (1 without prices). */
export interface Stock {
  readonly paper: CutPaper;
  readonly width: number;
  readonly height: number;
  readonly sheets: number;
  readonly cost: number;
}

/** A job as the planner works on it. */
export interface Task {
  readonly job: CutJob;
  readonly kinds: readonly Kind[];
  readonly stocks: readonly Stock[];
}

/** How many blanks a task asks for in all. */
export function copiesOf(task: Task): number {
  return task.kinds.reduce((sum, { demand }) => sum + demand, 0);
}

/** True when a kind may be turned by a quarter on the paper. */
export function mayTurn(kind: Kind, stock: Stock): boolean {
  return kind.turn && !stock.paper.directional && kind.width !== kind.height;
}

/** True when plans are compared by money: every paper has a price, and not all are free. */
export function isPriced(job: CutJob): boolean {
  return job.papers.every((paper) => paper.price !== null) && job.papers.some((paper) => (paper.price ?? 0) > 0);
}

function stocksOf(job: CutJob): readonly Stock[] {
  const priced = isPriced(job);
  return job.papers.map((paper) => {
    const { width, height } = usableRect(paper);
    return {
      paper,
      width,
      height,
      sheets: paper.sheets ?? Number.POSITIVE_INFINITY,
      cost: priced ? (paper.price ?? 1) : 1,
    };
  });
}

/**
 * Reduces `job` with every quantity multiplied by `sets`: equal blanks become one kind. A blank that may be turned on
 * every paper it may come from is kept with its longer side as width, so that 2 x 3 and 3 x 2 are one kind; the leaf's
 * `turned` is set right when the names come back. Kinds are in order of falling area, then width, then first member.
 */
export function taskOf(job: CutJob, sets: number): Task {
  const stocks = stocksOf(job);
  const groups = new Map<
    string,
    { kind: Omit<Kind, 'members' | 'demand'>; members: { id: string; quantity: number }[] }
  >();
  for (const blank of job.blanks) {
    if (blank.quantity * sets === 0) continue;
    const papers = job.papers.flatMap((paper, index) =>
      blank.papers === null || blank.papers.includes(paper.id) ? [index] : [],
    );
    const free = blank.turn && papers.every((index) => !job.papers[index]?.directional);
    const tall = free && blank.height > blank.width;
    const [width, height] = tall ? [blank.height, blank.width] : [blank.width, blank.height];
    const key = `${width} ${height} ${blank.turn} ${papers.join()}`;
    const group = groups.get(key) ?? { kind: { width, height, turn: blank.turn, papers }, members: [] };
    group.members.push({ id: blank.id, quantity: blank.quantity * sets });
    groups.set(key, group);
  }
  const kinds = [...groups.values()].map(
    ({ kind, members }): Kind => ({
      ...kind,
      members,
      demand: members.reduce((sum, member) => sum + member.quantity, 0),
    }),
  );
  kinds.sort(
    (a, b) =>
      b.width * b.height - a.width * a.height ||
      b.width - a.width ||
      compareText(a.members[0]?.id ?? '', b.members[0]?.id ?? ''),
  );
  return { job, kinds, stocks };
}

/** Order of two texts by code unit, the same everywhere. */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
