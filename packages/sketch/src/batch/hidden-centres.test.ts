import { type CutJob, checkPlan, inches, leastSheets, planCuts, QUICK_WORK, rect } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { centreSketch, middlePiece, taggedSketch } from '../../../../tests/kit/centre-sketch.js';
import type { Sketch } from '../model/sketch.js';
import { type BatchPlan, type PaperPlan, planBatch } from './batch-plan.js';
import { batchRecipe } from './batch-recipe.js';
import { pieceOfBlank } from './blank-id.js';
import { centreOf, isCentre, realSheets } from './centre-papers.js';
import { cutJobs } from './cut-jobs.js';
import { hiddenCentreOffers } from './hidden-centre-offers.js';
import { hiddenCentres } from './hidden-centres.js';
import { type NearMisses, nearMisses } from './near-miss.js';
import { planForSheets } from './plan-for-sheets.js';
import { type PlanOne, planJob, sparingCentres } from './plan-job.js';
import { rulerStep } from './recipe.js';
import { batchYield } from './yield.js';
import { yieldCurve } from './yield-curve.js';

const quickly: PlanOne = (job) => planCuts(job, { work: QUICK_WORK });

function switchedOff(sketch: Sketch): Sketch {
  return { ...sketch, batch: { ...sketch.batch, hiddenCentres: false } };
}

function mossOf(batch: BatchPlan): PaperPlan {
  const moss = batch.papers.find(({ paper }) => paper === 'moss');
  if (!moss) throw new Error('nothing is cut from moss');
  return moss;
}

/** Blanks on a layout, by piece, for all its copies. */
function blanksOn(layout: PaperPlan['plan']['sheets'][number]): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const [, blank] of JSON.stringify(layout.tree).matchAll(/"blank":"([^"]+)"/g)) {
    const piece = pieceOfBlank(blank ?? '');
    found.set(piece, (found.get(piece) ?? 0) + layout.copies);
  }
  return found;
}

/** Cuts real sheets first, then centres by falling area, and fails where a centre is wanted before its piece is there. */
function expectCuttable({ plan }: PaperPlan): void {
  const area = ({ width, height }: { width: number; height: number }): number => width * height;
  const order = [...plan.sheets].sort(
    (a, b) => Number(isCentre(a.paper)) - Number(isCentre(b.paper)) || area(b) - area(a),
  );
  const there = new Map<string, number>();
  const used = new Map<string, number>();
  for (const layout of order) {
    const centre = centreOf(layout.paper);
    if (centre !== null) {
      used.set(centre, (used.get(centre) ?? 0) + layout.copies);
      expect(used.get(centre)).toBeLessThanOrEqual(there.get(centre) ?? 0);
    }
    for (const [piece, count] of blanksOn(layout)) there.set(piece, (there.get(piece) ?? 0) + count);
  }
}

test('a 4 x 5 1/4 in mat below a 3 3/4 x 5 in panel offers its centre for a tag of the same paper (by hand)', () => {
  const sketch = switchedOff(taggedSketch());
  const centre = { width: inches(3.25), height: inches(4.5) };
  expect(hiddenCentreOffers(sketch)).toEqual([
    {
      piece: 'mat',
      ...centre,
      place: rect(inches(3 / 8), inches(3 / 8), centre.width, centre.height),
      papers: ['moss'],
      coveredBy: ['panel'],
      fits: ['tag'],
    },
  ]);
  expect(batchRecipe(sketch).centres).toEqual([]);
  expect(batchRecipe(taggedSketch()).centres).toEqual([{ piece: 'mat', ...centre }]);
});

test('two tags come out of each centre, so six cards need six sheets and not ten (by hand)', () => {
  // A mat fills its sheet; three tags of 2 x 3 in come from another: two upright and one lying below them.
  const without = planBatch(batchRecipe(switchedOff(taggedSketch(2))), 6);
  expect(mossOf(without).plan.counts.sheets).toBe(10);
  const batch = planBatch(batchRecipe(taggedSketch(2)), 6);
  const { job, plan } = mossOf(batch);
  expect(checkPlan(job, plan)).toEqual([]);
  expect(realSheets(plan)).toBe(6);
  expect(plan.counts.sheets).toBe(12);
  expect(batch.sheets).toBe(without.sheets - 4);
  // The least money is the fewest sheets: what is proven is in sheets.
  expect(plan.proof).toMatchObject({ lowerBound: 6, fewestSheets: true });
  expect(batch).toMatchObject({ complete: true, fewestSheets: true, lowerBound: batch.sheets });
  expectCuttable(mossOf(batch));
});

test('a centre of what was cut from a centre: three pieces of one paper from one sheet a card (by hand)', () => {
  const sketch = centreSketch([
    middlePiece('mat', 'moss', 4, 5.25),
    middlePiece('panel', 'sprig', 3.75, 5),
    middlePiece('frame', 'moss', 3.25, 4.5),
    middlePiece('print', 'sprig', 3, 4.25),
    middlePiece('tag', 'moss', 2.5, 3.75),
  ]);
  const batch = planBatch(batchRecipe(sketch), 6);
  const { job, plan } = mossOf(batch);
  expect(job.papers.map(({ id, sheets, price }) => [id, sheets, price])).toEqual([
    ['moss', null, 1],
    ['moss--centre-of-mat', 6, 0],
    ['moss--centre-of-frame', 6, 0],
  ]);
  expect(checkPlan(job, plan)).toEqual([]);
  expect(plan).toMatchObject({ complete: true, proof: { fewestSheets: true, lowerBound: 6 } });
  expect(realSheets(plan)).toBe(6);
  expectCuttable(mossOf(batch));
});

test('centres that save no sheet are left alone, and no price is lost on the way', () => {
  const sketch = taggedSketch();
  const roomy = {
    ...sketch,
    papers: sketch.papers.map((paper) => ({ ...paper, price: 0.5, width: inches(12), height: inches(12) })),
  };
  const batch = planBatch(batchRecipe(roomy), 1);
  expect(mossOf(batch).job.papers).toHaveLength(2);
  expect(mossOf(batch).plan.sheets.map(({ paper }) => paper)).toEqual(['moss']);
  expect(batch).toMatchObject({ sheets: 3, lowerBound: 3, fewestSheets: true });
  // Half a coin a sheet does not make two sheets one.
  expect(planBatch(batchRecipe(switchedOff(roomy)), 1)).toMatchObject({ sheets: 3, lowerBound: 3 });
});

test('a plan that leaves out a piece does not count on its centre', () => {
  const sketch = taggedSketch(2);
  const short = {
    ...sketch,
    papers: sketch.papers.map((each) => (each.id === 'moss' ? { ...each, sheets: 4 } : each)),
  };
  const { job, plan } = mossOf(planBatch(batchRecipe(short), 6));
  expect(plan.complete).toBe(false);
  expect(plan.sheets.some(({ paper }) => isCentre(paper))).toBe(false);
  expect(checkPlan(job, plan)).toEqual([]);
});

test('the most cards, one sheet more and the curve count on centres (by hand: a sheet a card, two tags from each centre)', () => {
  const sketch = taggedSketch(2, 'as many as possible');
  const limited = {
    ...sketch,
    papers: sketch.papers.map((each) => (each.id === 'moss' ? { ...each, sheets: 5 } : each)),
  };
  const planOne = planForSheets();
  expect(batchYield(batchRecipe(limited), { planOne, oneMore: true })).toMatchObject({
    cards: 5,
    proven: true,
    runsOut: ['moss'],
    oneMore: [{ paper: 'moss', cards: 6, proven: true }],
  });
  // Without centres: five sheets are three mats and six tags.
  expect(batchYield(batchRecipe(switchedOff(limited)), { planOne })).toMatchObject({ cards: 3 });
  const slices = yieldCurve(batchRecipe(limited), { upTo: 7, planOne });
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  const moss = slice.value.map(({ papers }) => papers.find(({ paper }) => paper === 'moss')?.sheets);
  expect(moss).toEqual([1, 2, 3, 4, 5, 6, 7]);
  expect(slice.value.map(({ atHand }) => atHand)).toEqual([true, true, true, true, true, false, false]);
  expect(slice.value.every(({ proven }) => proven)).toBe(true);
});

test('a near miss counts real sheets: a tag of 2 1/4 in, a little narrower, goes into the centre twice (by hand)', () => {
  // 3 1/4 x 4 1/2 in: two of 2 1/4 x 3 in lie on one another, two of 2 3/8 x 3 in do not.
  const sketch = centreSketch(
    [
      middlePiece('mat', 'moss', 4, 5.25),
      middlePiece('panel', 'sprig', 3.75, 5),
      middlePiece('tag', 'moss', 2.375, 3, { perCard: 2 }),
    ],
    4,
  );
  const slices = nearMisses(sketch, { planOne: planForSheets() });
  let slice: IteratorResult<NearMisses, NearMisses> = slices.next();
  while (!slice.done) slice = slices.next();
  const found = slice.value;
  expect(found.sheets).toBe(planBatch(batchRecipe(sketch), 4).sheets);
  const miss = found.misses.find(({ piece }) => piece === 'tag');
  expect(miss).toMatchObject({ to: { width: inches(2.25), height: inches(3) }, proven: true });
  expect(miss?.saves).toEqual([{ paper: 'moss', sheets: mossSheets(sketch) - 4 }]);
});

function mossSheets(sketch: Sketch): number {
  return realSheets(mossOf(planBatch(batchRecipe(sketch), 4)).plan);
}

test('only what is opaque, on the same face and glued later hides; foam does not matter', () => {
  const centres = (sketch: Sketch) => hiddenCentres(sketch, { step: rulerStep('in') }).map(({ piece }) => piece);
  const [mat, panel, tag] = [
    middlePiece('mat', 'moss', 4, 5.25),
    middlePiece('panel', 'sprig', 3.75, 5),
    middlePiece('tag', 'moss', 2, 3),
  ] as const;
  expect(centres(centreSketch([mat, panel, tag]))).toEqual(['mat', 'panel']);
  expect(
    centres(
      centreSketch([
        { ...mat, raise: '1/16 in' },
        { ...panel, raise: '1/8 in' },
      ]),
    ),
  ).toEqual(['mat']);
  expect(centres(centreSketch([mat, { ...panel, face: 'inside' }, tag]))).toEqual(['mat']);
  expect(centres(centreSketch([panel, mat]))).toEqual(['panel']);
  const sketch = centreSketch([mat, panel]);
  const vellum = sketch.papers.map((paper) => (paper.id === 'sprig' ? { ...paper, kind: 'vellum' as const } : paper));
  expect(centres({ ...sketch, papers: vellum })).toEqual([]);
  // A bead between mat and panel would drop through the hole.
  expect(centres(centreSketch([mat, middlePiece('bead', 'ivory', 0.25, 0.25), panel]))).toEqual([]);
});

test('of a piece that a card has twice only the copy on the face gives a centre; a mix gives what it is dealt', () => {
  const twice = centreSketch([
    middlePiece('mat', 'moss', 4, 5.25, { perCard: 2 }),
    middlePiece('panel', 'sprig', 3.75, 5),
    middlePiece('tag', 'moss', 2, 3),
  ]);
  const centres = (sketch: Sketch, paper: string) =>
    cutJobs(batchRecipe(sketch), 6)
      .find((each) => each.paper === paper)
      ?.job.papers.filter(({ id }) => isCentre(id));
  expect(centres(twice, 'moss')).toMatchObject([{ id: 'moss--centre-of-mat', sheets: 6 }]);
  const mixed = centreSketch([
    middlePiece('mat', 'prints', 4, 5.25),
    middlePiece('panel', 'ivory', 3.75, 5),
    middlePiece('tag', 'prints', 2, 3),
  ]);
  expect(centres(mixed, 'sprig')).toMatchObject([{ id: 'sprig--centre-of-mat', sheets: 3 }]);
  expect(centres(mixed, 'dots')).toMatchObject([{ id: 'dots--centre-of-mat', sheets: 3 }]);
});

const eighths = (least: number, most: number) => fc.integer({ min: least * 8, max: most * 8 }).map((n) => n / 8);
const anyPiece = (from: readonly string[], width: readonly [number, number], height: readonly [number, number]) =>
  fc.record({
    from: fc.constantFrom(...from),
    width: eighths(...width),
    height: eighths(...height),
    tilt: fc.constantFrom(0, 0, 0, 5),
    shape: fc.constantFrom('rectangle' as const, 'rectangle' as const, 'ellipse' as const),
    perCard: fc.constantFrom(1, 1, 2),
  });
/** A large piece of moss, something over it, and smaller ones on that. */
const anyPieces = fc
  .tuple(
    anyPiece(['moss'], [3.5, 4], [4.5, 5]),
    anyPiece(['sprig', 'moss'], [2.5, 4], [3.5, 5]),
    fc.array(anyPiece(['moss', 'moss', 'sprig', 'prints'], [1, 3], [1, 3]), { minLength: 1, maxLength: 3 }),
  )
  .map(([mat, panel, others]) => [mat, panel, ...others]);

test('plans with centres are valid, can be cut, and never need a sheet more than plans without', () => {
  let saved = 0;
  fc.assert(
    fc.property(anyPieces, fc.integer({ min: 1, max: 9 }), (pieces, cards) => {
      const sketch = centreSketch(
        pieces.map(({ from, width, height, ...more }, at) => middlePiece(`p${at}`, from, width, height, more)),
        cards,
      );
      const batch = planBatch(batchRecipe(sketch), cards, quickly);
      const without = planBatch(batchRecipe(switchedOff(sketch)), cards, quickly);
      expect(batch.sheets).toBeLessThanOrEqual(without.sheets);
      expect(batch.lowerBound).toBeLessThanOrEqual(batch.sheets);
      expect(batch.fewestSheets).toBe(batch.lowerBound === batch.sheets);
      for (const paper of batch.papers) {
        expect(checkPlan(paper.job, paper.plan)).toEqual([]);
        expectCuttable(paper);
      }
      if (batch.sheets < without.sheets) saved += 1;
    }),
    { numRuns: 50 },
  );
  expect(saved).toBeGreaterThan(10);
});

test('a plan for counting has the real sheets of the thorough one, and its proof is in real sheets', () => {
  const counting = planForSheets();
  for (const cards of [1, 4, 7]) {
    const job = cutJobs(batchRecipe(taggedSketch(3)), cards).find(({ paper }) => paper === 'moss')?.job as CutJob;
    const plan = planJob(job, counting);
    expect(checkPlan(job, plan)).toEqual([]);
    expect(realSheets(plan)).toBe(realSheets(planJob(job, planCuts)));
    if (plan.proof.fewestSheets) expect(plan.proof.lowerBound).toBe(realSheets(plan));
    expect(leastSheets(job).value).toBeLessThanOrEqual(realSheets(plan));
  }
});

test('centres are knife work: where they save no sheet the plan without them is taken, with the proof of the other', () => {
  const job = cutJobs(batchRecipe(taggedSketch(2)), 6).find(({ paper }) => paper === 'moss')?.job as CutJob;
  const using = planCuts(job);
  const plain = { ...using, sheets: using.sheets.filter(({ paper }) => !isCentre(paper)) };
  const even = { ...plain, counts: { ...plain.counts, sheets: realSheets(using) } };
  const worse = { ...even, counts: { ...even.counts, sheets: realSheets(using) + 1 } };
  expect(sparingCentres(using, even)).toMatchObject({
    sheets: even.sheets,
    proof: { fewestSheets: true, lowerBound: 6 },
  });
  expect(sparingCentres(using, worse)).toBe(using);
  expect(sparingCentres(using, { ...even, complete: false })).toBe(using);
  expect(sparingCentres({ ...using, complete: false }, worse)).toBe(worse);
});

test('where the curve asks again with the sheets at hand, there are as many centres as before', () => {
  const sketch = taggedSketch(2);
  const limited = {
    ...sketch,
    papers: sketch.papers.map((each) => (each.id === 'moss' ? { ...each, sheets: 4 } : each)),
  };
  const asked: (readonly (number | null)[])[] = [];
  const wasteful: PlanOne = (job) => {
    const sheets = job.papers.map((paper) => paper.sheets);
    if (job.papers.length > 1) asked.push(sheets);
    const plan = quickly(job);
    const more = sheets[0] === null ? 3 : 0;
    return {
      ...plan,
      counts: { ...plan.counts, sheets: plan.counts.sheets + more },
      proof: { ...plan.proof, lowerBound: 0 },
    };
  };
  const slices = yieldCurve(batchRecipe(limited), { upTo: 3, planOne: wasteful });
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  // Three cards were brought within the four sheets, so two and one need not be asked again.
  expect(asked).toEqual([
    [null, 3],
    [4, 3],
    [null, 2],
    [null, 1],
  ]);
});

test('a size between may be better than the smallest, because a smaller piece hides less (by hand)', () => {
  // The frame goes into the centre of the mat from 3 1/4 in down; below 3 in its own centre is too narrow for the tag.
  const sketch = centreSketch(
    [
      middlePiece('mat', 'moss', 4, 5.25),
      middlePiece('panel', 'sprig', 3.75, 5),
      middlePiece('frame', 'moss', 3.375, 4.5),
      middlePiece('print', 'sprig', 3, 4.5),
      middlePiece('tag', 'moss', 2.5, 4),
    ],
    2,
  );
  const directional = sketch.papers.map((paper) => (paper.id === 'moss' ? { ...paper, directional: true } : paper));
  const slices = nearMisses({ ...sketch, papers: directional }, { planOne: planForSheets(), tolerance: inches(1 / 2) });
  let slice: IteratorResult<NearMisses, NearMisses> = slices.next();
  while (!slice.done) slice = slices.next();
  expect(slice.value.misses.filter(({ piece }) => piece === 'frame')).toMatchObject([
    { to: { width: inches(3.25) }, saves: [{ paper: 'moss', sheets: 2 }] },
  ]);
});
