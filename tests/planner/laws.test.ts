import { type CutJob, type CutPlan, checkPlan, improvePlan, type Length, planCuts, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomJob } from '../kit/random-job.js';
import { smallJob } from './small-job.js';

const WORK = 200_000;
const SEED = 1;

function times(length: Length, factor: number): Length {
  return ticks(length * factor);
}

/** The same job with everything wide made high. Directional papers keep their direction: nothing is turned in either. */
function transposed(job: CutJob): CutJob {
  return {
    ...job,
    papers: job.papers.map((paper) => ({
      ...paper,
      width: paper.height,
      height: paper.width,
      margins: {
        top: paper.margins.left,
        left: paper.margins.top,
        bottom: paper.margins.right,
        right: paper.margins.bottom,
      },
    })),
    blanks: job.blanks.map((blank) => ({ ...blank, width: blank.height, height: blank.width })),
  };
}

/** The same job with every length so many times as long. */
function scaled(job: CutJob, factor: number): CutJob {
  const { trimmer } = job;
  return {
    trimmer: {
      ...trimmer,
      bladeLength: trimmer.bladeLength && times(trimmer.bladeLength, factor),
      narrowestStrip: times(trimmer.narrowestStrip, factor),
      thinnestTrim: times(trimmer.thinnestTrim, factor),
      kerf: times(trimmer.kerf, factor),
      rulerStep: trimmer.rulerStep && times(trimmer.rulerStep, factor),
    },
    papers: job.papers.map((paper) => ({
      ...paper,
      width: times(paper.width, factor),
      height: times(paper.height, factor),
    })),
    blanks: job.blanks.map((blank) => ({
      ...blank,
      width: times(blank.width, factor),
      height: times(blank.height, factor),
    })),
  };
}

/** Plans of a job and of the same job put otherwise: both complete or neither, with as many sheets. */
function sameSheets(job: CutJob, other: CutJob): void {
  const [plan, otherPlan] = [planCuts(job, { work: WORK }), planCuts(other, { work: WORK })];
  expect(checkPlan(other, otherPlan)).toEqual([]);
  fc.pre(plan.complete || otherPlan.complete);
  expect([otherPlan.complete, otherPlan.counts.sheets]).toEqual([plan.complete, plan.counts.sheets]);
}

const jobs = smallJob({ sheet: 24, blank: 14, kinds: 6, copies: 6, rules: false });

test('the order of the blanks does not change the number of sheets', () => {
  fc.assert(
    fc.property(
      jobs.chain((job) =>
        fc.tuple(
          fc.constant(job),
          fc.shuffledSubarray([...job.blanks], { minLength: job.blanks.length, maxLength: job.blanks.length }),
        ),
      ),
      ([job, blanks]) => {
        sameSheets(job, { ...job, blanks });
      },
    ),
    { seed: SEED, numRuns: 30 },
  );
});

test('turning the whole job on its side does not change the number of sheets', () => {
  fc.assert(
    fc.property(jobs, (job) => {
      sameSheets(job, transposed(job));
    }),
    { seed: SEED, numRuns: 30 },
  );
});

test('scaling by a whole number does not change the number of sheets', () => {
  fc.assert(
    fc.property(jobs, fc.integer({ min: 2, max: 1000 }), (job, factor) => {
      sameSheets(job, scaled(job, factor));
    }),
    { seed: SEED, numRuns: 30 },
  );
});

test('the same job and work give the same plan', () => {
  fc.assert(
    fc.property(randomJob(), fc.constantFrom(10_000, 100_000), (job, work) => {
      expect(planCuts(structuredClone(job), { work })).toEqual(planCuts(job, { work }));
    }),
    { seed: SEED, numRuns: 30 },
  );
});

/**
 * What a plan costs, in the order of importance that `improvePlan` states: copies unmade, money where every paper has a price, else
 * sheets, then layouts, settings, cuts, and less the area of the largest offcut.
 */
function rank(job: CutJob, plan: CutPlan): readonly number[] {
  const prices = new Map(job.papers.map(({ id, price }) => [id, price]));
  const priced = job.papers.every(({ price }) => price !== null);
  const cost = plan.sheets.reduce(
    (sum, { paper, copies }) => sum + copies * (priced ? (prices.get(paper) ?? 0) : 1),
    0,
  );
  const { layouts, settings, cuts } = plan.counts;
  const { width, height } = plan.largestOffcut ?? { width: 0, height: 0 };
  return [plan.unmade.reduce((sum, { quantity }) => sum + quantity, 0), cost, layouts, settings, cuts, -width * height];
}

function worse(a: readonly number[], b: readonly number[]): boolean {
  const at = a.findIndex((value, index) => value !== b[index]);
  return at >= 0 && (a[at] ?? 0) > (b[at] ?? 0);
}

test('every slice gives a valid plan, none is worse than the one before, and no bound falls', () => {
  let slices = 0;
  fc.assert(
    fc.property(randomJob(), (job) => {
      const search = improvePlan(job, { work: WORK });
      let last: CutPlan | null = null;
      let done = false;
      while (!done) {
        const slice = search.next();
        const plan = slice.value;
        expect(checkPlan(job, plan)).toEqual([]);
        if (last) {
          expect(worse(rank(job, plan), rank(job, last))).toBe(false);
          if (last.complete) expect(plan.proof.lowerBound).toBeGreaterThanOrEqual(last.proof.lowerBound);
          slices += 1;
        }
        last = plan;
        done = slice.done === true;
      }
    }),
    { seed: SEED, numRuns: 40 },
  );
  expect(slices).toBeGreaterThan(100);
});
