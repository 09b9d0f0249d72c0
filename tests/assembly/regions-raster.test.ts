import { type PlacedPiece, ticks } from '@trimwell/geometry';
import {
  CURVE_ERROR,
  overlapsOf,
  regionArea,
  regionOf,
  regionPerimeter,
  visibleRegions,
} from '@trimwell/geometry/regions';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { rasterOf } from './line-raster.js';

/** Lines are 1/64 in apart. */
const GAP = 254;

const punch = (profile: 'scallop' | 'wave' | 'zigzag' | 'eyelet scallop') =>
  ({ profile, repeat: ticks(6_096), depth: ticks(2_032) }) as const;

const piece: fc.Arbitrary<PlacedPiece> = fc
  .record({
    shape: fc.constantFrom('rectangle', 'rectangle', 'ellipse', 'banner', 'tag'),
    x: fc.integer({ min: -4_000, max: 50_000 }),
    y: fc.integer({ min: -4_000, max: 60_000 }),
    width: fc.integer({ min: 6_000, max: 50_000 }),
    height: fc.integer({ min: 6_000, max: 50_000 }),
    tilt: fc.constantFrom(0, 0, 90, 180, -7, 12.5, 45, 133),
    radius: fc.constantFrom(0, 1_000, 2_500),
    edge: fc.constantFrom('top', 'left', 'none'),
    profile: fc.constantFrom('scallop', 'wave', 'zigzag', 'eyelet scallop'),
  })
  .map(({ radius, edge, profile, width, height, x, y, tilt, shape }) => {
    const r = ticks(radius);
    return {
      shape: {
        shape,
        width: ticks(width),
        height: ticks(height),
        corners: { tl: r, tr: r, br: r, bl: r },
        punched: edge === 'none' || shape !== 'rectangle' ? {} : { [edge]: punch(profile) },
      },
      x: ticks(x),
      y: ticks(y),
      tilt,
    };
  });

/**
 * A sum of lines `GAP` apart differs from an area by at most half of GAP times what the length of the line varies by, which is no
 * more than the perimeter; and a region differs by CURVE_ERROR along its edges, those that cut it included.
 */
function room(perimeter: number): number {
  return (GAP / 2 + CURVE_ERROR) * perimeter;
}

test('of 500 random stacks, what shows of every piece and what pairs share is what a fine raster of lines finds', () => {
  let looked = 0;
  let [off, all] = [0, 0];
  fc.assert(
    fc.property(fc.array(piece, { minLength: 2, maxLength: 5 }), (stack) => {
      const raster = rasterOf(stack, GAP);
      const showing = visibleRegions(stack.map((placed) => ({ placed, opaque: true })));
      showing.forEach(({ visible, whole, hidden }, at) => {
        const edges = regionPerimeter(visible) + regionPerimeter(whole) + regionPerimeter(hidden);
        expect(Math.abs(regionArea(visible) - (raster.visible[at] ?? 0))).toBeLessThanOrEqual(room(edges));
        looked += 1;
        off += Math.abs(regionArea(visible) - (raster.visible[at] ?? 0));
        all += regionArea(visible);
      });
      const overlaps = overlapsOf(stack);
      stack.forEach((one, lower) => {
        stack.slice(lower + 1).forEach((other, after) => {
          const upper = lower + 1 + after;
          const found = overlaps.find((each) => each.lower === lower && each.upper === upper);
          const edges = regionPerimeter(regionOf(one)) + regionPerimeter(regionOf(other));
          const shared = raster.shared[lower]?.[upper] ?? 0;
          expect(Math.abs((found?.area ?? 0) - shared)).toBeLessThanOrEqual(room(edges));
        });
      });
    }),
    { numRuns: 500, seed: 17 },
  );
  expect(looked).toBeGreaterThan(1_000);
  // The bound holds for the worst outline; all together they are far nearer, within what lines 1/64 in apart can tell.
  expect(off / all).toBeLessThan(2e-3);
});
