import { inches, type Length, millimetres, ticks } from '@trimwell/geometry';
import { applyEdits, type Corners, concentricCorners, type Piece, type Sketch } from '@trimwell/sketch';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { turned } from './resize.js';
import { CORNERS, INWARD, type RoundRules, restingRadii, roundBy } from './round-drag.js';

const OWNED = [inches(1 / 8), inches(3 / 8)];

function pieceIn(sketch: Sketch, id: string): Piece {
  const found = sketch.pieces.find((piece) => piece.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

const all = (radius: Length): Corners => ({ tl: radius, tr: radius, br: radius, bl: radius });
const strip = pieceIn(sampleSketch(), 'strip');
const rules = (more: Partial<RoundRules> = {}): RoundRules => ({
  resting: restingRadii(sampleSketch(), strip, 'tl', OWNED),
  tolerance: 500,
  snaps: true,
  alone: false,
  unit: 'in',
  ...more,
});
/** A pull inwards from `corner` by `by` along each side. */
const inwards = (corner: keyof Corners, by: number) => ({ x: INWARD[corner].x * by, y: INWARD[corner].y * by });

test('pulled inwards all corners grow together, and rest at the radii of rounders', () => {
  expect(roundBy(strip, 'tl', inwards('tl', inches(1 / 8) + 400), 1, rules())).toEqual({
    corners: all(inches(1 / 8)),
    radius: inches(1 / 8),
    why: 'owned',
  });
  expect(roundBy(strip, 'br', inwards('br', inches(1 / 8) + 400), 1, rules()).radius).toBe(inches(1 / 8));
  expect(roundBy(strip, 'tl', inwards('tl', inches(1 / 4) + 90), 1, rules())).toMatchObject({
    radius: inches(1 / 4),
    why: null,
  });
  expect(roundBy(strip, 'tl', inwards('tl', 480), 1, rules())).toMatchObject({ radius: 0, why: 'square' });
  expect(roundBy(strip, 'tl', inwards('br', inches(1)), 1, rules()).radius).toBe(0);
  expect(roundBy(strip, 'tr', { x: -inches(1 / 4), y: inches(1 / 4) }, 2, rules()).radius).toBe(inches(1 / 2));
});

test('without snapping a radius goes by the finest marks', () => {
  const free = rules({ snaps: false });
  expect(roundBy(strip, 'tl', inwards('tl', inches(1 / 8) + 260), 1, free)).toMatchObject({
    radius: inches(9 / 64),
    why: null,
  });
  expect(roundBy(strip, 'tl', inwards('tl', millimetres(3) + 70), 1, { ...free, unit: 'mm' }).radius).toBe(
    millimetres(3.1),
  );
});

test('corners that differ stay as they are: only those as round as the dragged one go along, and with Shift none', () => {
  const mixed = { ...strip, corners: { ...all(inches(1 / 8)), bl: ticks(0) } };
  expect(roundBy(mixed, 'tl', inwards('tl', inches(1 / 4)), 1, rules()).corners).toEqual({
    ...all(inches(3 / 8)),
    bl: 0,
  });
  expect(roundBy(mixed, 'bl', inwards('bl', inches(3 / 8)), 1, rules()).corners).toEqual({
    ...all(inches(1 / 8)),
    bl: inches(3 / 8),
  });
  expect(roundBy(mixed, 'tl', inwards('tl', inches(1 / 4)), 1, rules({ alone: true })).corners).toEqual({
    ...all(inches(1 / 8)),
    tl: inches(3 / 8),
    bl: 0,
  });
});

test('no radius is larger than its sides have room for, alone or together', () => {
  const far = inwards('tl', inches(9));
  expect(roundBy(strip, 'tl', far, 1, rules()).radius).toBe(Math.floor(strip.height / 2));
  expect(roundBy(strip, 'tl', far, 1, rules({ alone: true })).radius).toBe(Math.min(strip.width, strip.height));
  const beside = { ...strip, corners: { ...all(ticks(0)), bl: inches(3 / 4) } };
  expect(roundBy(beside, 'tl', far, 1, rules({ alone: true })).radius).toBe(strip.height - inches(3 / 4));
});

test('the pull is taken in the frame of a tilted piece', () => {
  const tilted = { ...strip, tilt: 37 };
  const pull = turned(inwards('bl', inches(1 / 8)), 37);
  expect(roundBy(tilted, 'bl', pull, 1, rules()).radius).toBe(inches(1 / 8));
});

test('a piece rests concentric with what it lies on, a mat with what it mats', () => {
  const sketch = applyEdits(sampleSketch(), [
    { do: 'round', piece: 'panel-mat', corners: all(inches(5 / 16)) },
    { do: 'round', piece: 'panel', corners: all(inches(3 / 32)) },
  ]);
  const resting = restingRadii(sketch, pieceIn(sketch, 'panel'), 'tl', OWNED);
  expect(resting).toContainEqual({ radius: inches(3 / 16), why: 'concentric' });
  const mat = restingRadii(sketch, pieceIn(sketch, 'panel-mat'), 'tl', OWNED);
  expect(mat).toContainEqual({ radius: inches(7 / 32), why: 'concentric' });
  const moment = roundBy(
    pieceIn(sketch, 'panel-mat'),
    'tl',
    inwards('tl', inches(-3 / 32) + 50),
    1,
    rules({ resting: mat }),
  );
  expect(moment).toMatchObject({ radius: inches(7 / 32), why: 'concentric' });
});

test('a concentric mat is never given a radius that its piece cannot follow', () => {
  const sketch = applyEdits(sampleSketch(), [
    { do: 'mat', piece: 'panel-mat', mats: { piece: 'panel', reveal: inches(1 / 8), concentric: true } },
    { do: 'round', piece: 'panel', corners: all(inches(1 / 4)) },
  ]);
  const mat = pieceIn(sketch, 'panel-mat');
  fc.assert(
    fc.property(
      fc.constantFrom(...CORNERS),
      fc.integer({ min: -60_000, max: 60_000 }),
      fc.boolean(),
      (corner, by, alone) => {
        const { corners } = roundBy(
          mat,
          corner,
          inwards(corner, by),
          1,
          rules({ alone, resting: restingRadii(sketch, mat, corner, OWNED) }),
        );
        const after = applyEdits(sketch, [{ do: 'round', piece: 'panel-mat', corners }]);
        expect(pieceIn(after, 'panel-mat').corners).toEqual(corners);
        expect(concentricCorners(pieceIn(after, 'panel').corners, inches(1 / 8))).toEqual(corners);
      },
    ),
  );
});
