import { inches, type Length, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { Corners, Piece, Sketch } from '../model/sketch.js';
import { expectSketch } from '../read/read-sketch.js';
import { writeSketch } from '../read/write-sketch.js';
import { applyEdit, applyEdits, EditError } from './apply-edit.js';
import { concentricCorners, cornersWithin, isRounded, mattedCorners, sameCorners } from './mats.js';

const REVEAL = inches(1 / 8);

function all(radius: Length): Corners {
  return { tl: radius, tr: radius, br: radius, bl: radius };
}

function pieceIn(sketch: Sketch, id: string): Piece {
  const found = sketch.pieces.find((piece) => piece.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

/** The sample with a concentric mat round its panel. */
const concentric = applyEdit(sampleSketch(), {
  do: 'mat',
  piece: 'panel-mat',
  mats: { piece: 'panel', reveal: REVEAL, concentric: true },
});

const anyCorners = fc
  .tuple(
    ...([0, 1, 2, 3].map(() => fc.oneof(fc.constant(0), fc.nat(9_000))) as [
      fc.Arbitrary<number>,
      fc.Arbitrary<number>,
      fc.Arbitrary<number>,
      fc.Arbitrary<number>,
    ]),
  )
  .map(([tl, tr, br, bl]): Corners => ({ tl: ticks(tl), tr: ticks(tr), br: ticks(br), bl: ticks(bl) }));

test('a concentric mat follows the corners of its piece: radius and reveal together, square stays square', () => {
  const corners = { tl: inches(1 / 4), tr: ticks(0), br: inches(1 / 2), bl: ticks(1) };
  const after = applyEdit(concentric, { do: 'round', piece: 'panel', corners });
  expect(pieceIn(after, 'panel').corners).toEqual(corners);
  expect(pieceIn(after, 'panel-mat').corners).toEqual({
    tl: inches(3 / 8),
    tr: 0,
    br: inches(5 / 8),
    bl: REVEAL + 1,
  });
});

test('turning it on brings the corners at once, and so does another reveal; turning it off leaves them', () => {
  const round = applyEdit(sampleSketch(), { do: 'round', piece: 'panel', corners: all(inches(1 / 4)) });
  expect(pieceIn(round, 'panel-mat').corners).toEqual(all(ticks(0)));
  const on = applyEdit(round, {
    do: 'mat',
    piece: 'panel-mat',
    mats: { piece: 'panel', reveal: REVEAL, concentric: true },
  });
  expect(pieceIn(on, 'panel-mat').corners).toEqual(all(inches(3 / 8)));
  const wider = applyEdit(on, {
    do: 'mat',
    piece: 'panel-mat',
    mats: { piece: 'panel', reveal: inches(1 / 4), concentric: true },
  });
  expect(pieceIn(wider, 'panel-mat').corners).toEqual(all(inches(1 / 2)));
  const off = applyEdits(wider, [
    { do: 'mat', piece: 'panel-mat', mats: { piece: 'panel', reveal: inches(1 / 4), concentric: false } },
    { do: 'round', piece: 'panel', corners: all(ticks(0)) },
  ]);
  expect(pieceIn(off, 'panel-mat').corners).toEqual(all(inches(1 / 2)));
});

test('rounding a concentric mat rounds its piece, through any number of mats', () => {
  const outer: Piece = { ...pieceIn(concentric, 'panel-mat'), id: 'outer' };
  const { mats: _mats, ...free } = outer;
  const nested = applyEdits(concentric, [
    { do: 'add-piece', piece: free, at: 0 },
    { do: 'mat', piece: 'outer', mats: { piece: 'panel-mat', reveal: inches(1 / 16), concentric: true } },
    { do: 'round', piece: 'outer', corners: all(inches(7 / 16)) },
  ]);
  expect(pieceIn(nested, 'panel').corners).toEqual(all(inches(1 / 4)));
  expect(pieceIn(nested, 'panel-mat').corners).toEqual(all(inches(3 / 8)));
  expect(pieceIn(nested, 'outer').corners).toEqual(all(inches(7 / 16)));
});

test('a radius that leaves its piece none is refused by name, value and what is allowed', () => {
  const refused = () =>
    applyEdit(concentric, { do: 'round', piece: 'panel-mat', corners: { ...all(ticks(0)), br: REVEAL } });
  expect(refused).toThrow(EditError);
  expect(refused).toThrow(/round\.corners\.br.*2032.*larger than the reveal/s);
  expect(
    pieceIn(applyEdit(concentric, { do: 'round', piece: 'panel-mat', corners: all(ticks(0)) }), 'panel').corners,
  ).toEqual(all(ticks(0)));
});

test('a mat without the wish keeps corners of its own, and one that is no rectangle too', () => {
  const own = applyEdit(sampleSketch(), { do: 'round', piece: 'panel-mat', corners: all(inches(1 / 16)) });
  const after = applyEdit(own, { do: 'round', piece: 'panel', corners: all(inches(1 / 4)) });
  expect(pieceIn(after, 'panel-mat').corners).toEqual(all(inches(1 / 16)));
  const oval = applyEdits(concentric, [
    { do: 'alter-piece', piece: 'panel-mat', shape: 'ellipse' },
    { do: 'round', piece: 'panel', corners: all(inches(1 / 4)) },
  ]);
  expect(pieceIn(oval, 'panel-mat').corners).toEqual(all(ticks(0)));
});

test('however pieces go, the corners of a concentric mat stay parallel to those of its piece', () => {
  fc.assert(
    fc.property(
      anyCorners,
      fc.integer({ min: 1, max: 60_000 }),
      fc.integer({ min: -90, max: 90 }),
      (corners, side, tilt) => {
        const after = applyEdits(concentric, [
          { do: 'round', piece: 'panel', corners },
          { do: 'resize', piece: 'panel', x: ticks(side), y: ticks(3), width: ticks(side), height: ticks(side + 5) },
          { do: 'tilt', piece: 'panel', tilt },
        ]);
        const mat = pieceIn(after, 'panel-mat');
        expect(mat.corners).toEqual(concentricCorners(corners, REVEAL));
        expect(mattedCorners(mat.corners, REVEAL)).toEqual(corners);
        expect(expectSketch(writeSketch(after))).toEqual(after);
      },
    ),
  );
});

test('within and around are the reverse of one another where there is a radius for both', () => {
  fc.assert(
    fc.property(anyCorners, fc.integer({ min: 1, max: 5_000 }), (corners, reveal) => {
      expect(cornersWithin(concentricCorners(corners, ticks(reveal)), ticks(reveal))).toEqual(corners);
      const inside = mattedCorners(corners, ticks(reveal));
      const possible = Object.values(corners).every((radius) => radius === 0 || radius > reveal);
      expect(inside !== null).toBe(possible);
      if (inside) expect(concentricCorners(inside, ticks(reveal))).toEqual(corners);
    }),
  );
  expect(sameCorners(all(ticks(3)), { ...all(ticks(3)), bl: ticks(4) })).toBe(false);
  expect(isRounded({ ...all(ticks(0)), bl: ticks(1) })).toBe(true);
  expect(isRounded(all(ticks(0)))).toBe(false);
});
