import { type PlacedPiece, type PunchProfile, ticks } from '@trimwell/geometry';
import * as fc from 'fast-check';

/** A mark of 1/16 in, in ticks. */
const MARK = 1_016;

export interface PieceRange {
  /** How far its untilted corner may lie from the face's, in marks. */
  readonly place: number;
  /** The shortest and the longest that a side may be, in marks. */
  readonly side: readonly [least: number, most: number];
  /** What its corners may be rounded by, in marks; 0 is square as well. */
  readonly radius: number;
  /** A punch that the lower edge of a rectangle may have. */
  readonly punch?: PunchProfile;
}

/** Pieces of every shape on marks of the ruler, tilted and not, many of them edge to edge or corner to corner. */
export function randomPiece({ place, side: [min, max], radius, punch }: PieceRange): fc.Arbitrary<PlacedPiece> {
  return fc
    .record({
      shape: fc.constantFrom('rectangle', 'rectangle', 'ellipse', 'banner', 'tag'),
      x: fc.integer({ min: 0, max: place }),
      y: fc.integer({ min: 0, max: place }),
      width: fc.integer({ min, max }),
      height: fc.integer({ min, max }),
      tilt: fc.constantFrom(0, 0, 12, -35, 90),
      rounded: fc.constantFrom(0, radius),
      punched: punch ? fc.boolean() : fc.constant(false),
    })
    .map(({ shape, x, y, width, height, tilt, rounded, punched }) => {
      const r = ticks(rounded * MARK);
      return {
        shape: {
          shape,
          width: ticks(width * MARK),
          height: ticks(height * MARK),
          corners: { tl: r, tr: r, br: r, bl: r },
          punched: punch && punched && shape === 'rectangle' ? { bottom: punch } : {},
        },
        x: ticks(x * MARK),
        y: ticks(y * MARK),
        tilt,
      };
    });
}
