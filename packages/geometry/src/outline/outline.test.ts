import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inches, type Length, millimetres, ticks } from '../length/length.js';
import type { Point } from '../rect/rect.js';
import { blankSize, flatCardBase } from './blank.js';
import { drawnRadii, tightEdges } from './corners.js';
import { flattenOutline } from './flatten.js';
import { outlineArea } from './outline-area.js';
import { punchReach } from './profile-shapes.js';
import { punchDepth, punchedEdge, repeatsAlong } from './punch.js';
import { PUNCH_PROFILES, type PunchProfile } from './punch-profile.js';
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
  profile: fc.constantFrom(...PUNCH_PROFILES),
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
      // A torn edge is of no order.
      fc.pre(profile.profile !== 'deckle');
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
      const { outline } = pieceOutline(shape);
      // Every pair of sides is tried, so an outline of many steps has fewer sides to each.
      const pieces = Math.max(4, Math.min(24, Math.round(1200 / outline.steps.length)));
      expect(crossings(flattenOutline(outline, pieces))).toBe(0);
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

test('an arch of 0.866 of its repeat is two circles about the feet: each repeat keeps the equilateral arch of the masons', () => {
  const p = inches(1);
  const d = ticks(Math.round((p * Math.sqrt(3)) / 2));
  // Two segments of 60 degrees on the two upper sides of an equilateral triangle.
  const kept = (Math.sqrt(3) / 4) * p * p + 2 * ((Math.PI / 6 - Math.sqrt(3) / 4) * p * p);
  const lost = 4 * (p * d - kept);
  const arched = piece({ punched: { bottom: punch({ profile: 'arch', repeat: p, depth: d }) } });
  expect(Math.abs(area(arched) - (inches(4) * inches(3) - lost)) / lost).toBeLessThan(1e-4);
});

test('steps keep half of their depth', () => {
  expect(area(piece({ punched: { top: punch({ profile: 'step' }) } }))).toBeCloseTo(
    inches(4) * inches(3) - (inches(4) * inches(1 / 8)) / 2,
    0,
  );
});

test('every profile touches the finished edge, reaches its depth, and its steps run where its depth says', () => {
  for (const profile of PUNCH_PROFILES) {
    const one = punch({ profile });
    const depths = Array.from({ length: 2001 }, (_, n) => punchDepth(inches(4), (inches(1) * n) / 2000, one));
    expect(Math.min(...depths), profile).toBeCloseTo(0, 0);
    expect(Math.max(...depths) / one.depth, profile).toBeCloseTo(1, 2);
    for (const [from, to] of [
      [0, inches(4)],
      [4_877, 50_394],
      [20_483, 21_295],
    ] as const) {
      const ends = punchedEdge(inches(4), from, to, one).map((step) => step.to);
      for (const end of ends) expect(punchDepth(inches(4), end.along, one), profile).toBeCloseTo(end.in, 3);
      expect(ends.at(-1)?.along, profile).toBeCloseTo(to, 6);
    }
  }
});

test('a scallop with eyelets has one round hole in every whole repeat, and none where there is no paper for it', () => {
  const lace = punch({ profile: 'eyelet scallop', depth: inches(1 / 4) });
  const holes = (more: Partial<PieceShape>) => pieceOutline(piece(more)).holes;
  expect(holes({ punched: { bottom: lace } })).toHaveLength(8);
  const [first] = holes({ punched: { bottom: lace } });
  expect(Math.abs(outlineArea(first ?? { start: { x: 0, y: 0 }, steps: [] }))).toBeCloseTo(
    Math.PI * (inches(1) / 20) ** 2,
    0,
  );
  const ys = holes({ punched: { top: lace } }).map(({ start, steps }) => (start.y + (steps[1]?.to.y ?? 0)) / 2);
  for (const y of ys) expect(y).toBeCloseTo(inches(1 / 4), 6);
  // 4 1/8 in holds no part of a hole at its ends, and rounded corners take the outermost ones.
  expect(holes({ width: inches(4.125), punched: { bottom: lace } })).toHaveLength(8);
  expect(holes({ corners: rounded(inches(3 / 4)), punched: { bottom: lace } })).toHaveLength(6);
  expect(holes({ height: inches(1 / 4), punched: { bottom: lace } })).toEqual([]);
  expect(holes({ punched: { bottom: punch() } })).toEqual([]);
  expect(punchReach(lace)).toBeCloseTo(0.3 * inches(1), 6);
  expect(punchReach(punch())).toBe(inches(1 / 8));
});

test('no two eyelets touch, whatever is punched', () => {
  fc.assert(
    fc.property(anyPiece, (shape) => {
      const rounds = pieceOutline(shape).holes.map((hole) => flattenOutline(hole, 1).slice(0, 4));
      const middles = rounds.map(([a, , c]) => ({
        x: ((a?.x ?? 0) + (c?.x ?? 0)) / 2,
        y: ((a?.y ?? 0) + (c?.y ?? 0)) / 2,
        radius: Math.abs((a?.y ?? 0) - (c?.y ?? 0)) / 2,
      }));
      middles.forEach((one, index) => {
        for (const other of middles.slice(index + 1))
          expect(Math.hypot(one.x - other.x, one.y - other.y)).toBeGreaterThan(one.radius + other.radius);
      });
    }),
    { numRuns: 200 },
  );
});
