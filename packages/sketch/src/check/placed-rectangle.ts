import { type PlacedPiece, ticks } from '@trimwell/geometry';

const SQUARE = ticks(0);

/** A rectangle with square corners and plain edges where it lies on a face, in whole ticks; tilted about its middle. */
export function placedRectangle(x: number, y: number, width: number, height: number, tilt = 0): PlacedPiece {
  return {
    shape: {
      shape: 'rectangle',
      width: ticks(width),
      height: ticks(height),
      corners: { tl: SQUARE, tr: SQUARE, br: SQUARE, bl: SQUARE },
      punched: {},
    },
    x: ticks(x),
    y: ticks(y),
    tilt,
  };
}
