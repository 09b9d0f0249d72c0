import { writePlan } from '../read/write-plan.js';
import type { BatchPlan } from './batch-plan.js';
import type { BatchYield } from './yield.js';

/**
 * The document of a batch plan, `"trimwellBatch": 1`: the totals, then for each paper its plan as a plan document
 * (`"trimwellPlan": 1`). Blank ids are the pieces' ids, `card-base` for the base, and `piece--paper` for a piece cut
 * from a mix. `yield` stands there only when the most cards were asked for.
 */
export function writeBatchPlan(batch: BatchPlan, most: BatchYield | null = null): object {
  const { cards, complete, sheets, lowerBound, fewestSheets, work, papers } = batch;
  return {
    trimwellBatch: 1,
    cards,
    complete,
    sheets,
    lowerBound,
    fewestSheets,
    work,
    ...(most ? { yield: { cards: most.cards, proven: most.proven, runsOut: most.runsOut } } : {}),
    papers: papers.map(({ paper, plan }) => ({ paper, plan: writePlan(plan) })),
  };
}
