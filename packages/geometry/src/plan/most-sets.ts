import { CutJobError, checkJob, jobProblem, MOST_COPIES } from '../cut/check-job.js';
import type { CutJob } from '../cut/job.js';
import type { CutPlan } from '../cut/plan.js';
import { leastSheets, type PlanOptions, planCuts } from './plan-cuts.js';

/** Numbers of sets beyond the first that failed that are looked at. */
const LOOK_BEYOND = 3;

/** True when some blank can only come from papers of which there is a limited number, so that there is a most. */
function isLimited(job: CutJob): boolean {
  const limited = new Set(job.papers.filter((paper) => paper.sheets !== null).map((paper) => paper.id));
  return job.blanks.some(
    (blank) =>
      blank.quantity > 0 && (blank.papers ?? job.papers.map((paper) => paper.id)).every((id) => limited.has(id)),
  );
}

/**
 * The plan of the most whole sets that the sheets at hand give; `proof.mostSets` tells whether one set more is proven
 * impossible. When not even one set can be made, the plan is that of one set, incomplete. `work` is for each number of
 * sets that is tried. The number is found by doubling and halving.
 * @throws CutJobError for a job that cannot be planned, or that no limited paper bounds.
 */
export function mostSets(job: CutJob, options: Omit<PlanOptions, 'sets'> = {}): CutPlan {
  const problems = checkJob(job);
  if (problems.length > 0) throw new CutJobError(problems);
  if (!isLimited(job)) {
    throw new CutJobError([
      jobProblem('no-limit', 'papers', 'no limit of sheets', 'a number of sheets for a paper that every set needs'),
    ]);
  }
  const perSet = job.blanks.reduce((sum, blank) => sum + blank.quantity, 0);
  const most = Math.floor(MOST_COPIES / perSet);
  const impossible = (sets: number): boolean =>
    sets > most || leastSheets(job, sets).value === Number.POSITIVE_INFINITY;
  const plans = new Map<number, CutPlan>();
  const planned = (sets: number): CutPlan => {
    const plan = plans.get(sets) ?? planCuts(job, { ...options, sets });
    plans.set(sets, plan);
    return plan;
  };
  const possible = (sets: number): boolean => !impossible(sets) && planned(sets).complete;
  let made = 0;
  let failed = 1;
  while (possible(failed)) {
    made = failed;
    failed *= 2;
  }
  while (failed - made > 1) {
    const middle = Math.floor((made + failed) / 2);
    if (possible(middle)) made = middle;
    else failed = middle;
  }
  // A plan can be missed at one number and found at the next, which then makes both.
  for (let more = 1; more <= LOOK_BEYOND; more += 1) {
    if (!possible(made + more)) continue;
    made += more;
    more = 0;
  }
  const plan = planned(Math.max(made, 1));
  return { ...plan, proof: { ...plan.proof, mostSets: made < most && impossible(made + 1) } };
}
