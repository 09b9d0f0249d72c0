import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomPiece } from '../../../../tests/kit/random-piece.js';
import { ticks } from '../length/length.js';
import { lieOver, piecesUnder } from './lies-over.js';
import { overlapsOf } from './overlaps.js';

const punch = { profile: 'scallop', repeat: ticks(4_064), depth: ticks(2_032) } as const;

const piece = randomPiece({ place: 30, side: [4, 20], radius: 1, punch });

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
