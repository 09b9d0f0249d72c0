import { expect, test } from 'vitest';
import { type Length, ticks } from '../length/length.js';
import { outlineArea } from '../outline/outline-area.js';
import { pieceOutline } from '../outline/shapes.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { overlapsOf } from './overlaps.js';
import {
  CURVE_ERROR,
  NOTHING,
  regionArea,
  regionBounds,
  regionOf,
  regionPerimeter,
  regionRings,
  unite,
} from './region.js';
import { visibleRegions } from './visible-regions.js';

interface Wish {
  readonly shape?: PlacedPiece['shape']['shape'];
  readonly tilt?: number;
  readonly radius?: number;
  readonly punched?: boolean;
}

function piece(
  [x, y, width, height]: readonly [number, number, number, number],
  { shape = 'rectangle', tilt = 0, radius = 0, punched = false }: Wish = {},
): PlacedPiece {
  const r: Length = ticks(radius);
  const punch = { profile: 'scallop', repeat: ticks(4_064), depth: ticks(2_032) } as const;
  return {
    shape: {
      shape,
      width: ticks(width),
      height: ticks(height),
      corners: { tl: r, tr: r, br: r, bl: r },
      punched: punched ? { bottom: punch } : {},
    },
    x: ticks(x),
    y: ticks(y),
    tilt,
  };
}

const opaque = (placed: PlacedPiece) => ({ placed, opaque: true });

test('plain rectangles are exact: visible, hidden and overlap to the square tick', () => {
  const stack = [piece([0, 0, 10_001, 8_001]), piece([5_001, 3_001, 10_000, 3_000]), piece([9_000, -7, 2_001, 9_000])];
  const [low, middle, top] = visibleRegions(stack.map(opaque));
  // Below: 10001 x 8001, less 5000 x 3000, less 1001 x 8001, of which 1001 x 3000 was counted twice (by hand).
  const hidden = 5_000 * 3_000 + 1_001 * 8_001 - 1_001 * 3_000;
  expect(regionArea(low?.hidden ?? NOTHING)).toBe(hidden);
  expect(regionArea(low?.visible ?? NOTHING)).toBe(10_001 * 8_001 - hidden);
  expect(regionArea(middle?.hidden ?? NOTHING)).toBe(2_001 * 3_000);
  expect(regionArea(top?.hidden ?? NOTHING)).toBe(0);
  expect(overlapsOf(stack).map(({ lower, upper, area }) => [lower, upper, area])).toEqual([
    [0, 1, 5_000 * 3_000],
    [0, 2, 1_001 * 8_001],
    [1, 2, 2_001 * 3_000],
  ]);
  expect(regionBounds(low?.visible ?? NOTHING)).toEqual({ left: 0, top: 0, right: 9_000, bottom: 8_001 });
});

test('what only touches does not overlap; one tick does, and edges that are tilted alike and meet do not', () => {
  const at = (x: number) => overlapsOf([piece([0, 0, 4_000, 4_000]), piece([x, 0, 4_000, 4_000])]);
  expect(at(4_000)).toEqual([]);
  expect(at(3_999).map(({ area }) => area)).toEqual([4_000]);
  // Two halves of one tilted square: their middles lie 4000 ticks apart along the tilted side (by hand).
  const angle = (30 * Math.PI) / 180;
  const beside = piece([Math.round(4_000 * Math.cos(angle)), Math.round(4_000 * Math.sin(angle)), 4_000, 80_000], {
    tilt: 30,
  });
  expect(overlapsOf([piece([0, 0, 4_000, 80_000], { tilt: 30 }), beside])).toEqual([]);
});

test('nothing is hidden below vellum', () => {
  const [low] = visibleRegions([opaque(piece([0, 0, 100, 100])), { placed: piece([0, 0, 100, 100]), opaque: false }]);
  expect(regionArea(low?.hidden ?? NOTHING)).toBe(0);
  expect(regionArea(low?.visible ?? NOTHING)).toBe(10_000);
});

test('two circles of radius r, r apart, share a lens of r^2 (2 pi / 3 - sqrt 3 / 2) (plane geometry)', () => {
  const r = 32_512;
  const circle = (x: number) => piece([x, 0, 2 * r, 2 * r], { shape: 'ellipse' });
  const [lens] = overlapsOf([circle(0), circle(r)]);
  const exact = r * r * ((2 * Math.PI) / 3 - Math.sqrt(3) / 2);
  // The edge is 2 arcs of a third of the circle; each chord is within the error of its arc.
  expect(Math.abs((lens?.area ?? 0) - exact)).toBeLessThan(CURVE_ERROR * r * ((4 * Math.PI) / 3));
  expect(Math.abs((lens?.area ?? 0) / exact - 1)).toBeLessThan(1e-3);
});

test.each<readonly [string, Wish]>([
  ['a rounded rectangle', { radius: 6_000 }],
  ['a tilted one', { radius: 6_000, tilt: 23 }],
  ['an oval', { shape: 'ellipse' }],
  ['a tilted oval', { shape: 'ellipse', tilt: -41 }],
  ['a punched strip', { punched: true }],
  ['a banner', { shape: 'banner', tilt: 5 }],
  ['a tag with its hole', { shape: 'tag' }],
])('the area of %s is that of its exact outline, within the error of its curves', (_name, wish) => {
  const placed = piece([1_000, 2_000, 60_960, 32_512], wish);
  const { outline, holes } = pieceOutline(placed.shape);
  const exact = outlineArea(outline) - holes.reduce((sum, hole) => sum + outlineArea(hole), 0);
  const region = regionOf(placed);
  expect(Math.abs(regionArea(region) - exact)).toBeLessThan(CURVE_ERROR * regionPerimeter(region));
  expect(Math.abs(regionArea(region) / exact - 1)).toBeLessThan(1e-3);
});

test('visible and hidden are all of a piece, and what shows of all is what the pieces cover together', () => {
  const stack = Array.from({ length: 12 }, (_, n) =>
    piece(
      [(n * 7_919) % 40_000, (n * 5_477) % 30_000, 9_000 + ((n * 3_571) % 30_000), 8_000 + ((n * 2_503) % 20_000)],
      {
        shape: (['rectangle', 'ellipse', 'tag', 'banner'] as const)[n % 4] ?? 'rectangle',
        tilt: (n * 37) % 90,
        radius: n % 2 === 0 ? 2_000 : 0,
        punched: n % 3 === 0,
      },
    ),
  );
  const found = visibleRegions(stack.map(opaque));
  for (const { whole, visible, hidden } of found) {
    // Corners that are made by cutting lie on whole units: an error of a unit along each edge at most.
    const room = (regionPerimeter(visible) + regionPerimeter(hidden)) / 64 + 1;
    expect(Math.abs(regionArea(visible) + regionArea(hidden) - regionArea(whole))).toBeLessThan(room);
  }
  const sum = found.reduce((all, { visible }) => all + regionArea(visible), 0);
  const together = regionArea(unite(stack.map(regionOf)));
  const room = found.reduce((all, { visible }) => all + regionPerimeter(visible) / 64 + 1, 0);
  expect(Math.abs(sum - together)).toBeLessThan(room);
  expect(regionRings(found[0]?.whole ?? NOTHING).length).toBeGreaterThan(0);
});
