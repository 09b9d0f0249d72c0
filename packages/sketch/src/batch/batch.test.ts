import { checkPlan, inches, millimetres, planCuts, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleDocument } from '../../../../tests/kit/sample-document.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyEdit } from '../edit/apply-edit.js';
import type { Sketch } from '../model/sketch.js';
import { expectSketch } from '../read/read-sketch.js';
import { planBatch } from './batch-plan.js';
import { batchRecipe } from './batch-recipe.js';
import { pieceOfBlank } from './blank-id.js';
import { cutJobs } from './cut-jobs.js';
import { mixPlan } from './mix-plan.js';
import { type BatchRecipe, CARD_BASE, sketchTrimmer } from './recipe.js';
import { batchYield, sheetsFor } from './yield.js';

const sketch = sampleSketch();
const recipe = batchRecipe(sketch);

/** A folded card and nothing on it: bases of `width` x `height`, opened flat to the right, from one paper. */
function basesOnly(
  card: { width: string; height: string },
  paper: { width: string; height: string; sheets?: number },
): BatchRecipe {
  const document = sampleDocument();
  const ivory = document.papers[0];
  if (!ivory) throw new Error('the sample has papers');
  return batchRecipe(
    expectSketch({
      ...document,
      unit: card.width.endsWith('mm') ? 'mm' : 'in',
      card: { ...card, fold: 'left', base: 'ivory' },
      papers: [{ ...ivory, ...paper }],
      mixes: [],
      punches: [],
      pieces: [],
      variations: [],
      batch: { cards: 9 },
    }),
  );
}

test('a blank is the piece untilted, plus the bite on each punched edge; the base is opened flat', () => {
  const part = (blank: string) => recipe.parts.find((candidate) => candidate.blank === blank);
  expect(part(CARD_BASE)).toMatchObject({ width: inches(8.5), height: inches(5.5), papers: ['ivory'] });
  expect(part('strip')).toMatchObject({ width: inches(3.75), height: inches(1.125) });
  expect(part('greeting')).toMatchObject({ width: inches(2.25), height: inches(0.75) });
});

test('moving, tilting and reordering leave the recipe equal; resizing does not', () => {
  const same = (after: Sketch) => JSON.stringify(batchRecipe(after)) === JSON.stringify(recipe);
  expect(same(applyEdit(sketch, { do: 'place', piece: 'strip', x: inches(0), y: inches(0) }))).toBe(true);
  expect(same(applyEdit(sketch, { do: 'tilt', piece: 'strip', tilt: 30 }))).toBe(true);
  const { x, y, height } = sketch.pieces[2] ?? { x: ticks(0), y: ticks(0), height: ticks(1) };
  expect(same(applyEdit(sketch, { do: 'resize', piece: 'strip', x, y, width: inches(3.5), height }))).toBe(false);
});

test('every card gets every role of a mix once, and two roles of a mix never meet in one paper', () => {
  const mix = mixPlan(recipe, 6);
  expect(mix.roles.map(({ piece }) => piece)).toEqual(['panel', 'strip']);
  expect(mix.deal).toHaveLength(6);
  for (const [panel, strip] of mix.deal) expect([panel, strip].sort()).toEqual(['dots', 'sprig']);
  const jobs = cutJobs(recipe, 6);
  const quantity = (paper: string, blank: string) =>
    jobs.find((job) => job.paper === paper)?.job.blanks.find(({ id }) => id === blank)?.quantity;
  expect([quantity('sprig', 'panel--sprig'), quantity('dots', 'panel--dots')]).toEqual([3, 3]);
  expect(pieceOfBlank('panel--dots')).toBe('panel');
});

test('the blanks of all papers are exactly what the cards need, for any number of cards', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), (cards) => {
      const made = new Map<string, number>();
      for (const { job } of cutJobs(recipe, cards))
        for (const { id, quantity } of job.blanks)
          made.set(pieceOfBlank(id), (made.get(pieceOfBlank(id)) ?? 0) + quantity);
      expect(Object.fromEntries(made)).toEqual(Object.fromEntries(recipe.parts.map(({ blank }) => [blank, cards])));
    }),
  );
});

test('the plan of a batch is valid on every paper, and its totals are the sums', () => {
  const batch = planBatch(recipe, 6);
  for (const { job, plan } of batch.papers) expect(checkPlan(job, plan)).toEqual([]);
  expect(batch.complete).toBe(true);
  expect(batch.sheets).toBe(batch.papers.reduce((total, { plan }) => total + plan.counts.sheets, 0));
  expect(batch.lowerBound).toBeLessThanOrEqual(batch.sheets);
});

test('nine bases at two per letter sheet need five sheets, with room for one more (common practice, no source)', () => {
  const bases = basesOnly({ width: '4.25 in', height: '5.5 in' }, { width: '8.5 in', height: '11 in' });
  const batch = planBatch(bases, 9);
  expect(batch).toMatchObject({ sheets: 5, fewestSheets: true, complete: true });
  expect(sheetsFor(bases, 10)).toBe(5);
  expect(sheetsFor(bases, 11)).toBe(6);
});

test('an A4 sheet gives two A6 cards opened flat to A5 (ISO 216:2007: A4 210 x 297, A5 148 x 210, A6 105 x 148 mm)', () => {
  const bases = basesOnly({ width: '105 mm', height: '148 mm' }, { width: '210 mm', height: '297 mm', sheets: 4 });
  expect(planBatch(bases, 8)).toMatchObject({ sheets: 4, fewestSheets: true });
  expect(batchYield(bases)).toMatchObject({ cards: 8, proven: true, runsOut: ['ivory'] });
});

test('the yield is the most cards that the sheets at hand give; without a limit there is none', () => {
  expect(batchYield(recipe)).toBeNull();
  const limited: BatchRecipe = {
    ...recipe,
    papers: recipe.papers.map((paper) => (paper.id === 'moss' ? { ...paper, sheets: 2 } : paper)),
  };
  const most = batchYield(limited);
  expect(most).toMatchObject({ cards: 12, runsOut: ['moss'] });
  for (const guess of [1, 3, 12, 13, 40, 500, 9_000])
    expect(batchYield(limited, { guess, prove: false })?.cards).toBe(12);
  expect(planBatch(limited, 12).complete).toBe(true);
  expect(planBatch(limited, 13).complete).toBe(false);
});

test('what cannot be made is reported with its reason', () => {
  const small: BatchRecipe = {
    ...recipe,
    papers: recipe.papers.map((paper) => ({ ...paper, width: inches(5), height: inches(5) })),
  };
  const unmade = planBatch(small, 2).papers.flatMap(({ plan }) => plan.unmade);
  expect(unmade).toContainEqual({ blank: CARD_BASE, quantity: 2, reason: 'larger than every sheet' });
});

test('the ruler of the trimmer is the coarsest on which every blank lies, and none when a blank is off every mark', () => {
  expect(sketchTrimmer('in', [inches(2), inches(1 / 16)]).rulerStep).toBe(inches(1 / 16));
  expect(sketchTrimmer('in', [inches(2), inches(3 / 64)]).rulerStep).toBe(inches(1 / 64));
  expect(sketchTrimmer('mm', [millimetres(148.5)]).rulerStep).toBe(millimetres(0.5));
  expect(sketchTrimmer('mm', [ticks(5419)]).rulerStep).toBeNull();
});

test('planning is done by whoever is asked to', () => {
  const asked: string[] = [];
  planBatch(recipe, 2, (job) => {
    asked.push(job.papers[0]?.id ?? '');
    return planCuts(job);
  });
  expect(asked).toEqual(['ivory', 'moss', 'sprig', 'dots']);
});

test('a mix that does not suit four cards and suits five gives five, whatever was guessed', () => {
  const papers = (
    [
      ['a', 5, 5, 1],
      ['b', 11, 6, 1],
      ['c', 4, 4, 3],
    ] as const
  ).map(([id, width, height, sheets]) => ({
    id,
    width: inches(width),
    height: inches(height),
    sheets,
    directional: false,
    price: null,
    margins: { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) },
  }));
  const part = (blank: string) => ({ blank, width: inches(3), height: inches(2), perCard: 1, papers: ['a', 'b', 'c'] });
  const odd: BatchRecipe = {
    ...recipe,
    papers,
    parts: [part('panel'), part('strip')],
    contrast: [['panel', 'strip']],
    centres: [],
  };
  expect([3, 4, 5, 6].map((cards) => planBatch(odd, cards).complete)).toEqual([true, false, true, false]);
  for (const guess of [1, 4, 5, 9]) expect(batchYield(odd, { guess })).toMatchObject({ cards: 5 });
});
