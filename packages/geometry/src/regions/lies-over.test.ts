import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { ticks } from '../length/length.js';
import type { PlacedPiece } from '../stack/placed-piece.js';
import { lieOver, piecesUnder } from './lies-over.js';
import { overlapsOf } from './overlaps.js';

const punch = { profile: 'scallop', repeat: ticks(4_064), depth: ticks(2_032) } as const;

/** Pieces on marks of 1,016 ticks, many of them edge to edge or corner to corner. */
const piece: fc.Arbitrary<PlacedPiece> = fc
  .record({
    shape: fc.constantFrom('rectangle', 'rectangle', 'ellipse', 'banner', 'tag'),
    x: fc.integer({ min: 0, max: 30 }),
    y: fc.integer({ min: 0, max: 30 }),
    width: fc.integer({ min: 4, max: 20 }),
    height: fc.integer({ min: 4, max: 20 }),
    tilt: fc.constantFrom(0, 0, 12, -35, 90),
    radius: fc.constantFrom(0, 1_016),
    punched: fc.boolean(),
  })
  .map(({ shape, x, y, width, height, tilt, radius, punched }) => {
    const r = ticks(radius);
    return {
      shape: {
        shape,
        width: ticks(width * 1_016),
        height: ticks(height * 1_016),
        corners: { tl: r, tr: r, br: r, bl: r },
        punched: punched && shape === 'rectangle' ? { bottom: punch } : {},
      },
      x: ticks(x * 1_016),
      y: ticks(y * 1_016),
      tilt,
    };
  });

test('lines and points tell of two pieces what their regions tell', () => {
  const seen = { over: 0, apart: 0 };
  fc.assert(
    fc.property(piece, piece, (one, other) => {
      const found = lieOver(one, other);
      seen[found ? 'over' : 'apart'] += 1;
      expect(found).toBe(overlapsOf([one, other]).length > 0);
      expect(lieOver(other, one)).toBe(found);
    }),
    { numRuns: 1_000 },
  );
  expect(Math.min(seen.over, seen.apart)).toBeGreaterThan(200);
});

test('the pieces under each of a stack are those of its overlaps', () => {
  fc.assert(
    fc.property(fc.array(piece, { minLength: 2, maxLength: 12 }), (stack) => {
      const wanted = stack.map((_, at) =>
        overlapsOf(stack)
          .filter(({ upper }) => upper === at)
          .map(({ lower }) => lower),
      );
      expect(piecesUnder(stack)).toEqual(wanted);
    }),
    { numRuns: 60 },
  );
});
