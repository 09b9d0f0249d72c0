import { inches, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { HANDLES, type Handle, handlePoint, leastSide, type Place, resizePiece, turned } from './resize.js';

const step = inches(1 / 16);
const place: Place = { x: inches(1), y: inches(2), width: inches(3), height: inches(1) };
const loose = { least: step, step: null, proportion: false } as const;

function opposite({ x, y }: Handle): Handle {
  return { x: (0 - x) as Handle['x'], y: (0 - y) as Handle['y'] };
}

const anyPlace = fc
  .tuple(
    fc.integer({ min: -90_000, max: 90_000 }),
    fc.integer({ min: -90_000, max: 90_000 }),
    fc.integer({ min: 1100, max: 90_000 }),
    fc.integer({ min: 1100, max: 90_000 }),
  )
  .map(([x, y, width, height]): Place => ({ x: ticks(x), y: ticks(y), width: ticks(width), height: ticks(height) }));
const pull = fc.integer({ min: -120_000, max: 120_000 });
const tilts = fc.double({ min: -180, max: 180, noNaN: true });

test('each handle of an upright piece moves its own edges, exactly', () => {
  const resized = (handle: Handle) => Object.values(resizePiece(place, 0, handle, { x: 160, y: 320 }, loose));
  const { x, y, width, height } = place;
  expect(HANDLES.map(resized)).toEqual([
    [x + 160, y + 320, width - 160, height - 320],
    [x, y + 320, width, height - 320],
    [x, y + 320, width + 160, height - 320],
    [x, y, width + 160, height],
    [x, y, width + 160, height + 320],
    [x, y, width, height + 320],
    [x + 160, y, width - 160, height + 320],
    [x + 160, y, width - 160, height],
  ]);
});

test('a quarter turn lets the right handle be pulled down', () => {
  const down = resizePiece(place, 90, { x: 1, y: 0 }, { x: 0, y: inches(1) }, loose);
  expect(down).toEqual({ x: inches(0.5), y: inches(2.5), width: inches(4), height: inches(1) });
});

test('whatever the tilt, the opposite corner or edge stays within half a tick, or half a mark on the ruler', () => {
  fc.assert(
    fc.property(
      anyPlace,
      tilts,
      fc.constantFrom(...HANDLES),
      pull,
      pull,
      fc.boolean(),
      fc.boolean(),
      (from, tilt, handle, x, y, stepped, proportion) => {
        const after = resizePiece(
          from,
          tilt,
          handle,
          { x, y },
          { least: step, step: stepped ? step : null, proportion },
        );
        const [was, is] = [handlePoint(from, tilt, opposite(handle)), handlePoint(after, tilt, opposite(handle))];
        const astray = (stepped ? step / 2 : 0) + 0.5 + 1e-6;
        expect(Math.abs(is.x - was.x)).toBeLessThanOrEqual(astray);
        expect(Math.abs(is.y - was.y)).toBeLessThanOrEqual(astray);
        expect(Math.min(after.width, after.height)).toBeGreaterThanOrEqual(step);
        expect(Object.values(after).every(Number.isSafeInteger)).toBe(true);
        if (stepped && !proportion) {
          if (handle.x !== 0) expect(after.width % step).toBe(0);
          if (handle.y !== 0) expect(after.height % step).toBe(0);
        }
      },
    ),
  );
});

test('a pull that leaves room follows the pointer in the piece’s own frame', () => {
  fc.assert(
    fc.property(
      anyPlace,
      tilts,
      fc.integer({ min: 0, max: 50_000 }),
      fc.integer({ min: 0, max: 50_000 }),
      (from, tilt, wide, high) => {
        const after = resizePiece(from, tilt, { x: 1, y: 1 }, turned({ x: wide, y: high }, tilt), loose);
        expect([after.width, after.height]).toEqual([from.width + wide, from.height + high]);
      },
    ),
  );
});

test('proportion is kept to the tick, from a corner or an edge', () => {
  fc.assert(
    fc.property(anyPlace, tilts, fc.constantFrom(...HANDLES), pull, pull, (from, tilt, handle, x, y) => {
      const after = resizePiece(from, tilt, handle, { x, y }, { least: ticks(1), step: null, proportion: true });
      const factor = Math.max(after.width, after.height) / Math.max(from.width, from.height);
      expect(Math.abs(after.width - Math.max(1, from.width * factor))).toBeLessThanOrEqual(0.5 + 1e-6);
      expect(Math.abs(after.height - Math.max(1, from.height * factor))).toBeLessThanOrEqual(0.5 + 1e-6);
    }),
  );
});

test('a mat is never pulled smaller than what leaves one mark of its piece', () => {
  const sketch = sampleSketch();
  const [mat, panel] = sketch.pieces;
  if (!mat || !panel) throw new Error('the sample has a matted panel');
  expect(leastSide(sketch, mat, step)).toBe(inches(1 / 4 + 1 / 16));
  expect(leastSide(sketch, panel, step)).toBe(step);
});

const marks = (most: number) => fc.integer({ min: 1, max: most }).map((count) => ticks(count * step));
const ruledPlace = fc.record({ x: marks(90), y: marks(90), width: marks(60), height: marks(60) });

test('on the ruler it stays on the ruler: size and place, upright or tilted, with the proportion or without', () => {
  fc.assert(
    fc.property(
      ruledPlace,
      fc.oneof(fc.constant(0), tilts),
      fc.constantFrom(...HANDLES),
      pull,
      pull,
      fc.boolean(),
      (from, tilt, handle, x, y, proportion) => {
        const after = resizePiece(from, tilt, handle, { x, y }, { least: step, step, proportion });
        expect(Object.values(after).map((length) => Math.abs(length % step))).toEqual([0, 0, 0, 0]);
      },
    ),
  );
});

test('a proportion is kept to half a mark, and a least size between two marks comes to the next', () => {
  const from: Place = { x: inches(1), y: inches(1), width: inches(2), height: inches(1 + 1 / 16) };
  const after = resizePiece(
    from,
    0,
    { x: 1, y: 1 },
    { x: inches(1), y: inches(0.5) },
    { least: step, step, proportion: true },
  );
  expect(Math.abs(after.height - (after.width * from.height) / from.width)).toBeLessThanOrEqual(step / 2);
  const least = ticks(step + 1);
  const small = resizePiece(
    from,
    0,
    { x: 1, y: 1 },
    { x: -inches(9), y: -inches(9) },
    { least, step, proportion: false },
  );
  expect([small.width, small.height]).toEqual([2 * step, 2 * step]);
});
