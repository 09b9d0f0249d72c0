import type { BatchYield } from './yield.js';
import type { YieldPoint } from './yield-curve.js';

/**
 * The document of a yield, `"trimwellYield": 1`: the most cards that the sheets at hand give, with what one more sheet of
 * each limited paper would give (null when no paper is limited), and the yield curve.
 */
export function writeYield(most: BatchYield | null, curve: readonly YieldPoint[]): object {
  const { cards, proven, runsOut, oneMore } = most ?? {};
  return { trimwellYield: 1, most: most && { cards, proven, runsOut, oneMore }, curve };
}
