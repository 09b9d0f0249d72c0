import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inches, type Length, millimetres, ticks } from '../length/length.js';
import type { Point } from '../rect/rect.js';
import { blankSize, flatCardBase } from './blank.js';
import { drawnRadii, tightEdges } from './corners.js';
import { flattenOutline } from './flatten.js';
import { outlineArea } from './outline-area.js';
import { type PunchProfile, repeatsAlong } from './punch.js';
import { type PieceShape, pieceOutline } from './shapes.js';

const SQUARE = { tl: ticks(0), tr: ticks(0), br: ticks(0), bl: ticks(0) };

function piece(more: Partial<PieceShape> = {}): PieceShape {
  return { shape: 'rectangle', width: inches(4), height: inches(3), corners: SQUARE, punched: {}, ...more };
}

function rounded(radius: Length) {
  return { tl: radius, tr: radius, br: radius, bl: radius };
}

function area(shape: PieceShape): number {
  return outlineArea(pieceOutline(shape).outline);
}

/** Area of the polygon through many points of the outline: independent of the exact formula. */
function polygonArea(shape: PieceShape): number {
  const points = flattenOutline(pieceOutline(shape).outline, 120);
  return points.reduce((sum, a, index) => {
    const b = points[(index + 1) % points.length] ?? a;
    return sum + (a.x * b.y - b.x * a.y) / 2;
  }, 0);
}

const punch = (more: Partial<PunchProfile> = {}): PunchProfile => ({
  profile: 'scallop',
  repeat: inches(1 / 2),
  depth: inches(1 / 8),
  ...more,
});

const anyPunch = fc.record({
  profile: fc.constantFrom('scallop', 'wave', 'zigzag', 'perforated' as const) as fc.Arbitrary<PunchProfile['profile']>,
  repeat: fc.integer({ min: 5_000, max: 60_000 }).map(ticks),
  depth: fc.integer({ min: 100, max: 20_000 }).map(ticks),
});

const anyPiece: fc.Arbitrary<PieceShape> = fc.record({
  shape: fc.constantFrom('rectangle', 'rectangle', 'rectangle', 'ellipse', 'banner', 'tag' as const) as fc.Arbitrary<
    PieceShape['shape']
  >,
  width: fc.integer({ min: 50_000, max: 200_000 }).map(ticks),
  height: fc.integer({ min: 50_000, max: 200_000 }).map(ticks),
  corners: fc
    .record({ tl: fc.nat(50_000), tr: fc.nat(50_000), br: fc.nat(50_000), bl: fc.nat(50_000) })
    .map((r) => ({ tl: ticks(r.tl), tr: ticks(r.tr), br: ticks(r.br), bl: ticks(r.bl) })),
  punched: fc.record({
    top: fc.option(anyPunch, { nil: undefined }),
    right: fc.option(anyPunch, { nil: undefined }),
    bottom: fc.option(anyPunch, { nil: undefined }),
    left: fc.option(anyPunch, { nil: undefined }),
  }),
});

test('areas agree with the handbook: rectangle, rounded rectangle, ellipse', () => {
  const [w, h, r] = [inches(4), inches(3), inches(1 / 2)];
  expect(area(piece())).toBe(w * h);
  expect(area(piece({ corners: rounded(r) }))).toBeCloseTo(w * h - (4 - Math.PI) * r * r, 0);
  expect(area(piece({ shape: 'ellipse' }))).toBeCloseTo((Math.PI * w * h) / 4, 0);
});

test('a scalloped edge loses what lies between each circular segment and its repeat', () => {
  const [p, d] = [inches(1 / 2), inches(1 / 8)];
  const radius = (p * p) / 8 / d + d / 2;
  const angle = 2 * Math.asin(p / 2 / radius);
  const segment = (radius * radius * (angle - Math.sin(angle))) / 2;
  const lost = 8 * (p * d - segment);
  expect(area(piece({ punched: { bottom: punch() } }))).toBeCloseTo(inches(4) * inches(3) - lost, -1);
});

test('a zigzag edge loses half its depth, and so does a wave', () => {
  const half = inches(4) * inches(3) - (inches(4) * inches(1 / 8)) / 2;
  expect(area(piece({ punched: { top: punch({ profile: 'zigzag' }) } }))).toBeCloseTo(half, 0);
  expect(area(piece({ punched: { left: punch({ profile: 'wave', repeat: inches(3 / 4) }) } }))).toBeCloseTo(
    inches(4) * inches(3) - (inches(3) * inches(1 / 8)) / 2,
    0,
  );
});

test('a perforated edge loses half an ellipse for each repeat', () => {
  const bite = (Math.PI * inches(1 / 8) * inches(1 / 8)) / 2;
  expect(area(piece({ punched: { right: punch({ profile: 'perforated' }) } }))).toBeCloseTo(
    inches(4) * inches(3) - 6 * bite,
    0,
  );
});

test('every outline is closed, clockwise, inside its rectangle, and its exact area is that of a fine polygon', () => {
  fc.assert(
    fc.property(anyPiece, (shape) => {
      const { outline, holes } = pieceOutline(shape);
      expect(outline.steps.at(-1)?.to.x).toBeCloseTo(outline.start.x, 3);
      expect(outline.steps.at(-1)?.to.y).toBeCloseTo(outline.start.y, 3);
      const outside = [outline, ...holes]
        .flatMap((each) => flattenOutline(each))
        .filter(({ x, y }) => x < -0.01 || y < -0.01 || x > shape.width + 0.01 || y > shape.height + 0.01);
      expect(outside).toEqual([]);
      const exact = outlineArea(outline);
      expect(exact).toBeLessThanOrEqual(shape.width * shape.height * (1 + 1e-9));
      if (shape.shape !== 'rectangle') expect(exact).toBeGreaterThan(0);
      expect(Math.abs(exact - polygonArea(shape))).toBeLessThan(shape.width * shape.height * 1e-4);
    }),
    { numRuns: 300 },
  );
});

test('a punched edge is symmetrical about the middle of the edge', () => {
  fc.assert(
    fc.property(anyPunch, fc.integer({ min: 50_000, max: 200_000 }), (profile, side) => {
      const width = ticks(side * 2);
      const { outline } = pieceOutline(piece({ width, height: inches(9), punched: { top: profile } }));
      const top = flattenOutline(outline, 12).filter(({ y }) => y < profile.depth * 0.999);
      const lost = top.filter(
        ({ x, y }) => !top.some((other) => Math.abs(other.x - (width - x)) < 1 && Math.abs(other.y - y) < 1),
      );
      expect(lost).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

test('whole repeats fill an edge exactly, others leave the same rest at both ends', () => {
  expect(repeatsAlong(inches(4), punch())).toEqual({ whole: 8, rest: 0 });
  expect(repeatsAlong(inches(3.75), punch())).toEqual({ whole: 6, rest: inches(3 / 8) });
  expect(repeatsAlong(inches(4.125), punch({ repeat: inches(1) }))).toMatchObject({ whole: 4 });
  expect(repeatsAlong(inches(1 / 4), punch())).toEqual({ whole: 0, rest: inches(1 / 8) });
});

test('radii too large for an edge are named, and drawn smaller by one factor (CSS Backgrounds 3, overlapping curves)', () => {
  const size = { width: inches(2), height: inches(1) };
  expect(tightEdges(size, rounded(inches(1 / 2)))).toEqual([]);
  expect(tightEdges(size, rounded(inches(3 / 4)))).toEqual([
    { edge: 'right', length: inches(1), needed: inches(1.5) },
    { edge: 'left', length: inches(1), needed: inches(1.5) },
  ]);
  expect(drawnRadii(size, rounded(inches(3 / 4))).tl).toBeCloseTo(inches(1 / 2), 6);
  expect(area(piece({ ...size, corners: rounded(inches(9)) }))).toBeCloseTo(
    inches(2) * inches(1) - (4 - Math.PI) * inches(1 / 2) ** 2,
    0,
  );
});

test('a blank is the piece plus the bite of the punch on each punched edge of a rectangle', () => {
  const bites = { top: ticks(1), right: ticks(20), bottom: ticks(300), left: ticks(4000) };
  expect(blankSize({ shape: 'rectangle', width: inches(1), height: inches(2), bites })).toEqual({
    width: inches(1) + 4020,
    height: inches(2) + 301,
  });
  expect(blankSize({ shape: 'ellipse', width: inches(1), height: inches(2), bites })).toEqual({
    width: inches(1),
    height: inches(2),
  });
});

test('an A6 card opens flat to A5; two A5 fit an A4 sheet, 1 mm short (ISO 216:2007: 105 x 148, 148 x 210, 210 x 297 mm)', () => {
  const a6 = { width: millimetres(105), height: millimetres(148) };
  expect(flatCardBase({ ...a6, fold: 'left' })).toEqual({
    width: millimetres(210),
    height: millimetres(148),
    score: { axis: 'x', at: millimetres(105) },
  });
  const a5 = { width: millimetres(148), height: millimetres(210) };
  expect(flatCardBase({ ...a5, fold: 'left' })).toMatchObject({
    width: millimetres(297 - 1),
    height: millimetres(210),
  });
});

test('a 4 1/4 x 5 1/2 in card opens to half a letter sheet, either way it folds (common practice, no source)', () => {
  const card = { width: inches(4.25), height: inches(5.5) };
  expect(flatCardBase({ ...card, fold: 'left' })).toMatchObject({
    width: inches(8.5),
    height: inches(5.5),
    score: { axis: 'x', at: inches(4.25) },
  });
  expect(flatCardBase({ ...card, fold: 'top' })).toMatchObject({
    width: inches(4.25),
    height: inches(11),
    score: { axis: 'y', at: inches(5.5) },
  });
  expect(flatCardBase({ ...card, fold: 'none' })).toEqual({ ...card, score: null });
});

/** Pairs of sides of the polygon, not neighbours, that cross properly. */
function crossings(points: readonly Point[]): number {
  const turn = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
  let found = 0;
  for (let i = 0; i + 1 < points.length; i += 1) {
    for (let j = i + 2; j + 1 < points.length; j += 1) {
      const [a, b, c, d] = [points[i], points[i + 1], points[j], points[j + 1]] as [Point, Point, Point, Point];
      const [one, two, three, four] = [turn(a, b, c), turn(a, b, d), turn(c, d, a), turn(c, d, b)];
      // Within 20 ticks (0.03 mm, less than the thinnest line) lines touch.
      const [first, second] = [20 * Math.hypot(b.x - a.x, b.y - a.y), 20 * Math.hypot(d.x - c.x, d.y - c.y)];
      if (Math.min(Math.abs(one), Math.abs(two)) < first || Math.min(Math.abs(three), Math.abs(four)) < second)
        continue;
      if (one > 0 !== two > 0 && three > 0 !== four > 0) found += 1;
    }
  }
  return found;
}

test('an outline never crosses itself, whatever is punched (cusps of no width aside) and however its corners are rounded', () => {
  const limited = anyPiece.map((shape): PieceShape => {
    const punched = Object.entries(shape.punched).map(([edge, one]) => [
      edge,
      one && { ...one, depth: ticks(Math.min(one.depth, Math.floor(one.repeat * 0.45))) },
    ]);
    return { ...shape, punched: Object.fromEntries(punched) };
  });
  fc.assert(
    fc.property(limited, (shape) => {
      expect(crossings(flattenOutline(pieceOutline(shape).outline, 24))).toBe(0);
    }),
    { numRuns: 80 },
  );
});

test('where two punched edges meet at a square corner nothing reaches the corner, and no edge is walked twice', () => {
  for (const profile of ['scallop', 'wave', 'zigzag'] as const) {
    const one = punch({ profile });
    const { outline } = pieceOutline(piece({ punched: { top: one, right: one, bottom: one, left: one } }));
    const points = flattenOutline(outline, 12);
    const nearest = Math.min(...points.map(({ x, y }) => Math.hypot(x, y)));
    expect(nearest).toBeGreaterThan(inches(1 / 16));
    expect(crossings(points)).toBe(0);
  }
});

test('a profile runs on into a rounded corner until it meets the arc', () => {
  const radius = inches(1 / 4);
  const { outline } = pieceOutline(
    piece({ corners: rounded(radius), punched: { bottom: punch({ repeat: inches(1 / 2), depth: inches(1 / 8) }) } }),
  );
  const lowest = flattenOutline(outline, 40).filter(({ x, y }) => x < radius && y > inches(3) - radius);
  for (const { x, y } of lowest) {
    expect(Math.hypot(radius - x, y - (inches(3) - radius))).toBeLessThan(radius + 1);
  }
  expect(outline.steps.filter((step) => step.kind === 'line').length).toBe(3);
});

test('punches deeper than their piece are drawn shallower, still inside it', () => {
  const deep = punch({ depth: inches(2) });
  const exact = area(piece({ height: inches(1), punched: { top: deep, bottom: deep } }));
  expect(exact).toBeGreaterThan(0);
  const { outline } = pieceOutline(piece({ height: inches(1), punched: { top: deep, bottom: deep } }));
  expect(flattenOutline(outline).filter(({ y }) => y < -1e-6 || y > inches(1) + 1e-6)).toEqual([]);
});
