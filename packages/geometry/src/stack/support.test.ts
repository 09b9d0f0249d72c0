import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import { flattenOutline } from '../outline/flatten.js';
import { pieceOutline } from '../outline/shapes.js';
import { leastLap } from './lap.js';
import { lapAlong, throughMiddles } from './lap-along.js';
import type { PlacedPiece } from './placed-piece.js';
import { toFace } from './quick-cover.js';
import { supportOf } from './support.js';

const punch = { profile: 'scallop', repeat: ticks(4_064), depth: ticks(2_032) } as const;

const piece: fc.Arbitrary<PlacedPiece> = fc
  .record({
    shape: fc.constantFrom('rectangle', 'rectangle', 'ellipse', 'banner', 'tag'),
    x: fc.integer({ min: 0, max: 40_000 }),
    y: fc.integer({ min: 0, max: 40_000 }),
    width: fc.integer({ min: 4_000, max: 40_000 }),
    height: fc.integer({ min: 4_000, max: 40_000 }),
    tilt: fc.constantFrom(0, 12, -35, 90, 180, 233),
    radii: fc.tuple(fc.nat(2_000), fc.nat(2_000), fc.nat(2_000), fc.nat(2_000)),
    punched: fc.boolean(),
  })
  .map(({ shape, x, y, width, height, tilt, radii: [tl, tr, br, bl], punched }) => ({
    shape: {
      shape,
      width: ticks(width),
      height: ticks(height),
      corners: { tl: ticks(tl), tr: ticks(tr), br: ticks(br), bl: ticks(bl) },
      punched: punched && shape === 'rectangle' ? { top: punch } : {},
    },
    x: ticks(x),
    y: ticks(y),
    tilt,
  }));

test('the support of any piece is how far the points of its outline reach, whatever the direction', () => {
  fc.assert(
    fc.property(piece, fc.integer({ min: 0, max: 359 }), (placed, degrees) => {
      const [x, y] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      const { shape } = placed;
      const middle = { x: placed.x + shape.width / 2, y: placed.y + shape.height / 2 };
      const points = flattenOutline(pieceOutline(shape).outline, 200).map(toFace(placed));
      const reach = Math.max(...points.map((point) => (point.x - middle.x) * x + (point.y - middle.y) * y));
      const support = supportOf(placed)(x, y);
      expect(support).toBeGreaterThan(reach - 1);
      // 200 chords of a quarter of the largest oval leave it by less than half a tick.
      expect(support).toBeLessThan(reach + 1);
    }),
  );
});

function square(x: number, y: number, side: number, tilt = 0, shape: PlacedPiece['shape']['shape'] = 'rectangle') {
  const none = ticks(0);
  const corners = { tl: none, tr: none, br: none, bl: none };
  const size = ticks(side);
  return { shape: { shape, width: size, height: size, corners, punched: {} }, x: ticks(x), y: ticks(y), tilt };
}

test('how far two pieces lap, and how far they are apart, by hand', () => {
  const one = square(0, 0, 1_000);
  expect(lapAlong(one, square(900, 300, 1_000), { x: 1, y: 0 })).toEqual({ along: { x: 1, y: 0 }, depth: 100 });
  expect(lapAlong(one, square(-900, 300, 1_000), { x: 1, y: 0 })).toEqual({ along: { x: -1, y: 0 }, depth: 100 });
  expect(lapAlong(one, square(1_200, 300, 1_000), { x: 1, y: 0 }).depth).toBe(-200);
  // A square that stands on its corner reaches sqrt 2 / 2 of its side; two circles reach their radii along their middles.
  expect(lapAlong(one, square(1_100, 0, 1_000, 45), { x: 1, y: 0 }).depth).toBeCloseTo(
    500 + 500 * Math.SQRT2 - 1_100,
    6,
  );
  const [left, right] = [square(0, 0, 1_000, 0, 'ellipse'), square(600, 800, 1_000, 30, 'ellipse')];
  const through = throughMiddles(left, right);
  expect(through && lapAlong(left, right, through).depth).toBeCloseTo(0, 6);
});

test('the least lap is along the side where it is shallowest; none where one holds the other, or where round corners miss (by hand)', () => {
  const low = square(0, 0, 1_000);
  expect(leastLap(low, square(900, 950, 1_000))).toEqual({ along: { x: 0, y: 1 }, depth: 50 });
  expect(leastLap(low, square(1_000, 0, 1_000))).toBeNull();
  expect(leastLap(low, square(100, 100, 500))).toBeNull();
  // Turned together about the middle of the first, the lap stays what it was.
  const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  const turned = square(Math.round(9_000 * cos), Math.round(9_000 * sin), 10_000, 30);
  const lap = leastLap(square(0, 0, 10_000, 30), turned);
  expect(lap?.depth).toBeCloseTo(1_000, -1);
  expect(lap?.along.x).toBeCloseTo(cos, 12);
  const radius = ticks(500);
  const round = (x: number): PlacedPiece => {
    const plain = square(x, x, 1_000);
    return { ...plain, shape: { ...plain.shape, corners: { tl: radius, tr: radius, br: radius, bl: radius } } };
  };
  // Two discs whose middles lie 900 apart each way: their boxes share a corner of 100, they do not meet.
  expect(leastLap(round(0), round(900))).toBeNull();
  expect(leastLap(round(0), round(650))?.depth).toBeCloseTo(350, 6);
});
