import { inches, millimetres, planCuts, type Size, ticks, type Unit } from '@trimwell/geometry';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { planBatch } from '../batch/batch-plan.js';
import { batchRecipe } from '../batch/batch-recipe.js';
import { checkSketch } from '../check/findings.js';
import { rulerStep } from '../model/ruler-steps.js';
import type { Sketch } from '../model/sketch.js';
import { expectSketch } from '../read/read-sketch.js';
import { writeSketch } from '../read/write-sketch.js';
import { BeginError } from './begin-error.js';
import { BEGINNINGS, beginSketch } from './beginnings.js';
import { CARD_SIZES, cardSides, type Fold, foldsOf } from './card-sizes.js';

/** Enough work to see that everything can be cut; whether fewer sheets would do is not asked here. */
const QUICK = 20_000;

const ids = BEGINNINGS.map(({ id }) => id);

function bothWays({ width, height }: Size): readonly Size[] {
  return width === height
    ? [{ width, height }]
    : [
        { width, height },
        { width: height, height: width },
      ];
}

/** What holds of every beginning on a card that lies on the ruler. */
function expectSoundBeginning(sketch: Sketch): void {
  const step = rulerStep(sketch.unit);
  const { width, height } = sketch.card;
  expect(expectSketch(writeSketch(sketch))).toEqual(sketch);
  expect(checkSketch(sketch), `${sketch.id} ${width} x ${height}`).toEqual([]);
  for (const piece of sketch.pieces) {
    for (const length of [piece.x, piece.y, piece.width, piece.height]) expect(length % step, piece.id).toBe(0);
    const turn = (Math.abs(piece.tilt) * Math.PI) / 180;
    const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
    const across = (piece.width * cos + piece.height * sin) / 2;
    const down = (piece.height * cos + piece.width * sin) / 2;
    const [x, y] = [piece.x + piece.width / 2, piece.y + piece.height / 2];
    expect(Math.min(x - across, y - down), `${piece.id} is on the card`).toBeGreaterThanOrEqual(-1e-6);
    expect(x + across, `${piece.id} is on the card`).toBeLessThanOrEqual(width + 1e-6);
    expect(y + down, `${piece.id} is on the card`).toBeLessThanOrEqual(height + 1e-6);
  }
}

const usual = CARD_SIZES.flatMap((size) =>
  bothWays(size).flatMap((way) => foldsOf(way, size.unit).map((fold) => ({ size, way, fold }))),
);

test('there are ten layouts or more beside the blank card, each with a name of its own', () => {
  expect(ids.length).toBeGreaterThan(10);
  expect(new Set(ids).size).toBe(ids.length);
  expect(new Set(BEGINNINGS.map(({ name }) => name)).size).toBe(ids.length);
});

test.each(ids)('%s is sound on every usual size, upright and lying, with every fold', (layout) => {
  for (const { size, way, fold } of usual) expectSoundBeginning(beginSketch({ layout, ...way, unit: size.unit, fold }));
});

/** Sides on the ruler of `unit`, from the least to the most that a new card may have. */
function sides(unit: Unit): fc.Arbitrary<Size> {
  const step = rulerStep(unit);
  const { least, most } = cardSides(unit);
  const side = fc.integer({ min: least / step, max: most / step }).map((steps) => ticks(steps * step));
  return fc.record({ width: side, height: side });
}

test.each<Unit>(['in', 'mm'])('every layout is sound on any card on the ruler (%s)', (unit) => {
  fc.assert(
    fc.property(fc.constantFrom(...ids), sides(unit), fc.nat(2), (layout, size, choice) => {
      const folds = foldsOf(size, unit);
      expectSoundBeginning(beginSketch({ layout, ...size, unit, fold: folds[choice % folds.length] ?? 'none' }));
    }),
    { numRuns: 200 },
  );
});

test.each(ids)('%s can be cut: the smallest, a usual and the largest card, in both units', (layout) => {
  const cards: readonly (readonly [Unit, Size, Fold])[] = [
    ['in', { width: inches(2), height: inches(2) }, 'left'],
    ['in', { width: inches(4.25), height: inches(5.5) }, 'left'],
    ['in', { width: inches(12), height: inches(12) }, 'none'],
    ['mm', { width: millimetres(50), height: millimetres(50) }, 'top'],
    ['mm', { width: millimetres(210), height: millimetres(148) }, 'top'],
    ['mm', { width: millimetres(305), height: millimetres(305) }, 'none'],
  ];
  for (const [unit, size, fold] of cards) {
    const recipe = batchRecipe(beginSketch({ layout, ...size, unit, fold }));
    const plan = planBatch(recipe, 2, (job) => planCuts(job, { work: QUICK }));
    expect(plan.papers.flatMap((paper) => paper.plan.unmade)).toEqual([]);
    expect(plan.complete).toBe(true);
  }
});

test('every paper of a layout is used, the blank card aside', () => {
  for (const layout of ids.filter((id) => id !== 'blank-card')) {
    const sketch = beginSketch({ layout, width: inches(4.25), height: inches(5.5), unit: 'in', fold: 'left' });
    const used = new Set([
      sketch.card.base,
      ...sketch.pieces.map(({ from }) => from),
      ...sketch.mixes.flatMap(({ papers }) => papers),
    ]);
    expect(
      sketch.papers.map(({ id }) => id).filter((id) => !used.has(id)),
      layout,
    ).toEqual([]);
  }
});

test('only a card that opens has pieces inside', () => {
  const wish = { layout: 'words-inside', width: inches(4.25), height: inches(5.5), unit: 'in' } as const;
  const inside = (fold: Fold) => beginSketch({ ...wish, fold }).pieces.filter(({ face }) => face === 'inside');
  expect(inside('left').map(({ id }) => id)).toEqual([
    'liner-mat',
    'liner',
    'inside-words-mat',
    'inside-words',
    'inside-strip',
  ]);
  expect(inside('none')).toEqual([]);
});

test('a card off the ruler keeps its size; what lies on it keeps to the ruler, about the middle', () => {
  const sketch = beginSketch({
    layout: 'window-and-mat',
    width: millimetres(148.5),
    height: millimetres(105),
    unit: 'mm',
    fold: 'top',
  });
  expect(sketch.card.width).toBe(millimetres(148.5));
  const mat = sketch.pieces.find(({ id }) => id === 'panel-mat');
  expect(mat).toMatchObject({ width: millimetres(142), x: millimetres(3) + 160 });
  for (const piece of sketch.pieces) expect(piece.width % millimetres(1), piece.id).toBe(0);
});

test.each([
  [{ layout: 'no-such' }, /layout is "no-such"; allowed: blank-card, window-and-mat/],
  [{ width: inches(1) }, /width is 16256; allowed: 2 to 12 in/],
  [{ height: inches(12.5) }, /height is 203200; allowed: 2 to 12 in/],
  [{ width: inches(9), fold: 'left' as const }, /fold is "left"; allowed: a fold with which/],
])('%o is refused by path, value and what is allowed', (spoilt, message) => {
  const wish = { layout: 'blank-card', width: inches(4), height: inches(9), unit: 'in', fold: 'none' } as const;
  expect(() => beginSketch({ ...wish, ...spoilt })).toThrow(BeginError);
  expect(() => beginSketch({ ...wish, ...spoilt })).toThrow(message);
});
