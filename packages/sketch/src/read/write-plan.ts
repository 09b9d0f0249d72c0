import { type CutPlan, TICKS_PER_INCH } from '@trimwell/geometry';

/** The plan document of `plan`, `"trimwellPlan": 1`; all lengths in ticks, keys always in the same order. */
export function writePlan(plan: CutPlan): object {
  const { sets, complete, sheets, unmade, proof, counts, largestOffcut, work } = plan;
  return {
    trimwellPlan: 1,
    ticksPerInch: TICKS_PER_INCH,
    sets,
    complete,
    sheets,
    unmade,
    proof,
    counts,
    largestOffcut,
    work,
  };
}
