import { inches, type Length, millimetres, type Point, type Size, ticks } from '@trimwell/geometry';
import { type Region, regionArea, share, UNITS_PER_TICK, unite } from '@trimwell/geometry/regions';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { ENVELOPE_SIZES } from '../begin/envelope-sizes.js';
import { girth } from './card-girth.js';
import { cardEnvelopes, envelopeFit } from './envelope-fit.js';
import { envelopeTemplate } from './envelope-template.js';

const FLAT = { across: 0, down: 0 };
const inSize = (width: number, height: number): Size => ({ width: inches(width), height: inches(height) });

// Cards and their envelopes as they are sold (common practice); those of ISO 216 with ISO 269.
test.each<readonly [string, Size, string]>([
  ['US A1', inSize(3.5, 4.875), 'us-a1'],
  ['US A2', inSize(4.25, 5.5), 'us-a2'],
  ['US A6', inSize(4.5, 6.25), 'us-a6'],
  ['US A7', inSize(5, 7), 'us-a7'],
  ['US A8', inSize(5.25, 7.875), 'us-a8'],
  ['US A9', inSize(5.5, 8.5), 'us-a9'],
  ['US A10', inSize(5.75, 9.25), 'us-a10'],
  ['A6', { width: millimetres(105), height: millimetres(148) }, 'iso-c6'],
  ['A5', { width: millimetres(148), height: millimetres(210) }, 'iso-c5'],
  ['A7', { width: millimetres(74), height: millimetres(105) }, 'iso-c7'],
])('a flat %s goes into its envelope', (_name, size, id) => {
  // Envelopes of the sketch's own system come first.
  const unit = id.startsWith('us') ? 'in' : 'mm';
  const { smallest, cut } = cardEnvelopes({ ...sampleSketch(), unit }, size, FLAT);
  const own = ENVELOPE_SIZES.find((each) => each.id === id);
  if (!own || !smallest) throw new Error(`${id} is in the list, and so one at least holds the card`);
  expect(envelopeFit(size, FLAT, own).fit).toBe('roomy');
  expect(envelopeFit(size, FLAT, smallest).fit).toBe('roomy');
  expect(smallest.unit).toBe(unit);
  expect(smallest.width * smallest.height).toBeLessThanOrEqual(own.width * own.height);
  expect(envelopeFit(size, FLAT, { name: 'cut', ...cut.inside }).fit).toBe('roomy');
});

test('a card of 4 1/4 x 5 1/2 in in 4 3/8 x 5 3/4 in has 1/8 and 1/4 in to spare; half of that is tight, less is strained', () => {
  const card = inSize(4.25, 5.5);
  const fit = (width: number, height: number, thick = 0) =>
    envelopeFit(
      card,
      { across: inches(1) * thick, down: inches(1) * thick },
      { name: 'own', ...inSize(width, height) },
    );
  expect(fit(5.75, 4.375)).toMatchObject({
    fit: 'roomy',
    room: { short: inches(1 / 8), long: inches(1 / 4) },
    missing: 0,
  });
  expect(fit(5.75, 4.3125)).toMatchObject({ fit: 'tight', missing: inches(1 / 16) });
  expect(fit(5.75, 4.3125, 3 / 32)).toMatchObject({ fit: 'strained', missing: inches(1 / 16) });
  expect(fit(5.75, 4.375, 3 / 16)).toMatchObject({ fit: 'strained', missing: inches(1 / 16) });
  expect(fit(5.75, 4.1875)).toMatchObject({ fit: 'too small', missing: inches(3 / 16) });
});

test('the shortest band: a slab w by t is 2 (w + t) round, a 3-4-5 triangle 12; what lies within changes nothing (by hand)', () => {
  const slab: readonly Point[] = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 0, y: 2 },
    { x: 10, y: 2 },
  ];
  expect(girth(slab)).toBe(24);
  expect(girth([...slab, { x: 5, y: 1 }])).toBe(24);
  expect(girth([slab[0] as Point, { x: 3, y: 0 }, { x: 0, y: 4 }])).toBe(12);
});

const scaled = (corners: readonly Point[]): Region => ({
  rings: [corners.map(({ x, y }) => ({ x: Math.round(x * UNITS_PER_TICK), y: Math.round(y * UNITS_PER_TICK) }))],
});

/** The four flaps of a template, folded in over the envelope, whose middle is the origin. */
function foldedFlaps(w: number, h: number, glue: number) {
  const d = (w + h) / 2 + glue * Math.SQRT2;
  const [x, y] = [w / 2, h / 2];
  // A triangle beyond a side of the envelope, mirrored at that side; its corner cut away where the notch is.
  const left = [
    { x: -x, y: -(d - x) },
    { x: -x, y: d - x },
    { x: -2 * x + d, y: 0 },
  ];
  const top = [
    { x: -(d - y), y: -y },
    { x: d - y, y: -y },
    { x: 0, y: d - 2 * y },
  ];
  const mirrored = (ring: readonly Point[]) => ring.map((point) => ({ x: -point.x, y: -point.y }));
  // All walked the same way round.
  return [[...left].reverse(), mirrored(left).reverse(), top, mirrored(top)].map(scaled);
}

test('whatever the size: the flaps cover the whole back, and neighbours lie over each other by a strip twice the glue wide', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 40_000, max: 160_000 }),
      fc.integer({ min: 40_000, max: 160_000 }),
      fc.integer({ min: 1_000, max: 5_000 }),
      (one, other, glue) => {
        const [w, h] = [Math.max(one, other), Math.min(one, other)];
        const [left, right, top, bottom] = foldedFlaps(w, h, glue) as [Region, Region, Region, Region];
        const back = scaled([
          { x: -w / 2, y: -h / 2 },
          { x: w / 2, y: -h / 2 },
          { x: w / 2, y: h / 2 },
          { x: -w / 2, y: h / 2 },
        ]);
        const covered = regionArea(share(back, unite([left, right, top, bottom])));
        expect(Math.abs(covered / (w * h) - 1)).toBeLessThan(1e-6);
        // From the envelope's corner to the point of the shorter flap: a strip 2g wide, as long as that flap's slant.
        const lap = regionArea(share(share(left, top), back));
        expect(lap).toBeGreaterThan(2 * glue * (h / 2) * Math.SQRT2 * 0.9 - 8 * glue ** 2);
        const made = envelopeTemplate({ width: ticks(w), height: ticks(h) }, { glue: ticks(glue), step: 1 as Length });
        const d = (w + h) / 2 + glue * Math.SQRT2;
        expect(Math.abs(made.square - d * Math.SQRT2)).toBeLessThanOrEqual(2);
        // The two scores meet a side on both sides of the notch: x = -w/2 and y = -h/2 on the side from (-d, 0) to (0, -d).
        const along = (fromLeft: number): number => fromLeft * Math.SQRT2;
        expect(Math.abs(along(d - w / 2) - (made.notch + made.scoreOff))).toBeLessThanOrEqual(1);
        expect(Math.abs(along(h / 2) - (made.notch - made.scoreOff))).toBeLessThanOrEqual(1);
        expect(Math.abs(made.longFlap - (d - h / 2))).toBeLessThanOrEqual(2);
        expect(Math.abs(made.shortFlap - (d - w / 2))).toBeLessThanOrEqual(2);
        // The scores, as far apart as they come out on the ruler.
        expect((made.notch - made.scoreOff) * Math.SQRT2).toBeGreaterThanOrEqual(h - 1e-6);
        expect((made.square - made.notch - made.scoreOff) * Math.SQRT2).toBeGreaterThanOrEqual(w - 1e-6);
      },
    ),
    { numRuns: 60, seed: 5 },
  );
});

test('a template in figures: 5 3/4 x 4 3/8 in with 1/4 in of glue takes a square of 7 3/4 in (by hand)', () => {
  // The notch is at 4.375 / 1.41421 + 0.25 = 3.3436, up to 3 3/8; the square 3.375 + 5.75 / 1.41421 + 0.25 = 7.6909, up to 7 3/4.
  const made = envelopeTemplate(inSize(4.375, 5.75), { glue: inches(1 / 4), step: inches(1 / 16) });
  expect(made.square).toBe(inches(7 + 3 / 4));
  expect(made.notch).toBe(inches(3 + 3 / 8));
  expect(made.inside).toEqual(inSize(5.75, 4.375));
  expect(made.tooLong).toBe(0);
  expect(envelopeTemplate(inSize(9.5, 4), { glue: inches(1 / 4), step: inches(1 / 16) }).tooLong).toBeGreaterThan(0);
});

test('the papers that the square is cut from are told, with how many of a sheet', () => {
  const { cut, papers } = cardEnvelopes(sampleSketch(), inSize(3, 3), FLAT);
  expect(cut.inside).toEqual(inSize(3.125, 3.125));
  // 3.125 / 1.41421 + 0.25 = 2.4597, up to 2 1/2; 2.5 + 2.2097 + 0.25 = 4.9597, up to 5 in: twice across and twice down 12 in, once across and twice down 8 1/2 x 11 in.
  expect(cut.square).toBe(inches(5));
  expect(papers).toContainEqual({ paper: 'moss', perSheet: 4 });
  expect(papers).toContainEqual({ paper: 'ivory', perSheet: 2 });
});
