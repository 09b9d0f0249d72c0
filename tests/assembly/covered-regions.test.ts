import { coveringOf, holdsPoint, type PlacedPiece, ticks } from '@trimwell/geometry';
import { regionArea, regionOf, regionPerimeter, unite, without } from '@trimwell/geometry/regions';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';

const piece = (most: number): fc.Arbitrary<PlacedPiece> =>
  fc
    .record({
      shape: fc.constantFrom('rectangle', 'rectangle', 'ellipse', 'banner', 'tag'),
      x: fc.integer({ min: 0, max: 24 }),
      y: fc.integer({ min: 0, max: 24 }),
      width: fc.integer({ min: 8, max: most }),
      height: fc.integer({ min: 8, max: most }),
      tilt: fc.constantFrom(0, 0, 12, -35, 90),
      radius: fc.constantFrom(0, 2),
    })
    .map(({ shape, x, y, width, height, tilt, radius }) => {
      const r = ticks(radius * 1_016);
      return {
        shape: {
          shape,
          width: ticks(width * 1_016),
          height: ticks(height * 1_016),
          corners: { tl: r, tr: r, br: r, bl: r },
          punched: {},
        },
        x: ticks(x * 1_016),
        y: ticks(y * 1_016),
        tilt,
      };
    });

test('what quick marks and lines say of a covered piece is what exact regions say', () => {
  const seen = { hidden: 0, shown: 0 };
  fc.assert(
    fc.property(piece(24), fc.array(piece(60), { minLength: 1, maxLength: 7 }), (target, covers) => {
      const found = coveringOf(target, covers);
      const whole = regionOf(target);
      const visible = regionArea(without(whole, unite(covers.map(regionOf))));
      seen[found.is] += 1;
      if (found.is === 'hidden') {
        // Slivers along edges, no wider than a band and the error of a chord, may be left out.
        expect(visible).toBeLessThan((target.shape.height / 96 + 80) * regionPerimeter(whole));
        expect(found.by.every((cover) => covers.includes(cover))).toBe(true);
        return;
      }
      expect(visible).toBeGreaterThan(0);
      expect(holdsPoint(target, found.at)).toBe(true);
      expect(covers.filter((cover) => holdsPoint(cover, found.at))).toEqual([]);
    }),
    { numRuns: 400, seed: 29 },
  );
  expect(Math.min(seen.hidden, seen.shown)).toBeGreaterThan(60);
});
