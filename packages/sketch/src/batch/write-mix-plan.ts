import type { MixPlan } from './mix-plan.js';

/** The document of a mix plan, `"trimwellMix": 1`: cards are counted from 0, `deal[card]` has a paper for each role. */
export function writeMixPlan(plan: MixPlan): object {
  const { cards, roles, deal, clashes, different, looks, allDifferent, reasons } = plan;
  return { trimwellMix: 1, cards, roles, deal, clashes, different, looks, allDifferent, reasons };
}
