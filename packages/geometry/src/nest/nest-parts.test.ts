import fc from 'fast-check';
import { expect, test } from 'vitest';
import packing from '../../../../tests/data/cutting/bin-packing.json';
import { CutJobError } from '../cut/check-job.js';
import type { CutJob, Margins } from '../cut/job.js';
import { inches, type Length, ticks } from '../length/length.js';
import { planCuts } from '../plan/plan-cuts.js';
import { checkNest } from './check-nest.js';
import type { NestJob, NestPart, NestPlan } from './nest-job.js';
import { nestParts } from './nest-parts.js';

const WORK = 20_000;

function around(margin: number): Margins {
  return { top: ticks(margin), right: ticks(margin), bottom: ticks(margin), left: ticks(margin) };
}

type Sizes = readonly (readonly [width: number, height: number, quantity: number])[];

function jobOf(width: number, height: number, sizes: Sizes, more: Partial<NestJob & { readonly turn: boolean }> = {}) {
  const { turn = true, ...rest } = more;
  const sheet = { width: ticks(width), height: ticks(height), sheets: null, directional: false, margins: around(0) };
  const parts = sizes.map(
    ([w, h, quantity], index): NestPart => ({ id: `part-${index}`, width: ticks(w), height: ticks(h), quantity, turn }),
  );
  return { sheet, gap: ticks(0), parts, ...rest } satisfies NestJob;
}

function nested(job: NestJob, work = WORK): NestPlan {
  const plan = nestParts(job, { work });
  expect(checkNest(job, plan)).toEqual([]);
  return plan;
}

/** The same boxes as a job of straight cuts, without gap or margins. */
function straight(job: NestJob): CutJob {
  const none = ticks(0);
  return {
    trimmer: {
      ...{ bladeLength: null, narrowestStrip: none, thinnestTrim: none, kerf: none, rulerStep: null },
      stoppedCuts: false,
    },
    papers: [{ ...job.sheet, id: 'paper', price: null }],
    blanks: job.parts.map((part) => ({ ...part, papers: null })),
  };
}

/**
 * Sheets that rows of parts need, each row as high as its first part (next-fit decreasing height); what may be turned lies
 * on its longer side where it fits so.
 */
function rowsOf(job: NestJob): number {
  const { sheet, gap } = job;
  const [width, height] = [
    sheet.width - sheet.margins.left - sheet.margins.right,
    sheet.height - sheet.margins.top - sheet.margins.bottom,
  ];
  const all = job.parts.flatMap((part) => {
    const [long, short] = [Math.max(part.width, part.height), Math.min(part.width, part.height)];
    const turns = part.turn && !sheet.directional;
    const box = !turns ? part : long <= width ? { width: long, height: short } : { width: short, height: long };
    return Array.from({ length: part.quantity }, () => box);
  });
  all.sort((a, b) => b.height - a.height || b.width - a.width);
  let [sheets, x, top, row] = [0, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0];
  for (const part of all) {
    if (x + part.width > width) [x, top, row] = [0, top + row, part.height + gap];
    if (top + part.height > height) [sheets, x, top, row] = [sheets + 1, 0, 0, part.height + gap];
    x += part.width + gap;
  }
  return sheets;
}

const length = (most: number): fc.Arbitrary<Length> => fc.integer({ min: 1, max: most }).map(ticks);
const margin = fc.constantFrom(0, 0, 1, 3).map(ticks);
const randomNest: fc.Arbitrary<NestJob> = fc
  .record({
    sheet: fc.record({
      width: fc.integer({ min: 12, max: 40 }).map(ticks),
      height: fc.integer({ min: 12, max: 40 }).map(ticks),
      sheets: fc.option(fc.integer({ min: 0, max: 3 }), { nil: null, freq: 1 }),
      directional: fc.boolean(),
      margins: fc.record({ top: margin, right: margin, bottom: margin, left: margin }),
    }),
    gap: fc.constantFrom(0, 0, 1, 2).map(ticks),
    parts: fc.array(
      fc.record({ width: length(20), height: length(20), quantity: fc.nat({ max: 6 }), turn: fc.boolean() }),
      { minLength: 1, maxLength: 6 },
    ),
  })
  .map((job) => ({ ...job, parts: job.parts.map((part, index) => ({ ...part, id: `part-${index}` })) }));

test('any job: inside the margins, the gap kept, nothing lost, the same answer twice', () => {
  fc.assert(
    fc.property(randomNest, (job) => {
      expect(nestParts(job, { work: WORK })).toEqual(nested(job));
    }),
    { numRuns: 150 },
  );
});

test('never more sheets than rows of parts, nor, without gap and margin, than straight cuts of the same boxes', () => {
  fc.assert(
    fc.property(randomNest, (limited) => {
      const job = { ...limited, sheet: { ...limited.sheet, sheets: null } };
      const plan = nested(job);
      if (plan.complete) expect(plan.sheets).toBeLessThanOrEqual(rowsOf(job));
      const bare = { ...job, gap: ticks(0), sheet: { ...job.sheet, margins: around(0) } };
      const cuts = planCuts(straight(bare), { work: WORK });
      expect(nested(bare).sheets).toBeLessThanOrEqual(cuts.counts.sheets);
    }),
    { numRuns: 150 },
  );
});

/** Whether the boxes fit on one sheet, by trying every place on whole ticks. */
function fitsOnOne(width: number, height: number, boxes: readonly (readonly [number, number, boolean])[]): boolean {
  const taken = new Set<number>();
  const tryNext = (index: number): boolean => {
    const box = boxes[index];
    if (!box) return true;
    const [w, h, turn] = box;
    for (const [across, down] of turn ? [[w, h] as const, [h, w] as const] : [[w, h] as const]) {
      for (let x = 0; x + across <= width; x += 1)
        for (let y = 0; y + down <= height; y += 1) {
          const cells = Array.from(
            { length: across * down },
            (_, at) => x + (at % across) + 64 * (y + Math.floor(at / across)),
          );
          if (cells.some((cell) => taken.has(cell))) continue;
          for (const cell of cells) taken.add(cell);
          if (tryNext(index + 1)) return true;
          for (const cell of cells) taken.delete(cell);
        }
    }
    return false;
  };
  return tryNext(0);
}

test('what fits on one sheet by trying every place is never said to need two, and is found', () => {
  let [one, found] = [0, 0];
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 })), {
        minLength: 2,
        maxLength: 5,
      }),
      fc.boolean(),
      (sizes, turn) => {
        const job = jobOf(
          5,
          6,
          sizes.map(([w, h]) => [w, h, 1]),
          { turn },
        );
        const plan = nested(job);
        const boxes = [...sizes].sort((a, b) => b[0] * b[1] - a[0] * a[1]).map(([w, h]) => [w, h, turn] as const);
        const fits = fitsOnOne(5, 6, boxes);
        if (fits) one += 1;
        if (fits && plan.sheets === 1) found += 1;
        if (fits) expect(plan.proof.lowerBound).toBe(1);
        else expect(plan.sheets).toBeGreaterThan(1);
      },
    ),
    { numRuns: 300, seed: 7 },
  );
  expect(one).toBeGreaterThan(60);
  expect(found).toBe(one);
});

test('a pinwheel of four strips around a square is one sheet, which straight cuts cannot make (plain geometry)', () => {
  const job = jobOf(30, 30, [
    [17, 13, 4],
    [4, 4, 1],
  ]);
  expect(planCuts(straight(job)).counts.sheets).toBe(2);
  expect(nested(job)).toMatchObject({ sheets: 1, proof: { lowerBound: 1, fewestSheets: true } });
});

test.each([
  // Berkey and Wang (1987), Martello and Vigo (1998), from the file's own source; values of any packing and any turn.
  'Class_01_20_1',
  'Class_01_20_2',
  'Class_02_20_1',
  'Class_04_20_1',
  'Class_06_20_1',
  'Class_07_20_1',
  'Class_08_20_1',
  'Class_09_20_1',
  'Class_10_20_1',
])('%s of the literature needs no more sheets than is known, upright and turned', (name) => {
  const instance = packing.instances.find((each) => each.name === name);
  if (!instance) throw new Error(`There is no ${name}.`);
  const sizes = instance.items.map(({ w, h, demand }) => [w, h, demand] as const);
  for (const [turn, known] of [
    [false, instance.known.optimal],
    [true, instance.knownRotated.optimal],
  ] as const) {
    const plan = nested(jobOf(instance.sheet.w, instance.sheet.h, sizes, { turn }), 200_000);
    if (known === null) continue;
    expect(plan.sheets).toBeLessThanOrEqual(known);
    expect(plan.proof.lowerBound).toBeLessThanOrEqual(plan.sheets);
  }
});

test('two 5 1/2 x 8 1/2 in halves fill a Letter sheet without a gap, and need two sheets with one (plain sums)', () => {
  const halves = (gap: number) => jobOf(inches(8.5), inches(11), [[inches(8.5), inches(5.5), 2]], { gap: ticks(gap) });
  expect(nested(halves(0))).toMatchObject({ sheets: 1, proof: { fewestSheets: true } });
  expect(nested(halves(1))).toMatchObject({ sheets: 2, proof: { lowerBound: 2, fewestSheets: true } });
});

test('sheets alike are copies, also when parts of one size have different names', () => {
  const plan = nested(
    jobOf(20, 10, [
      [10, 10, 6],
      [10, 10, 6],
    ]),
  );
  expect(plan.layouts.map(({ copies }) => copies).reduce((sum, copies) => sum + copies)).toBe(6);
  expect(plan.layouts.length).toBeLessThanOrEqual(2);
});

test('a directional paper turns nothing; what is left out says why', () => {
  const sheet = { width: ticks(10), height: ticks(20), sheets: 1, directional: true, margins: around(1) };
  const job = {
    ...jobOf(10, 20, [
      [12, 4, 1],
      [8, 8, 3],
      [9, 2, 1],
    ]),
    sheet,
  }; // prettier-ignore
  expect(nested(job)).toMatchObject({
    complete: false,
    sheets: 1,
    unmade: [
      { part: 'part-0', quantity: 1, reason: 'larger than the sheet within its margins' },
      { part: 'part-1', quantity: 1, reason: 'out of sheets' },
      { part: 'part-2', quantity: 1, reason: 'larger than the sheet within its margins' },
    ],
    proof: { fewestSheets: false, by: 'not everything is made' },
  });
});

test('a job that cannot be nested is refused by path, value and what is allowed', () => {
  const job = jobOf(10, 10, [[5, 5, 1]]);
  const refused = (bad: NestJob): readonly string[] => {
    try {
      nestParts(bad);
    } catch (error) {
      if (error instanceof CutJobError) return error.problems.map(({ message }) => message);
      throw error;
    }
    return [];
  };
  expect(refused({ ...job, gap: -1 as Length })).toEqual(['gap is -1; allowed: a whole number of ticks, 0 or more.']);
  expect(refused({ ...job, sheet: { ...job.sheet, margins: around(5) } })).toEqual([
    'sheet.margins is "all of the sheet"; allowed: margins that leave something of it.',
  ]);
  const [part] = job.parts;
  if (!part) throw new Error('The job has a part.');
  expect(refused({ ...job, parts: [part, { ...part, quantity: 1.5 }] })).toEqual([
    'parts[1].quantity is 1.5; allowed: a whole number, 0 or more.',
    'parts[1].id is "part-0"; allowed: an id not yet used.',
  ]);
});

test('the check finds what is wrong: a box too near, outside, turned, lost, or a false claim', () => {
  const job = jobOf(20, 20, [[10, 6, 2]], { gap: ticks(2) });
  const plan = nested(job);
  const [layout] = plan.layouts;
  const [first, second] = layout?.places ?? [];
  if (!layout || !first || !second) throw new Error('The plan has two places.');
  const with2 = (place: Partial<typeof second>, more: Partial<NestPlan> = {}) =>
    checkNest(job, { ...plan, layouts: [{ ...layout, places: [first, { ...second, ...place }] }], ...more }).join();
  expect(with2({})).toBe('');
  expect(with2({ x: first.x, y: ticks(first.y + 7), turned: first.turned })).toContain('too near');
  expect(with2({ x: ticks(19) })).toContain('outside the margins');
  expect(with2({ part: 'nothing' })).toContain('there is no part nothing');
  expect(with2({}, { unmade: [{ part: 'part-0', quantity: 1, reason: 'out of sheets' }] })).toContain('1 unmade');
  expect(with2({}, { proof: { lowerBound: 2, fewestSheets: true, by: 'area' } })).toContain('the bound is 2');
  expect(
    checkNest(
      { ...job, sheet: { ...job.sheet, directional: true } },
      { ...plan, layouts: [{ ...layout, places: [first, { ...second, turned: true }] }] },
    ).join(),
  ).toContain('must not be turned'); // prettier-ignore
});
