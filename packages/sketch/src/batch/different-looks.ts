import type { Cards } from './card-differences.js';
import { evenSquares } from './even-quantities.js';

/** How many steps the search for different cards takes at most. */
const MOST_STEPS = 30_000;

/**
 * As many different looks out of `looks` as there are cards, such that the sum of squares of the quantities is at most
 * `squares`: the deal, null when there is proven to be none, or undefined when the search gave up.
 */
export function differentLooks(looks: Cards, cards: number, squares: number): Cards | null | undefined {
  const roles = looks[0]?.length ?? 0;
  const used = Array.from({ length: roles }, () => new Map<number, number>());
  const papers = used.map((_, role) => new Set(looks.map((look) => look[role])).size);
  const chosen: (readonly number[])[] = [];
  let left = MOST_STEPS;
  const count = (look: readonly number[], by: number): void => {
    look.forEach((paper, role) => {
      const row = used[role];
      row?.set(paper, (row.get(paper) ?? 0) + by);
    });
  };
  const descend = (from: number): boolean => {
    if (chosen.length === cards) return true;
    if (looks.length - from < cards - chosen.length || left <= 0) return false;
    left -= 1;
    const look = looks[from];
    if (!look) return false;
    chosen.push(look);
    count(look, 1);
    if (leastSquares() <= squares && descend(from + 1)) return true;
    chosen.pop();
    count(look, -1);
    return descend(from + 1);
  };
  if (descend(0)) return chosen;
  return left > 0 ? null : undefined;

  /** The least sum of squares that the finished deal can have: what is chosen, filled up from the lowest. */
  function leastSquares(): number {
    let sum = 0;
    used.forEach((row, role) => {
      let open = cards - chosen.length;
      const levels = [...row.values()].sort((one, other) => one - other);
      while (levels.length < (papers[role] ?? 0)) levels.unshift(0);
      let low = 0;
      let under = 0;
      for (; low < levels.length; low += 1) {
        const next = levels[low] ?? 0;
        const need = next * low - under;
        if (need > open) break;
        under += next;
      }
      open += under;
      sum += low > 0 ? evenSquares(open, low) : 0;
      for (const level of levels.slice(low)) sum += level * level;
    });
    return sum;
  }
}
