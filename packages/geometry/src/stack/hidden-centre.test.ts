import fc from 'fast-check';
import { expect, test } from 'vitest';
import { inches, type Length, ticks } from '../length/length.js';
import { flattenOutline } from '../outline/flatten.js';
import { type PieceShape, pieceOutline } from '../outline/shapes.js';
import { type Point, type Rect, rect } from '../rect/rect.js';
import { fallsThrough, hiddenCentre } from './hidden-centre.js';
import type { PlacedPiece } from './placed-piece.js';

const SQUARE = { tl: ticks(0), tr: ticks(0), br: ticks(0), bl: ticks(0) };

function placed(x: number, y: number, width: number, height: number, more: Partial<PieceShape> = {}, tilt = 0) {
  const shape: PieceShape = {
    shape: 'rectangle',
    width: ticks(width),
    height: ticks(height),
    corners: SQUARE,
    punched: {},
    ...more,
  };
  return { shape, x: ticks(x), y: ticks(y), tilt } satisfies PlacedPiece;
}

function inInches(x: number, y: number, width: number, height: number, more: Partial<PieceShape> = {}, tilt = 0) {
  return placed(inches(x), inches(y), inches(width), inches(height), more, tilt);
}

const quarter = { overlap: inches(1 / 4), step: inches(1 / 16) };

test('a 4 x 5 1/4 in panel below one of 3 3/4 x 5 in hides 3 1/4 x 4 1/2 in, 3/8 in from its edges (by hand)', () => {
  const centre = hiddenCentre(inInches(1 / 8, 1 / 8, 4, 5.25), [inInches(1 / 4, 1 / 4, 3.75, 5)], quarter);
  expect(centre).toEqual(rect(inches(3 / 8), inches(3 / 8), inches(3.25), inches(4.5)));
});

test('two covers that only together hide the piece count as one; with a gap of a tick between them they do not', () => {
  const panel = inInches(0, 0, 4, 4);
  const left = inInches(0, 0, 2, 4);
  expect(hiddenCentre(panel, [left, inInches(2, 0, 2, 4)], quarter)).toMatchObject({ width: inches(3.5) });
  const apart = placed(inches(2) + 1, 0, inches(2), inches(4));
  expect(hiddenCentre(panel, [left, apart], quarter)).toMatchObject({ width: inches(1.5), height: inches(3.5) });
});

test('sides are rounded down to the marks of the ruler, never up, and lie on marks where there is room', () => {
  const cover = placed(inches(1 / 4) + 100, inches(1 / 4), inches(2) - 1100, inches(2));
  const centre = hiddenCentre(inInches(0, 0, 4, 4), [cover], quarter);
  expect(centre).toEqual(rect(inches(9 / 16), inches(1 / 2), inches(1 + 3 / 8), inches(1.5)));
  expect(hiddenCentre(inInches(0, 0, 4, 4), [cover], { ...quarter, step: null })?.width).toBe(inches(1.5) - 1100);
});

test('a tilt of a quarter turn is exact too', () => {
  const cover = inInches(0.5, 0.5, 2, 3, {}, 90);
  expect(hiddenCentre(inInches(0, 0, 4, 4), [cover], { overlap: inches(1 / 4), step: null })).toEqual(
    rect(inches(0.25), inches(1.25), inches(2.5), inches(1.5)),
  );
  // The piece turned by a quarter, and its cover not: in the piece's own frame the cover's sides change places.
  expect(hiddenCentre(inInches(0, 0, 4, 4, {}, 90), [inInches(1, 0.5, 3, 2)], quarter)).toEqual(
    rect(inches(0.75), inches(0.25), inches(1.5), inches(2.5)),
  );
});

interface Cells {
  readonly width: number;
  readonly height: number;
  readonly covers: readonly Rect[];
}

/** The most area by looking at every rectangle of cells. */
function bruteForce({ width, height, covers }: Cells, overlap: number, step: number): number {
  const covered = (x: number, y: number): boolean =>
    covers.some((c) => x >= c.x && x < c.x + c.width && y >= c.y && y < c.y + c.height);
  // From the first to the last mark within, counted from the piece's own edge.
  const side = (from: number, to: number): number =>
    Math.max(0, (Math.floor((to - overlap) / step) - Math.ceil((from + overlap) / step)) * step);
  let most = 0;
  for (let x0 = 0; x0 < width; x0 += 1)
    for (let y0 = 0; y0 < height; y0 += 1)
      for (let x1 = x0 + 1; x1 <= width; x1 += 1)
        for (let y1 = y0 + 1; y1 <= height; y1 += 1) {
          let whole = true;
          for (let x = x0; x < x1 && whole; x += 1) for (let y = y0; y < y1 && whole; y += 1) whole = covered(x, y);
          if (whole) most = Math.max(most, side(x0, x1) * side(y0, y1));
        }
  return most;
}

const small = fc.record({
  width: fc.integer({ min: 1, max: 9 }),
  height: fc.integer({ min: 1, max: 9 }),
  covers: fc.array(
    fc
      .tuple(
        fc.integer({ min: -3, max: 8 }),
        fc.integer({ min: -3, max: 8 }),
        fc.integer({ min: 1, max: 9 }),
        fc.integer({ min: 1, max: 9 }),
      )
      .map(([x, y, w, h]) => rect(x, y, w, h)),
    { maxLength: 5 },
  ),
});

test('on small grids it is the largest there is: nothing larger among all rectangles of cells', () => {
  fc.assert(
    fc.property(small, fc.integer({ min: 0, max: 1 }), fc.constantFrom(1, 2, 3), (cells, overlap, step) => {
      const covers = cells.covers.map(({ x, y, width, height }) => placed(x, y, width, height));
      const options = { overlap: ticks(overlap), step: step === 1 ? null : ticks(step) };
      const centre = hiddenCentre(placed(0, 0, cells.width, cells.height), covers, options);
      expect(centre ? centre.width * centre.height : 0).toBe(bruteForce(cells, overlap, step));
      if (!centre) return;
      const grown = rect(
        centre.x - overlap,
        centre.y - overlap,
        centre.width + 2 * overlap,
        centre.height + 2 * overlap,
      );
      expect(grown.x >= 0 && grown.x + grown.width <= cells.width).toBe(true);
      expect(grown.y >= 0 && grown.y + grown.height <= cells.height).toBe(true);
      for (let x = grown.x as number; x < grown.x + grown.width; x += 1)
        for (let y = grown.y as number; y < grown.y + grown.height; y += 1)
          expect(cells.covers.some((c) => x >= c.x && x < c.x + c.width && y >= c.y && y < c.y + c.height)).toBe(true);
    }),
    { numRuns: 1_500 },
  );
});

/** A point of the card in the own frame of a piece that is tilted about its middle. */
function intoOwn({ shape, x, y, tilt }: PlacedPiece, point: Point): Point {
  const angle = (-tilt * Math.PI) / 180;
  const [dx, dy] = [point.x - x - shape.width / 2, point.y - y - shape.height / 2];
  return {
    x: shape.width / 2 + dx * Math.cos(angle) - dy * Math.sin(angle),
    y: shape.height / 2 + dx * Math.sin(angle) + dy * Math.cos(angle),
  };
}

function ontoCard({ shape, x, y, tilt }: PlacedPiece, point: Point): Point {
  const angle = (tilt * Math.PI) / 180;
  const [dx, dy] = [point.x - shape.width / 2, point.y - shape.height / 2];
  return {
    x: x + shape.width / 2 + dx * Math.cos(angle) - dy * Math.sin(angle),
    y: y + shape.height / 2 + dx * Math.sin(angle) + dy * Math.cos(angle),
  };
}

/** Whether the paper of a piece is at a point of its own frame, by the formula of its shape or very fine chords. */
function hasPaper({ shape }: PlacedPiece): (point: Point) => boolean {
  const { width, height } = shape;
  if (shape.shape === 'ellipse')
    return ({ x, y }) => ((2 * x) / width - 1) ** 2 + ((2 * y) / height - 1) ** 2 <= 1 + 1e-9;
  const { outline, holes } = pieceOutline(shape);
  const rings = [outline, ...holes].map((each) => flattenOutline(each, 150));
  return ({ x, y }) => {
    let inside = false;
    for (const ring of rings)
      for (let at = 1; at < ring.length; at += 1) {
        const [a, b] = [ring[at - 1] as Point, ring[at] as Point];
        if (a.y <= y !== b.y <= y && x < a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)) inside = !inside;
      }
    return inside;
  };
}

const profile = fc.constantFrom('scallop' as const, 'wave' as const, 'zigzag' as const, 'perforated' as const);
const punch = fc.option(
  profile.map((kind) => ({ profile: kind, repeat: inches(1 / 2), depth: inches(1 / 8) })),
  { nil: undefined },
);
const eighth = (least: number, most: number) => fc.integer({ min: least * 8, max: most * 8 }).map((n) => n / 8);
const anyPiece = fc
  .record({
    x: eighth(-2, 2),
    y: eighth(-2, 2),
    width: eighth(1, 5),
    height: eighth(1, 5),
    tilt: fc.constantFrom(0, 0, -6, 3.5, 20, 45, 90, 137),
    shape: fc.constantFrom(
      'rectangle' as const,
      'rectangle' as const,
      'ellipse' as const,
      'banner' as const,
      'tag' as const,
    ),
    radius: fc.constantFrom(0, 1 / 8, 1 / 2),
    top: punch,
    right: punch,
  })
  .map(({ x, y, width, height, tilt, shape, radius, top, right }) => {
    const corner = inches(radius);
    const corners = { tl: corner, tr: corner, br: corner, bl: corner };
    return inInches(x, y, width, height, { shape, corners, punched: { top, right } }, tilt);
  });

test('whatever the shapes and tilts, the centre and the frame around it lie below covers and on the piece (fine raster)', () => {
  let found = 0;
  fc.assert(
    fc.property(anyPiece, fc.array(anyPiece, { minLength: 1, maxLength: 4 }), (piece, covers) => {
      const overlap = inches(1 / 8);
      const centre = hiddenCentre(piece, covers, { overlap, step: inches(1 / 16) });
      if (!centre) return;
      found += 1;
      const own = hasPaper(piece);
      const over = covers.map((cover) => ({ cover, has: hasPaper(cover) }));
      const fine = 24;
      for (let i = 0; i <= fine; i += 1)
        for (let j = 0; j <= fine; j += 1) {
          // A tick inside the very edge, where both answers would be right.
          const point: Point = {
            x: centre.x - overlap + 1 + ((centre.width + 2 * overlap - 2) * i) / fine,
            y: centre.y - overlap + 1 + ((centre.height + 2 * overlap - 2) * j) / fine,
          };
          const onCard = ontoCard(piece, point);
          if (!own(point) || !over.some(({ cover, has }) => has(intoOwn(cover, onCard))))
            expect.fail(`${JSON.stringify({ piece, covers, centre, point })} is uncovered`);
        }
    }),
    { numRuns: 100 },
  );
  expect(found).toBeGreaterThan(30);
});

test('no point of a curved edge, to the tick, lies within the rectangle below one cover', () => {
  let found = 0;
  fc.assert(
    fc.property(anyPiece, anyPiece, (piece, cover) => {
      const centre = hiddenCentre(piece, [cover], { overlap: ticks(0), step: null });
      if (!centre) return;
      found += 1;
      const [right, bottom] = [centre.x + centre.width, centre.y + centre.height];
      for (const each of [piece, cover]) {
        const { outline, holes } = pieceOutline(each.shape);
        for (const point of [outline, ...holes].flatMap((ring) => flattenOutline(ring, 97))) {
          const { x, y } = each === piece ? point : intoOwn(piece, ontoCard(each, point));
          const inside = Math.min(x - centre.x, right - x, y - centre.y, bottom - y);
          if (inside > 0.01) expect.fail(`${JSON.stringify({ piece, cover, centre, point })} is ${inside} inside`);
        }
      }
    }),
    { numRuns: 400 },
  );
  expect(found).toBeGreaterThan(200);
});

test('below an ellipse it comes within 3 % of the largest rectangle in it, whose sides are 1/sqrt 2 of its axes (calculus)', () => {
  const centre = hiddenCentre(inInches(0, 0, 4, 4), [inInches(0.5, 0, 3, 4, { shape: 'ellipse' })], {
    overlap: ticks(0),
    step: null,
  });
  const most = (inches(3) * inches(4)) / 2;
  const area = (centre?.width ?? 0) * (centre?.height ?? 0);
  expect(area).toBeLessThanOrEqual(most);
  expect(area).toBeGreaterThan(0.97 * most);
});

test('rounded corners of a cover cost no more than they have to', () => {
  const radius = inches(1 / 4);
  const corners = { tl: radius, tr: radius, br: radius, bl: radius };
  const cover = inInches(0, 0, 4, 4, { corners });
  // A frame of 1/4 in is taken off anyway, but the rectangle with the frame has to be covered: a circle of 1/4 in leaves
  // (1 - 1/sqrt 2) / 4 = 0.073 in of a corner on both sides, or all of it on one.
  const centre = hiddenCentre(inInches(0, 0, 4, 4), [cover], quarter);
  const area = (centre?.width ?? 0) * (centre?.height ?? 0);
  expect(area).toBeGreaterThanOrEqual(inches(3.3125) * inches(3.25));
});

test('a cover that reaches nowhere beyond the hole and lies on no other falls through; one that lies on another does not', () => {
  const panel = inInches(0, 0, 4, 5);
  const large = inInches(0.25, 0.25, 3.5, 4.5);
  const bead = inInches(1.5, 2, 0.5, 0.5);
  const overlap: Length = inches(1 / 4);
  const centre = hiddenCentre(panel, [large], quarter) as Rect;
  expect(fallsThrough(panel, [large, bead], centre, overlap)).toEqual([]);
  expect(fallsThrough(panel, [bead, large], centre, overlap)).toEqual([0]);
  expect(fallsThrough(panel, [bead, bead, large], centre, overlap)).toEqual([0, 1]);
  // Beside the hole, wholly on the frame, nothing falls.
  expect(fallsThrough(panel, [inInches(0, 0, 0.25, 0.25), large], centre, overlap)).toEqual([]);
});
