import { coveringOf, holdsPoint } from '@trimwell/geometry';
import { regionArea, regionOf, regionPerimeter, unite, without } from '@trimwell/geometry/regions';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomPiece } from '../kit/random-piece.js';

const piece = (most: number) => randomPiece({ place: 24, side: [8, most], radius: 2 });

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
