import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomJob } from '../../../../tests/kit/random-job.js';
import { CutJobError } from '../cut/check-job.js';
import { checkPlan } from '../cut/check-plan.js';
import type { CutBlank, CutJob, CutPaper, Trimmer } from '../cut/job.js';
import { inches, ticks } from '../length/length.js';
import { mostSets } from './most-sets.js';
import { DEFAULT_WORK, improvePlan, leastSheets, planCuts, QUICK_WORK } from './plan-cuts.js';

const FREE: Trimmer = {
  bladeLength: null,
  narrowestStrip: ticks(0),
  thinnestTrim: ticks(0),
  kerf: ticks(0),
  rulerStep: null,
  stoppedCuts: false,
};
const NONE = { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) };

function sheet(width: number, height: number, more: Partial<CutPaper> = {}): CutPaper {
  return {
    id: 'a',
    width: inches(width),
    height: inches(height),
    sheets: null,
    directional: false,
    price: null,
    margins: NONE,
    ...more,
  };
}

function blank(width: number, height: number, quantity: number, more: Partial<CutBlank> = {}): CutBlank {
  return {
    id: `${width}x${height}`,
    width: inches(width),
    height: inches(height),
    quantity,
    papers: null,
    turn: true,
    ...more,
  };
}

function job(papers: readonly CutPaper[], blanks: readonly CutBlank[], trimmer: Partial<Trimmer> = {}): CutJob {
  return { trimmer: { ...FREE, ...trimmer }, papers, blanks };
}

/** Plans, and checks the plan by the independent checker. */
function planned(task: CutJob, work = 200_000) {
  const plan = planCuts(task, { work });
  expect(checkPlan(task, plan)).toEqual([]);
  return plan;
}

test('the checker finds nothing wrong with the plans of thousands of random jobs, at any amount of work', () => {
  fc.assert(
    fc.property(randomJob(), fc.constantFrom(1, 500, QUICK_WORK), (task, work) => {
      const plan = planCuts(task, { work });
      expect(checkPlan(task, plan)).toEqual([]);
    }),
    { numRuns: 3000 },
  );
});

test('the same job and work give the same plan, and every slice is a valid plan, never worse than the one before', () => {
  fc.assert(
    fc.property(randomJob(), (task) => {
      const slices = [...improvePlan(task, { work: 120_000 })];
      const unmade = slices.map((plan) => plan.unmade.reduce((sum, { quantity }) => sum + quantity, 0));
      expect(unmade).toEqual([...unmade].sort((a, b) => b - a));
      for (const plan of new Set(slices)) expect(checkPlan(task, plan)).toEqual([]);
      expect(planCuts(task, { work: 120_000 })).toEqual(planCuts(task, { work: 120_000 }));
    }),
    { numRuns: 60 },
  );
});

test('the order of blanks and papers does not change how many sheets are needed', () => {
  fc.assert(
    fc.property(randomJob(), (task) => {
      const back: CutJob = { ...task, papers: [...task.papers].reverse(), blanks: [...task.blanks].reverse() };
      const [one, two] = [planCuts(task, { work: 5_000 }), planCuts(back, { work: 5_000 })];
      if (one.complete && two.complete && task.papers.length === 1) expect(two.counts.sheets).toBe(one.counts.sheets);
    }),
    { numRuns: 300 },
  );
});

test('nine bases at two per letter sheet need five sheets, one place left (common practice, no source)', () => {
  const plan = planned(job([sheet(8.5, 11)], [blank(5.5, 8.5, 9)]));
  expect(plan.counts.sheets).toBe(5);
  expect(plan.proof).toMatchObject({ lowerBound: 5, fewestSheets: true });
  expect(planned(job([sheet(8.5, 11)], [blank(5.5, 8.5, 10)])).counts.sheets).toBe(5);
});

test('nine squares from a 12 x 12 sheet need eight cuts, all at one setting', () => {
  const plan = planned(job([sheet(12, 12)], [blank(4, 4, 9)]));
  expect(plan).toMatchObject({ counts: { sheets: 1, layouts: 1, cuts: 8, settings: 1 }, largestOffcut: null });
});

test('sheets that are cut alike are one layout', () => {
  const plan = planned(job([sheet(12, 12)], [blank(4, 5.25, 60)]));
  expect(plan.counts).toMatchObject({ sheets: 10, layouts: 1 });
  expect(plan.sheets[0]?.copies).toBe(10);
  expect(plan.proof.fewestSheets).toBe(true);
});

test('four 5 x 7 from 12 x 12 need two sheets with edge-to-edge cuts, and that is proven', () => {
  const plan = planned(job([sheet(12, 12)], [blank(5, 7, 4)]));
  expect(plan.counts.sheets).toBe(2);
  expect(plan.proof.fewestSheets).toBe(true);
});

test('a directional paper is never turned on', () => {
  expect(planned(job([sheet(12, 12, { directional: true })], [blank(7, 4, 3)])).counts.sheets).toBe(1);
  expect(planned(job([sheet(12, 6, { directional: true })], [blank(6, 12, 1)])).unmade[0]?.reason).toBe(
    'larger than every sheet',
  );
  expect(planned(job([sheet(12, 6)], [blank(6, 12, 1, { turn: false })])).unmade[0]?.reason).toBe(
    'larger than every sheet',
  );
  expect(planned(job([sheet(12, 6)], [blank(6, 12, 1)])).complete).toBe(true);
});

test('each rule of the trimmer is a reason of its own', () => {
  const reason = (task: CutJob) => planned(task).unmade.map((unmade) => unmade.reason);
  expect(reason(job([sheet(12, 12, { sheets: 1 })], [blank(10, 10, 2)]))).toEqual(['out of sheets']);
  expect(reason(job([sheet(12, 12)], [blank(13, 1, 1)]))).toEqual(['larger than every sheet']);
  expect(reason(job([sheet(17, 22)], [blank(5, 7, 1)], { bladeLength: inches(12) }))).toEqual([
    'longer than the blade',
  ]);
  expect(reason(job([sheet(12, 12)], [blank(5 / 32, 7, 1)], { rulerStep: inches(1 / 16) }))).toEqual(['off the ruler']);
  expect(reason(job([sheet(1, 1)], [blank(0.5, 1, 1)], { narrowestStrip: inches(0.75) }))).toEqual([
    'narrower than can be held',
  ]);
  expect(reason(job([sheet(12, 12)], [blank(12 - 1 / 32, 12, 1)], { thinnestTrim: inches(1 / 16) }))).toEqual([
    'trim too thin',
  ]);
  expect(reason(job([sheet(12, 12)], [blank(5, 7, 1, { papers: [] })]))).toEqual(['no paper allowed']);
});

test('margins are left alone, and the kerf is paid for each cut', () => {
  const margins = { top: inches(0.5), right: ticks(0), bottom: ticks(0), left: ticks(0) };
  expect(planned(job([sheet(12, 12, { margins })], [blank(12, 12, 1)])).complete).toBe(false);
  expect(planned(job([sheet(12, 12, { margins })], [blank(12, 11.5, 1)])).sheets[0]?.tree).toMatchObject({
    is: 'blank',
  });
  expect(planned(job([sheet(12, 12)], [blank(4, 12, 3)], { kerf: ticks(1) })).counts.sheets).toBe(2);
  expect(planned(job([sheet(12, 12)], [blank(6, 12, 1)], { kerf: inches(6) })).complete).toBe(true);
});

test('the cheaper papers are used where every paper has a price', () => {
  const dear = sheet(12, 12, { id: 'dear', price: 3 });
  const cheap = sheet(6, 12, { id: 'cheap', price: 1 });
  const plan = planned(job([dear, cheap], [blank(6, 6, 4)]));
  expect(plan.sheets.map(({ paper, copies }) => [paper, copies])).toEqual([['cheap', 2]]);
  expect(plan.proof).toMatchObject({ lowerBound: 2, fewestSheets: true });
});

test('equal blanks of other names and turns are one kind to the planner, and each gets its own number back', () => {
  const task = job([sheet(12, 12)], [blank(4, 6, 3, { id: 'wide' }), blank(6, 4, 3, { id: 'tall' })]);
  const plan = planned(task);
  expect(plan.counts.sheets).toBe(1);
  expect(plan.complete).toBe(true);
});

test('the most sets are found and proven, and a job without a limit is refused', () => {
  const task = job([sheet(8.5, 11, { sheets: 4 })], [blank(4.25, 5.5, 2)]);
  const plan = mostSets(task);
  expect(checkPlan(task, plan)).toEqual([]);
  expect(plan).toMatchObject({ sets: 8, complete: true, proof: { mostSets: true } });
  expect(() => mostSets(job([sheet(12, 12)], [blank(1, 1, 1)]))).toThrow(CutJobError);
  const none = mostSets(job([sheet(8.5, 11, { sheets: 0 })], [blank(4.25, 5.5, 2)]));
  expect(none).toMatchObject({ sets: 1, complete: false, unmade: [{ quantity: 2, reason: 'out of sheets' }] });
});

test('a huge sheet of tiny blanks is planned without going too deep', () => {
  const plan = planned(job([sheet(3000, 3000)], [blank(1, 1, 50_000), blank(1.5, 2.25, 7)]), 50_000);
  expect(plan.complete).toBe(true);
  expect(plan.counts.sheets).toBeLessThan(20);
});

test('large quantities are planned by repeating layouts', () => {
  const plan = planned(job([sheet(12, 12)], [blank(4, 5.25, 30_000), blank(3, 3, 20_000)]));
  expect(plan.complete).toBe(true);
  expect(plan.counts.layouts).toBeLessThan(10);
});

test.each<readonly [string, CutJob, string]>([
  ['a side of nothing', job([sheet(12, 12)], [blank(0, 5, 1)]), 'blanks[0].width'],
  ['half a copy', job([sheet(12, 12)], [blank(4, 5, 0.5)]), 'blanks[0].quantity'],
  ['two blanks of one name', job([sheet(12, 12)], [blank(4, 5, 1), blank(4, 5, 1)]), 'blanks[1].id'],
  ['a paper that is not there', job([sheet(12, 12)], [blank(4, 5, 1, { papers: ['z'] })]), 'blanks[0].papers[0]'],
  [
    'margins of the whole sheet',
    job([sheet(2, 2, { margins: { ...NONE, left: inches(2) } })], [blank(1, 1, 1)]),
    'papers[0].margins',
  ],
  ['no paper', job([], [blank(1, 1, 1)]), 'papers'],
  ['a blade of nothing', job([sheet(1, 1)], [blank(1, 1, 1)], { bladeLength: ticks(0) }), 'trimmer.bladeLength'],
  ['too many copies', job([sheet(12, 12)], [blank(1, 1, 100_001)]), 'blanks'],
])('%s is refused by its path', (_name, task, path) => {
  expect(() => planCuts(task)).toThrow(CutJobError);
  try {
    planCuts(task);
  } catch (error) {
    expect(error instanceof CutJobError && error.problems.map((problem) => problem.path)).toContain(path);
  }
});

test('a job with nothing to cut has an empty plan', () => {
  expect(planned(job([sheet(12, 12)], []))).toMatchObject({
    complete: true,
    sheets: [],
    counts: { sheets: 0 },
    largestOffcut: null,
  });
});

test('what no edge-to-edge cut makes and a cut that stops may is not called impossible', () => {
  // By hand: a pinwheel with x1 = 1, x2 = 12, y1 = 9, y2 = 10 gives two; the blade is shorter than the sheet.
  const one = job([sheet(13, 19, { sheets: 1 })], [blank(7, 9, 1)], { bladeLength: ticks(12), stoppedCuts: true });
  expect(leastSheets(one).value).toBe(1);
  expect(planCuts(one).unmade).toMatchObject([{ reason: 'not found within the work budget' }]);
  const never = { ...one, trimmer: { ...one.trimmer, stoppedCuts: false } };
  expect(leastSheets(never).value).toBe(Number.POSITIVE_INFINITY);
  expect(planCuts(never).unmade).toMatchObject([{ reason: 'longer than the blade' }]);
});

test('prices far apart cost no more work than others', () => {
  const dear = sheet(4, 8, { id: 'dear', price: 1e9 });
  const cheap = sheet(7, 6, { id: 'cheap', price: 2.5 });
  const priced = job([dear, cheap], [blank(1, 4, 3, { papers: ['dear'] }), blank(5, 4, 3)]);
  const plan = planCuts(priced);
  expect(checkPlan(priced, plan)).toEqual([]);
  expect(plan.work).toBeLessThan(2 * DEFAULT_WORK);
  // Three of 1 x 4 need one dear sheet, which also takes one of 5 x 4 turned; two more come from cheap sheets (by hand).
  expect(plan.sheets.map(({ paper, copies }) => [paper, copies]).sort()).toEqual([
    ['cheap', 2],
    ['dear', 1],
  ]);
});

test('a number of sets that is missed does not hide a larger one', () => {
  const limited = job(
    [sheet(6, 8, { id: 'p0', sheets: 1, price: 2.5 }), sheet(6, 6, { id: 'p1', price: 3 })],
    [blank(2, 3, 1, { id: 'b0', papers: ['p0'] }), blank(2, 5, 1, { id: 'b1' })],
    { narrowestStrip: ticks(3) },
  );
  const most = mostSets(limited);
  expect(most.sets).toBeGreaterThanOrEqual(5);
  expect(planCuts(limited, { sets: 5 }).complete).toBe(true);
});
