import { checkPlan, inches, millimetres, planCuts, QUICK_WORK, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleDocument } from '../../../../tests/kit/sample-document.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { applyEdit } from '../edit/apply-edit.js';
import { matPlace } from '../edit/mats.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { expectSketch, readEdit } from '../read/read-sketch.js';
import { writeEdit } from '../read/write-sketch.js';
import { type PlanOne, planBatch } from './batch-plan.js';
import { batchRecipe } from './batch-recipe.js';
import { type NearMisses, type NearMissOptions, nearMisses } from './near-miss.js';
import { matsOf, shrinkAbout, smallerEdits, smallerMarks } from './near-miss-edit.js';
import { planForSheets } from './plan-for-sheets.js';
import { rulerStep } from './recipe.js';
import { batchYield } from './yield.js';

const quickly: PlanOne = (job) => planCuts(job, { work: QUICK_WORK });

function missesOf(sketch: Sketch, options: NearMissOptions = {}): NearMisses {
  const slices = nearMisses(sketch, { planOne: quickly, ...options });
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  return slice.value;
}

function pieceIn(sketch: Sketch, id: string): Piece {
  const found = sketch.pieces.find((piece) => piece.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

/** That `misses` of `sketch` are what they say: planned again, within the tolerance, on the ruler, mats even. */
function expectReal(sketch: Sketch, { cards, misses, tolerance }: NearMisses): void {
  const text = JSON.stringify(sketch);
  for (const { piece, mats, edit, change, from, to, saves, adds } of misses) {
    const after = applyEdit(sketch, edit);
    const [before, smaller] = [pieceIn(sketch, piece), pieceIn(after, piece)];
    expect([before.width, before.height]).toEqual([from.width, from.height]);
    expect([smaller.width, smaller.height]).toEqual([to.width, to.height]);
    expect([from.width - to.width, from.height - to.height]).toEqual([change.width, change.height]);
    expect(Math.max(change.width, change.height)).toBeLessThanOrEqual(tolerance);
    expect(Math.min(change.width, change.height)).toBe(0);
    for (const id of mats) {
      const mat = pieceIn(after, id);
      if (!mat.mats) throw new Error(`${id} is a mat`);
      expect(mat).toMatchObject(matPlace(pieceIn(after, mat.mats.piece), mat.mats.reveal));
    }
    expect(readEdit(JSON.parse(JSON.stringify(writeEdit(edit, sketch.unit))), sketch.unit)).toEqual({ ok: true, edit });
    const back = applyEdit(after, { do: 'resize', piece, x: before.x, y: before.y, ...from });
    expect(JSON.stringify(back)).toBe(text);
    if (adds > 0) {
      const again = batchYield(batchRecipe(after), { planOne: quickly, prove: false });
      expect(again?.cards).toBeGreaterThanOrEqual((cards ?? 0) + adds);
      expect(batchYield(batchRecipe(sketch), { planOne: quickly, prove: false })?.cards).toBe(cards);
      expect(saves).toEqual([]);
    } else {
      const batches = [sketch, after].map((each) => planBatch(batchRecipe(each), cards ?? 0, quickly));
      const sheets = batches.map(({ papers }) => new Map(papers.map(({ paper, plan }) => [paper, plan.counts.sheets])));
      for (const { job, plan } of batches[1]?.papers ?? []) expect(checkPlan(job, plan)).toEqual([]);
      expect(batches.every(({ complete }) => complete)).toBe(true);
      const less = [...(sheets[0] ?? [])].map(([paper, count]) => ({
        paper,
        sheets: count - (sheets[1]?.get(paper) ?? 0),
      }));
      expect(less.filter((each) => each.sheets !== 0)).toEqual(saves);
      expect(saves.length).toBeGreaterThan(0);
    }
  }
  expect(JSON.stringify(sketch)).toBe(text);
}

test('strips: 2 in instead of 2 1/8 in come six from a 12 in sheet instead of five, twelve from two sheets (by hand)', () => {
  const sketch = stripSketch('2 1/8 in');
  const found = missesOf(sketch, { planOne: planForSheets() });
  expect(found).toMatchObject({ cards: 12, sheets: 6 + 3 });
  expect(found.misses).toEqual([
    {
      piece: 'strip',
      mats: [],
      edit: {
        do: 'resize',
        piece: 'strip',
        x: inches(1 / 8),
        y: inches(1 + 1 / 16),
        width: inches(4),
        height: inches(2),
      },
      from: { width: inches(4), height: inches(2.125) },
      to: { width: inches(4), height: inches(2) },
      change: { width: ticks(0), height: inches(1 / 8) },
      saves: [{ paper: 'moss', sheets: 1 }],
      adds: 0,
      proven: true,
    },
  ]);
  expectReal(sketch, found);
});

test('with two sheets at hand the same change adds two cards: twelve instead of ten (by hand)', () => {
  const sketch = stripSketch('2 1/8 in', { moss: 2 }, { batch: { cards: 'as many as possible' } });
  const found = missesOf(sketch, { planOne: planForSheets() });
  expect(found.cards).toBe(10);
  expect(found.misses).toMatchObject([{ piece: 'strip', adds: 2, saves: [], proven: true, to: { height: inches(2) } }]);
  expectReal(sketch, found);
  // Asked for eleven, one card more is all that is wanted.
  expect(missesOf(sketch, { cards: 11 }).misses).toMatchObject([{ adds: 1 }]);
});

test('a blank that is a little larger than its sheet is a near miss too', () => {
  const sketch = stripSketch('12 1/16 in');
  expect(missesOf(sketch, { cards: 2 })).toMatchObject({
    cards: 0,
    misses: [{ piece: 'strip', adds: 2, change: { height: inches(1 / 16) }, proven: true }],
  });
});

test('no suggestion beyond the tolerance, none for what is to stay, none without a number to compare', () => {
  const sketch = stripSketch('2 1/8 in');
  expect(missesOf(sketch, { tolerance: inches(1 / 16) }).misses).toEqual([]);
  expect(missesOf(sketch, { keep: new Set(['strip']) }).misses).toEqual([]);
  expect(missesOf(stripSketch('2 in')).misses).toEqual([]);
  expect(missesOf(sketch, { cards: 'as many as possible' })).toMatchObject({ cards: null, misses: [] });
});

test('a mat goes along, and its reveal stays; a mat that is to stay keeps its piece', () => {
  const strip = sampleDocument().pieces.find(({ id }) => id === 'strip');
  if (!strip) throw new Error('the sample has a strip');
  const common = { ...strip, x: '1/4 in', punched: {} };
  const sketch = stripSketch(
    '2 in',
    {},
    {
      pieces: [
        {
          ...common,
          id: 'strip-mat',
          x: '1/8 in',
          y: '2 7/8 in',
          from: 'moss',
          width: '4 in',
          height: '2 1/8 in',
          mats: { piece: 'strip', reveal: '1/8 in' },
        },
        { ...common, from: 'ivory', width: '3 3/4 in', height: '1 7/8 in' },
      ],
    },
  );
  const found = missesOf(sketch);
  expect(found.misses.map(({ piece, mats }) => [piece, mats])).toContainEqual(['strip', ['strip-mat']]);
  expectReal(sketch, found);
  expect(missesOf(sketch, { keep: new Set(['strip-mat']) }).misses).toEqual([]);
});

test('a punched edge keeps its bite: the blank, not the piece, decides (by hand)', () => {
  const pieces = stripSketch('2 in').pieces;
  const punched: Sketch = {
    ...stripSketch('2 in'),
    pieces: pieces.map((piece) => ({ ...piece, punched: { bottom: 'scallops' } })),
  };
  // 2 in and a bite of 1/8 in: blanks of 2 1/8 in, five to a sheet; at 1 7/8 in six.
  expect(missesOf(punched).misses).toMatchObject([{ to: { height: inches(1.875) }, saves: [{ sheets: 1 }] }]);
});

test('every suggestion is real, for any strip, number of cards, tolerance and sheets at hand', () => {
  let suggested = 0;
  fc.assert(
    fc.property(
      fc.integer({ min: 16, max: 70 }),
      fc.integer({ min: 1, max: 20 }),
      fc.integer({ min: 0, max: 6 }),
      fc.option(fc.integer({ min: 1, max: 3 })),
      (sixteenths, cards, tolerance, moss) => {
        const sheets = moss === null ? {} : { moss };
        const sketch = stripSketch(`${sixteenths}/16 in`, sheets, {
          batch: { cards: moss === null ? cards : 'as many as possible' },
        });
        const found = missesOf(sketch, { tolerance: inches(tolerance / 16) });
        suggested += found.misses.length;
        expectReal(sketch, found);
      },
    ),
    { numRuns: 40 },
  );
  expect(suggested).toBeGreaterThan(10);
});

test('the suggestions of a whole sketch are real, in order, and at most one for a piece and gain', () => {
  const sketch = sampleSketch();
  const found = missesOf(sketch, { cards: 13, tolerance: inches(1 / 2) });
  expect(found.misses.length).toBeGreaterThan(0);
  expectReal(sketch, found);
  const largest = found.misses.map(({ change }) => Math.max(change.width, change.height));
  expect(largest).toEqual([...largest].sort((a, b) => a - b));
  const keys = found.misses.map(({ piece, saves, adds }) => JSON.stringify([piece, saves, adds]));
  expect(new Set(keys).size).toBe(keys.length);
  expect(missesOf(sketch, { cards: 13, tolerance: inches(1 / 2) })).toEqual(found);
});

test('what saves a sheet of one paper and costs one of another is no gain', () => {
  // The strip is off the marks of 1/16 in, so its change brings all papers to a coarser ruler.
  const sketch = stripSketch('2 9/64 in');
  const costly: PlanOne = (job) => {
    const plan = quickly(job);
    const more = job.papers[0]?.id === 'ivory' && job.trimmer.rulerStep === rulerStep('in') ? 1 : 0;
    return { ...plan, counts: { ...plan.counts, sheets: plan.counts.sheets + more } };
  };
  const tolerance = inches(3 / 16);
  expect(missesOf(sketch, { tolerance }).misses).toMatchObject([{ to: { height: inches(2) } }]);
  expect(missesOf(sketch, { tolerance, planOne: costly }).misses).toEqual([]);
});

test('the marks below a length, and the middle kept as far as the ruler allows', () => {
  const sixteenth = rulerStep('in');
  expect(smallerMarks(inches(2), inches(1 / 8), sixteenth)).toEqual([inches(31 / 16), inches(15 / 8)]);
  expect(smallerMarks(inches(2 + 1 / 64), inches(1 / 8), sixteenth)).toEqual([inches(2), inches(31 / 16)]);
  expect(smallerMarks(sixteenth, inches(1), sixteenth)).toEqual([]);
  expect(smallerMarks(millimetres(20), millimetres(3), rulerStep('mm'))).toEqual([19, 18, 17].map(millimetres));
  fc.assert(
    fc.property(fc.integer({ min: -9_999, max: 99_999 }), fc.integer({ min: 1, max: 9 }), (at, steps) => {
      const piece = { ...pieceIn(sampleSketch(), 'strip'), x: ticks(at) };
      const to = ticks(piece.width - steps * sixteenth);
      const { x } = shrinkAbout(piece, 'width', to, sixteenth);
      const moved = Math.abs(2 * x + to - (2 * at + piece.width)) / 2;
      expect(moved).toBeLessThanOrEqual(at % sixteenth === 0 ? sixteenth / 2 : 0.5);
      if (at % sixteenth === 0) expect(Math.abs(x % sixteenth)).toBe(0);
    }),
  );
  expect(matsOf(sampleSketch(), pieceIn(sampleSketch(), 'panel')).map(({ id }) => id)).toEqual(['panel-mat']);
});

test('a metric sketch shrinks by whole millimetres up to three', () => {
  const document = sampleDocument();
  const sketch = expectSketch({
    ...document,
    unit: 'mm',
    pieces: [
      {
        id: 'band',
        name: 'Band',
        kind: 'strip',
        x: 0,
        y: 0,
        width: '100 mm',
        height: '52 mm',
        from: 'moss',
      },
    ],
    papers: document.papers.map((paper) =>
      paper.id === 'moss' ? { ...paper, width: 100, height: 300 } : { ...paper, height: '11 in' },
    ),
    mixes: [],
    variations: [],
    batch: { cards: 6, contrast: [], stoppedCuts: false, hiddenCentres: false },
  });
  // Five of 52 mm from 300 mm, six of 50 mm (by hand).
  expect(missesOf(sketch).misses).toMatchObject([{ to: { height: millimetres(50) }, saves: [{ sheets: 1 }] }]);
});

test('a circle stays a circle, and keeps its middle as far as the ruler allows', () => {
  const circle = {
    ...pieceIn(sampleSketch(), 'greeting'),
    shape: 'ellipse' as const,
    width: inches(2),
    height: inches(2),
  };
  const [edits, ...others] = smallerEdits(circle, inches(1 / 4), inches(1 / 16));
  expect(others).toEqual([]);
  expect(edits?.map(({ width, height }) => [width, height])).toEqual(
    [31, 30, 29, 28].map((sixteenths) => [inches(sixteenths / 16), inches(sixteenths / 16)]),
  );
  for (const { x, width } of edits ?? [])
    expect(Math.abs(2 * x + width - (2 * circle.x + circle.width))).toBeLessThanOrEqual(inches(1 / 16));
  expect(smallerEdits({ ...circle, height: inches(1) }, inches(1 / 4), inches(1 / 16))).toHaveLength(2);
});
