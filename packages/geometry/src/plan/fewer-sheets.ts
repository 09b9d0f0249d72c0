import type { Stock, Task } from '../sheet/kinds.js';

/** Sets of sheets that are tried at the most. */
const MOST_SETS = 2;
/** Sheets of a stock that costs nothing, at the most. */
const MOST_FREE = 60;
/** Sets that are looked through. */
const MOST_LOOKED = 4_000;

/**
 * Sets of sheets, as so many of each stock, that cost less than `cost`, at least `least`, and have room for `area`; the
 * dearest first, then the roomiest. Only stocks that `sheets` says are left, and that a kind may come from.
 */
export function cheaperSets(
  task: Task,
  sheets: readonly number[],
  area: number,
  cost: number,
  least: number,
): readonly (readonly number[])[] {
  const usable = task.stocks.flatMap((stock, index) =>
    (sheets[index] ?? 0) > 0 && task.kinds.some((kind) => kind.demand > 0 && kind.papers.includes(index))
      ? [{ stock, index }]
      : [],
  );
  const found: { readonly set: readonly number[]; readonly cost: number; readonly room: number }[] = [];
  let looked = 0;
  // No plan needs more sheets than there are blanks.
  const copies = task.kinds.reduce((sum, { demand }) => sum + demand, 0);
  const go = (at: number, set: readonly number[], spent: number, room: number): void => {
    looked += 1;
    if (looked > MOST_LOOKED) return;
    const next = usable[at];
    if (!next) {
      if (room >= area && spent >= least) found.push({ set, cost: spent, room });
      return;
    }
    const { stock, index } = next;
    const affordable = stock.cost > 0 ? Math.max(0, Math.ceil((cost - spent) / stock.cost) - 1) : MOST_FREE;
    const most = Math.min(sheets[index] ?? 0, affordable, copies);
    // What costs nothing is always taken.
    for (let count = most; count >= (stock.cost > 0 ? 0 : most) && looked <= MOST_LOOKED; count -= 1) {
      go(
        at + 1,
        set.map((own, stockAt) => (stockAt === index ? count : own)),
        spent + count * stock.cost,
        room + count * roomOf(stock),
      );
    }
  };
  go(
    0,
    task.stocks.map(() => 0),
    0,
    0,
  );
  found.sort((a, b) => b.cost - a.cost || b.room - a.room);
  return found.slice(0, MOST_SETS).map(({ set }) => set);
}

function roomOf({ width, height }: Stock): number {
  return width * height;
}
