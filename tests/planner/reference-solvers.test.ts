import { type CutJob, checkPlan, planCuts } from '@trimwell/geometry';
import fc from 'fast-check';
import highsLoader from 'highs';
import { expect, test } from 'vitest';
import { allSheetSets, fewestSheetsByAll } from './exhaustive-sheets.js';
import { smallJob } from './small-job.js';

/**
 * Small jobs solved twice more, by methods that share nothing with the planner: an exhaustive search over all edge-to-edge cuts, and
 * the integer program of covering (P. C. Gilmore & R. E. Gomory 1965, Operations Research 13:94-120, from memory) over all sheets that can
 * be cut, solved by HiGHS 1.15.3 (an open solver, MIT).
 */
const SEED = 20_260;
const highs = await highsLoader();

const WORK = 100_000;

interface Best {
  readonly unmade: number;
  readonly sheets: number;
}

/** True when the plan is as good as the best; a plan that claims to be better, or a bound that no plan can have, fails. */
function reaches(job: CutJob, best: Best): boolean {
  const plan = planCuts(job, { work: WORK });
  const named = JSON.stringify(job);
  expect(checkPlan(job, plan)).toEqual([]);
  const unmade = plan.unmade.reduce((sum, { quantity }) => sum + quantity, 0);
  expect(unmade, named).toBeGreaterThanOrEqual(best.unmade);
  if (unmade === best.unmade) expect(plan.counts.sheets, named).toBeGreaterThanOrEqual(best.sheets);
  if (plan.complete) expect(plan.proof.lowerBound, named).toBeLessThanOrEqual(best.sheets);
  if (plan.complete && plan.proof.fewestSheets) expect(plan.counts.sheets, named).toBe(best.sheets);
  return unmade === best.unmade && plan.counts.sheets === best.sheets;
}

/** Jobs of which the planner misses the best: those that can be made, and those of which something stays unmade. */
function missed(jobs: readonly CutJob[]) {
  const all = jobs.map((job) => {
    const best = fewestSheetsByAll(job);
    return { job, best, reached: reaches(job, best) };
  });
  const makeable = all.filter(({ best }) => best.unmade === 0);
  const rest = all.filter(({ best }) => best.unmade > 0);
  return {
    makeable: makeable.length,
    several: makeable.filter(({ best }) => best.sheets >= 2).length,
    missedMakeable: makeable.filter(({ reached }) => !reached).map(({ job }) => JSON.stringify(job)),
    rest: rest.length,
    missedRest: rest.filter(({ reached }) => !reached).map(({ job }) => JSON.stringify(job)),
  };
}

test('the planner agrees with an exhaustive search on every small job that can be made', () => {
  const found = missed(
    fc.sample(smallJob({ sheet: 7, blank: 5, kinds: 4, copies: 3, rules: false }), { seed: SEED, numRuns: 200 }),
  );
  expect(found.missedMakeable).toEqual([]);
  // Where sheets are too few, which blanks to leave is found by search alone.
  expect(found.missedRest.length, found.missedRest.join('\n')).toBeLessThanOrEqual(4);
  // The cases are no trifles: many need several sheets, some cannot be made.
  expect(found.makeable).toBeGreaterThan(150);
  expect(found.several).toBeGreaterThan(100);
  expect(found.rest).toBeGreaterThan(30);
});

test('and nearly always where the trimmer has rules', () => {
  const found = missed(
    fc.sample(smallJob({ sheet: 8, blank: 5, kinds: 3, copies: 3, rules: true }), { seed: SEED + 1, numRuns: 120 }),
  );
  expect(found.missedMakeable.length, found.missedMakeable.join('\n')).toBeLessThanOrEqual(3);
  expect(found.missedRest.length, found.missedRest.join('\n')).toBeLessThanOrEqual(2);
  expect(found.makeable).toBeGreaterThan(50);
  expect(found.rest).toBeGreaterThan(40);
});

/** Fewest sheets by HiGHS; null when the sheets at hand cannot do. */
function fewestSheetsByProgram(job: CutJob): number | null {
  const sets = allSheetSets(job);
  const names = sets.map((_, index) => `x${index}`);
  // A set gives what a larger one gives and less, so covering with the largest ones is exact.
  const covers = job.blanks.map(({ quantity }, blank) => {
    const terms = sets.flatMap(({ counts }, index) => (counts[blank] ? [`${counts[blank]} x${index}`] : []));
    return terms.length > 0 ? ` blank${blank}: ${terms.join(' + ')} >= ${quantity}` : null;
  });
  if (covers.includes(null)) return null;
  const limits = job.papers.flatMap(({ sheets }, paper) => {
    const terms = sets.flatMap((set, index) => (set.paper === paper ? [`x${index}`] : []));
    return sheets === null || terms.length === 0 ? [] : [` paper${paper}: ${terms.join(' + ')} <= ${sheets}`];
  });
  const model = [
    'Minimize',
    ` sheets: ${names.join(' + ')}`,
    'Subject To',
    ...covers,
    ...limits,
    'General',
    ` ${names.join(' ')}`,
    'End',
  ].join('\n');
  const answer = highs.solve(model);
  if (answer.Status === 'Infeasible') return null;
  expect(answer.Status).toBe('Optimal');
  return Math.round(answer.ObjectiveValue);
}

test('the planner agrees with an integer program on 80 larger jobs', () => {
  const jobs = fc.sample(smallJob({ sheet: 12, blank: 8, kinds: 4, copies: 5, rules: false }), {
    seed: SEED + 2,
    numRuns: 80,
  });
  let solved = 0;
  for (const job of jobs) {
    const sheets = fewestSheetsByProgram(job);
    if (sheets === null) {
      expect(planCuts(job, { work: WORK }).complete, JSON.stringify(job)).toBe(false);
      continue;
    }
    expect(reaches(job, { unmade: 0, sheets }), JSON.stringify(job)).toBe(true);
    solved += 1;
  }
  expect(solved).toBeGreaterThan(40);
});

test('both references agree with each other', () => {
  const jobs = fc.sample(smallJob({ sheet: 7, blank: 5, kinds: 4, copies: 3, rules: false }), {
    seed: SEED + 3,
    numRuns: 40,
  });
  for (const job of jobs) {
    const { unmade, sheets } = fewestSheetsByAll(job);
    expect(fewestSheetsByProgram(job), JSON.stringify(job)).toBe(unmade === 0 ? sheets : null);
  }
});
