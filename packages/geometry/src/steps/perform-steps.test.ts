import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomJob } from '../../../../tests/kit/random-job.js';
import type { CutNode } from '../cut/cut-tree.js';
import type { CutJob } from '../cut/job.js';
import type { CutPlan, SheetLayout } from '../cut/plan.js';
import { type Length, ticks } from '../length/length.js';
import { planCuts } from '../plan/plan-cuts.js';
import { performSteps } from './perform-steps.js';
import { stepList } from './step-list.js';
import type { CutAction, StepList, TrimStep } from './trim-step.js';

/** A plan that nobody planned, and the job that it answers: random trees, with pinwheels where there is no kerf. */
interface RandomPlan {
  readonly job: CutJob;
  readonly plan: CutPlan;
}

/** Takes whole numbers from a list of random ones, round and round. */
function dice(numbers: readonly number[]): (below: number) => number {
  let at = 0;
  return (below) => {
    const number = numbers[at % numbers.length] ?? 0;
    at += 1;
    return (number + at) % below;
  };
}

function grow(roll: (below: number) => number, w: number, h: number, kerf: number, depth: number): CutNode {
  const kind = depth === 0 ? 0 : roll(5);
  if (kind === 0) return roll(4) === 0 ? { is: 'offcut' } : { is: 'blank', blank: `${w} x ${h}`, turned: false };
  if (kind === 1 && kerf === 0 && w > 2 && h > 2) {
    const [x1, y1] = [1 + roll(w - 2), 1 + roll(h - 2)];
    const [x2, y2] = [x1 + roll(w - x1), y1 + roll(h - y1)];
    const arm = (width: number, height: number): CutNode =>
      width > 0 && height > 0 ? grow(roll, width, height, kerf, depth - 1) : { is: 'offcut' };
    return {
      is: 'pinwheel',
      hand: roll(2) === 0 ? 'clockwise' : 'counterclockwise',
      x1: ticks(x1),
      x2: ticks(x2),
      y1: ticks(y1),
      y2: ticks(y2),
      top: arm(x2, y1),
      right: arm(w - x2, y2),
      bottom: arm(w - x1, h - y2),
      left: arm(x1, h - y1),
      centre: arm(x2 - x1, y2 - y1),
    };
  }
  const direction = kind % 2 === 0 ? 'vertical' : 'horizontal';
  const across = direction === 'vertical' ? w : h;
  if (across <= kerf + 1) return { is: 'blank', blank: `${w} x ${h}`, turned: false };
  const at = 1 + roll(Math.min(4, across - kerf - 1));
  const part = (length: number): CutNode =>
    direction === 'vertical' ? grow(roll, length, h, kerf, depth - 1) : grow(roll, w, length, kerf, depth - 1);
  // Often several like parts in a row, so that they are cut up together.
  const first = part(at);
  const row = 1 + roll(Math.min(3, Math.floor((across - 1) / (at + kerf))));
  let node = part(across - row * (at + kerf));
  for (let strip = 0; strip < row; strip += 1) node = { is: 'cut', direction, at: ticks(at), first, second: node };
  return node;
}

function countLeaves(node: CutNode, copies: number, counts: Map<string, number>): void {
  if (node.is === 'blank') counts.set(node.blank, (counts.get(node.blank) ?? 0) + copies);
  else if (node.is === 'cut') for (const part of [node.first, node.second]) countLeaves(part, copies, counts);
  else if (node.is === 'pinwheel')
    for (const part of [node.top, node.right, node.bottom, node.left, node.centre]) countLeaves(part, copies, counts);
}

/** Random plans over small sheets, so that settings meet often. `depth`: cuts below one another at most. */
function randomPlan(depth = 5): fc.Arbitrary<RandomPlan> {
  const sheet = fc.record({
    w: fc.integer({ min: 3, max: 12 }),
    h: fc.integer({ min: 3, max: 12 }),
    copies: fc.integer({ min: 1, max: 5 }),
    margin: fc.constantFrom(0, 0, 0, 1),
    numbers: fc.array(fc.nat({ max: 999 }), { minLength: 20, maxLength: 60 }),
  });
  return fc
    .record({ kerf: fc.constantFrom(0, 0, 1), sheets: fc.array(sheet, { minLength: 1, maxLength: 3 }) })
    .map(({ kerf, sheets }) => {
      const counts = new Map<string, number>();
      const length = (n: number): Length => ticks(n);
      const layouts = sheets.map(({ w, h, copies, margin, numbers }, index): SheetLayout => {
        const tree = grow(dice(numbers), w, h, kerf, depth);
        countLeaves(tree, copies, counts);
        const usable = { x: length(margin), y: length(0), width: length(w), height: length(h) };
        return { paper: `p${index}`, copies, width: length(w + margin), height: length(h), usable, tree };
      });
      const total = layouts.reduce((sum, { copies }) => sum + copies, 0);
      const job: CutJob = {
        trimmer: {
          bladeLength: null,
          narrowestStrip: length(0),
          thinnestTrim: length(0),
          kerf: length(kerf),
          rulerStep: null,
          stoppedCuts: true,
        },
        papers: layouts.map(({ paper, width, height, usable }) => ({
          id: paper,
          width,
          height,
          sheets: null,
          directional: false,
          price: null,
          margins: { top: length(0), right: length(0), bottom: length(0), left: usable.x },
        })),
        blanks: [...counts].map(([id, quantity]) => {
          const [width = 0, height = 0] = id.split(' x ').map(Number);
          return { id, width: length(width), height: length(height), quantity, papers: null, turn: false };
        }),
      };
      const plan: CutPlan = {
        sets: 1,
        complete: true,
        sheets: layouts,
        unmade: [],
        proof: { lowerBound: 0, fewestSheets: false, by: 'nothing', mostSets: null },
        counts: { sheets: total, layouts: layouts.length, settings: 0, cuts: 0 },
        largestOffcut: null,
        work: 0,
      };
      return { job, plan };
    });
}

function withSteps(list: StepList, steps: readonly TrimStep[]): StepList {
  return { ...list, steps };
}

/** The step that first makes a part which step `index` handles; -1 when that is a whole sheet. */
function makerOf({ steps }: StepList, index: number): number {
  const step = steps[index];
  const key = JSON.stringify(step?.places[0]);
  return steps.findIndex(
    ({ sheet, gives }) =>
      sheet === step?.sheet && gives.some(({ places }) => places.some((place) => JSON.stringify(place) === key)),
  );
}

/** Calls `check` with the index of every cut of `list`. */
function eachCut(list: StepList, check: (index: number, step: CutAction) => void): void {
  list.steps.forEach((step, index) => {
    if (step.do === 'cut') check(index, step);
  });
}

test('the steps of a planned job, followed to the letter, end with exactly its blanks', () => {
  fc.assert(
    fc.property(randomJob(), fc.integer({ min: 1, max: 5 }), (job, stack) => {
      const plan = planCuts(job, { work: 2_000 });
      const list = stepList(plan, job.trimmer, { stack });
      expect(performSteps(job, plan, list)).toEqual([]);
      expect(list.settings).toBe(plan.counts.settings);
    }),
    { numRuns: 400 },
  );
});

test('so do the steps of any trees, pinwheels inside pinwheels among them', () => {
  fc.assert(
    fc.property(randomPlan(), fc.integer({ min: 1, max: 4 }), ({ job, plan }, stack) => {
      expect(performSteps(job, plan, stepList(plan, job.trimmer, { stack }))).toEqual([]);
    }),
    { numRuns: 1_500 },
  );
});

test('a step left out is missed', () => {
  fc.assert(
    fc.property(randomPlan(4), ({ job, plan }) => {
      const list = stepList(plan, job.trimmer);
      list.steps.forEach((_, index) => {
        const spoilt = withSteps(
          list,
          list.steps.filter((_step, at) => at !== index),
        );
        expect(performSteps(job, plan, spoilt)).not.toEqual([]);
      });
    }),
    { numRuns: 150 },
  );
});

test('a part cannot be cut before the step that makes it', () => {
  fc.assert(
    fc.property(randomPlan(4), ({ job, plan }) => {
      const list = stepList(plan, job.trimmer);
      eachCut(list, (index, step) => {
        const maker = makerOf(list, index);
        const first = list.steps[maker];
        if (!first) return;
        const steps = list.steps.with(maker, step).with(index, first);
        const problems = performSteps(job, plan, withSteps(list, steps)).map(({ problem }) => problem);
        expect(problems.some((problem) => problem.startsWith('there is no part'))).toBe(true);
      });
    }),
    { numRuns: 150 },
  );
});

test('a changed setting, direction, number of cuts, stack or fate is found', () => {
  fc.assert(
    fc.property(randomPlan(4), ({ job, plan }) => {
      const list = stepList(plan, job.trimmer);
      const spoil = (index: number, step: TrimStep) =>
        performSteps(job, plan, withSteps(list, list.steps.with(index, step)));
      eachCut(list, (index, step) => {
        expect(spoil(index, { ...step, setting: ticks(step.setting + 1) })).not.toEqual([]);
        const direction = step.direction === 'vertical' ? 'horizontal' : 'vertical';
        expect(spoil(index, { ...step, direction })).not.toEqual([]);
        expect(spoil(index, { ...step, times: step.times + 1 })).not.toEqual([]);
        expect(spoil(index, { ...step, atOnce: list.stack + 1 })).not.toEqual([]);
        expect(spoil(index, { ...step, pieces: step.pieces - 1 })).not.toEqual([]);
        expect(spoil(index, { ...step, set: !step.set })).not.toEqual([]);
        expect(spoil(index, { ...step, turn: !step.turn })).not.toEqual([]);
        if (step.stop) {
          const stop = { ...step.stop, length: ticks(step.stop.length - 1) };
          expect(spoil(index, { ...step, stop })).not.toEqual([]);
        }
        step.gives.forEach((given, at) => {
          const put = (fate: typeof given.fate) =>
            spoil(index, { ...step, gives: step.gives.with(at, { ...given, fate }) });
          if (given.fate.is !== 'offcut') expect(put({ is: 'offcut', keep: true })).not.toEqual([]);
          if (given.fate.is !== 'part') expect(put({ is: 'part', part: 99 })).not.toEqual([]);
        });
      });
    }),
    { numRuns: 100 },
  );
});

test('a cut longer than the blade, and a blank cut after it is finished, are named', () => {
  const [sample] = fc.sample(randomPlan(), { numRuns: 1, seed: 3 });
  if (!sample) throw new Error('a sample was asked for');
  const { job, plan } = sample;
  const list = stepList(plan, job.trimmer);
  const trimmer = { ...job.trimmer, bladeLength: ticks(1) };
  expect(performSteps({ ...job, trimmer }, plan, list).map(({ problem }) => problem)).toContainEqual(
    expect.stringContaining('the blade is 1'),
  );
  const at = list.steps.findIndex((step) => step.gives.some(({ fate }) => fate.is === 'blank'));
  const maker = list.steps[at];
  const given = maker?.gives.find(({ fate }) => fate.is === 'blank');
  if (maker?.do !== 'cut' || !given) throw new Error('the sample has a cut that makes a blank');
  const pieces = (given.places.length * maker.pieces) / maker.places.length;
  const again: CutAction = {
    ...maker,
    ...given,
    part: null,
    pieces,
    setting: ticks(1),
    set: true,
    turn: false,
    times: 1,
  };
  const problems = performSteps(job, plan, withSteps(list, list.steps.toSpliced(at + 1, 0, again)));
  expect(problems.map(({ problem }) => problem)).toContainEqual(expect.stringContaining('cuts a finished blank'));
});

/** Three sheets of nine squares, and a pinwheel on a sheet with a margin; every rule of the trimmer can be broken. */
function known(): RandomPlan {
  const length = (n: number): Length => ticks(n);
  const square: CutNode = { is: 'blank', blank: 'square', turned: false };
  const strips = (direction: 'vertical' | 'horizontal', part: CutNode): CutNode => {
    const rest: CutNode = { is: 'cut', direction, at: length(4), first: part, second: part };
    return { is: 'cut', direction, at: length(4), first: part, second: rest };
  };
  const photo = (turned: boolean): CutNode => ({ is: 'blank', blank: 'photo', turned });
  const [x1, x2, y1, y2] = [length(5), length(7), length(5), length(7)];
  const arms = { top: photo(true), right: photo(false), bottom: photo(true), left: photo(false) };
  const turned: CutNode = { is: 'pinwheel', hand: 'clockwise', x1, x2, y1, y2, ...arms, centre: { is: 'offcut' } };
  const none = length(0);
  const usable = (x: number) => ({ x: length(x), y: none, width: length(12), height: length(12) });
  const margins = (left: number) => ({ top: none, right: none, bottom: none, left: length(left) });
  const paper = { height: length(12), sheets: null, directional: false, price: null };
  const blank = { papers: null, turn: true };
  const sheets: readonly SheetLayout[] = [
    {
      paper: 'plain',
      copies: 3,
      width: length(12),
      height: length(12),
      usable: usable(0),
      tree: strips('vertical', strips('horizontal', square)),
    },
    { paper: 'edged', copies: 1, width: length(13), height: length(12), usable: usable(1), tree: turned },
  ];
  return {
    job: {
      trimmer: {
        bladeLength: null,
        narrowestStrip: none,
        thinnestTrim: none,
        kerf: none,
        rulerStep: null,
        stoppedCuts: true,
      },
      papers: [
        { ...paper, id: 'plain', width: length(12), margins: margins(0) },
        { ...paper, id: 'edged', width: length(13), margins: margins(1) },
      ],
      blanks: [
        { ...blank, id: 'square', width: length(4), height: length(4), quantity: 27 },
        { ...blank, id: 'photo', width: length(5), height: length(7), quantity: 4 },
      ],
    },
    plan: {
      sets: 1,
      complete: true,
      sheets,
      unmade: [],
      proof: { lowerBound: 0, fewestSheets: false, by: 'nothing', mostSets: null },
      counts: { sheets: 4, layouts: 2, settings: 3, cuts: 0 },
      largestOffcut: null,
      work: 0,
    },
  };
}

type Spoil = (job: CutJob, list: StepList) => readonly [CutJob, StepList];

/** Changes the first step that is `like` this. */
function changed(like: (step: TrimStep) => boolean, change: object): Spoil {
  return (job, list) => {
    const at = list.steps.findIndex(like);
    const step = list.steps[at];
    if (!step) throw new Error('the known plan has no such step');
    return [job, withSteps(list, list.steps.with(at, { ...step, ...change }))];
  };
}

const stopped = (step: TrimStep): boolean => step.do === 'cut' && step.stop !== null;
const through = (step: TrimStep): boolean => step.do === 'cut' && step.stop === null;
const again = { x: 0, y: 0, width: 12, height: 12 };

const withTrimmer =
  (rules: Partial<CutJob['trimmer']>): Spoil =>
  (job, list) => [{ ...job, trimmer: { ...job.trimmer, ...rules } }, list];

const SPOILT: readonly (readonly [problem: string, spoil: Spoil])[] = [
  ['the guide stands at', changed(through, { set: false })],
  ['the work lies the other way round', changed(through, { turn: true })],
  ['a stack of 9, at most 2', changed(through, { atOnce: 9 })],
  ['stacks of', changed(through, { stacks: 7 })],
  ['pieces told', changed(through, { pieces: 2 })],
  ['there is no layout 5', changed(through, { sheet: 5 })],
  ['part 3 is named', changed(through, { part: 3 })],
  ['a stack of unlike parts', changed(through, { width: ticks(11) })],
  ['one part is named twice', changed(through, { places: [again, again], pieces: 6, stacks: 3 })],
  ['do not meet as a pinwheel', changed(stopped, { stop: { start: 'left', length: ticks(6) } })],
  ['the margins are not those', changed((step) => step.do === 'margins', { margins: { left: ticks(2) } })],
  ['nothing is said of the part', changed(through, { gives: [] })],
  ['which this trimmer does not make', withTrimmer({ stoppedCuts: false })],
  ['the blade is 11', withTrimmer({ bladeLength: ticks(11) })],
  ['nothing to hold', withTrimmer({ narrowestStrip: ticks(9) })],
  ['trims too little', withTrimmer({ thinnestTrim: ticks(5) })],
  ['off the ruler', withTrimmer({ rulerStep: ticks(3) })],
  [
    'photo must not be turned',
    (job, list) => [{ ...job, blanks: job.blanks.map((b) => ({ ...b, turn: false })) }, list],
  ],
  [
    'photo must not come from',
    (job, list) => [{ ...job, blanks: job.blanks.map((b) => ({ ...b, papers: [] })) }, list],
  ],
  [
    'it is 6 x 6',
    (job, list) => [{ ...job, blanks: job.blanks.map((b) => ({ ...b, width: ticks(6), height: ticks(6) })) }, list],
  ],
  ['28 wanted', (job, list) => [{ ...job, blanks: job.blanks.map((b) => ({ ...b, quantity: b.quantity + 1 })) }, list]],
  ['settings told', (job, list) => [job, { ...list, settings: 99 }]],
  ['turns told', (job, list) => [job, { ...list, turns: 99 }]],
];

test('the known plan performs', () => {
  const { job, plan } = known();
  expect(performSteps(job, plan, stepList(plan, job.trimmer))).toEqual([]);
});

test.each(SPOILT)('spoilt: %s', (problem, spoil) => {
  const { job, plan } = known();
  const problems = performSteps(...withPlan(spoil(job, stepList(plan, job.trimmer)), plan));
  expect(problems.map((found) => found.problem)).toContainEqual(expect.stringContaining(problem));
});

function withPlan([job, list]: readonly [CutJob, StepList], plan: CutPlan): [CutJob, CutPlan, StepList] {
  return [job, plan, list];
}

test('the random plans have what is to be tried: pinwheels, several strips at once, stacks, turns', () => {
  const lists = fc.sample(randomPlan(), { numRuns: 300, seed: 1 }).map(({ job, plan }) => stepList(plan, job.trimmer));
  const cuts = lists.flatMap(({ steps }) => steps.filter((step) => step.do === 'cut'));
  const count = (is: (step: CutAction) => boolean): number => cuts.filter(is).length;
  expect(count(({ stop, places }) => stop !== null && places.length > 1)).toBeGreaterThan(20);
  expect(count(({ stop }) => stop === null)).toBeGreaterThan(200);
  expect(count(({ times, atOnce, stacks }) => times > 1 && atOnce > 1 && stacks > 1)).toBeGreaterThan(20);
  expect(count(({ from }) => from === 'right')).toBeGreaterThan(20);
  expect(count(({ turn }) => turn)).toBeGreaterThan(200);
});
