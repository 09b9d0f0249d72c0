import { inches, type Length, millimetres, ticks, type Unit } from '@trimwell/geometry';
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { BEGINNINGS, beginSketch } from '../begin/beginnings.js';
import { checkSketch } from '../check/findings.js';
import { rulerStep } from '../model/ruler-steps.js';
import type { Piece, Sketch } from '../model/sketch.js';
import { applyEdits } from './apply-edit.js';
import { fitToCard } from './fit-to-card.js';
import { matPlace } from './mats.js';

function fitted(sketch: Sketch, width: Length, height: Length): Sketch {
  return applyEdits(sketch, fitToCard(sketch, { ...sketch.card, width, height }));
}

function piece(sketch: Sketch, id: string): Piece {
  const found = sketch.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

const zero = ticks(0);

function free(id: string, place: Pick<Piece, 'x' | 'y' | 'width' | 'height'>, more: Partial<Piece> = {}): Piece {
  return {
    ...place,
    id,
    name: id,
    kind: 'panel',
    face: 'front',
    shape: 'rectangle',
    tilt: 0,
    corners: { tl: zero, tr: zero, br: zero, bl: zero },
    punched: {},
    from: 'ivory',
    raise: zero,
    perCard: 1,
    ...more,
  };
}

/** A sketch on a card of so many steps, its pieces in steps, each with a mat where `reveal` is not 0. */
function inSteps(
  unit: Unit,
  card: readonly [number, number],
  boxes: readonly {
    x: number;
    y: number;
    width: number;
    height: number;
    reveal: number;
    tilt: number;
    round: boolean;
  }[],
): Sketch {
  const step = rulerStep(unit);
  const at = (steps: number): Length => ticks(steps * step);
  const pieces = boxes.flatMap(({ x, y, width, height, reveal, tilt, round }, index) => {
    const place = { x: at(x), y: at(y), width: at(width), height: at(height) };
    const inner = free(`piece-${index}`, place, { tilt, shape: round ? 'ellipse' : 'rectangle' });
    if (reveal === 0) return [inner];
    const mats = { piece: inner.id, reveal: at(reveal) };
    return [{ ...inner, ...matPlace(inner, at(reveal)), id: `mat-${index}`, kind: 'mat' as const, mats }, inner];
  });
  const sample = sampleSketch();
  const [width, height] = [at(card[0]), at(card[1])];
  return {
    ...sample,
    unit,
    card: { ...sample.card, width, height },
    pieces,
    batch: { ...sample.batch, contrast: [] },
    variations: [],
  };
}

const side = fc.integer({ min: 40, max: 160 });
const cards = fc.tuple(side, side);

/** A piece that lies on a card of that size with its mat: sometimes flush with an edge, sometimes in the middle. */
function boxOn([across, down]: readonly [number, number]) {
  const along = (whole: number) =>
    fc
      .record({
        size: fc.integer({ min: 8, max: whole }),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
        how: fc.constantFrom('anywhere', 'start', 'end', 'middle'),
      })
      .map(({ size, share, how }) => {
        const even = how === 'middle' && (whole - size) % 2 !== 0 ? size - 1 : size;
        const places = {
          anywhere: Math.floor((whole - even) * share),
          start: 0,
          end: whole - even,
          middle: (whole - even) / 2,
        };
        return { at: places[how], size: even };
      });
  return fc
    .record({ x: along(across), y: along(down), reveal: fc.constantFrom(0, 0, 1, 2, 3) })
    .map(({ x, y, reveal }) => ({
      x: x.at + reveal,
      y: y.at + reveal,
      width: x.size - 2 * reveal,
      height: y.size - 2 * reveal,
      reveal,
      tilt: 0,
      round: false,
    }));
}

const scenes = cards.chain((card) =>
  fc.record({
    unit: fc.constantFrom<Unit>('in', 'mm'),
    card: fc.constant(card),
    boxes: fc.array(boxOn(card), { minLength: 1, maxLength: 6 }),
    to: cards,
  }),
);

test('on any card: on the card, on the ruler, even, flush and centred stay so', () => {
  fc.assert(
    fc.property(scenes, ({ unit, card, boxes, to }) => {
      const step = rulerStep(unit);
      const before = inSteps(unit, card, boxes);
      const [width, height] = [ticks(to[0] * step), ticks(to[1] * step)];
      const after = fitted(before, width, height);
      expect(after.card).toEqual({ ...before.card, width, height });
      for (const old of before.pieces) {
        const now = piece(after, old.id);
        for (const length of [now.width, now.height]) {
          expect(length).toBeGreaterThan(0);
          expect(length % step).toBe(0);
        }
        expect(Math.min(now.x, now.y)).toBeGreaterThanOrEqual(0);
        expect(now.x + now.width).toBeLessThanOrEqual(width);
        expect(now.y + now.height).toBeLessThanOrEqual(height);
        if (old.mats) {
          expect(now.mats).toEqual(old.mats);
          expect(now).toMatchObject(matPlace(piece(after, old.mats.piece), old.mats.reveal));
        }
        if (old.x === 0) expect(now.x).toBe(0);
        if (old.y === 0) expect(now.y).toBe(0);
        if (old.x + old.width === before.card.width) expect(now.x + now.width).toBe(width);
        if (old.y + old.height === before.card.height) expect(now.y + now.height).toBe(height);
        if (2 * old.x + old.width === before.card.width) expect(2 * now.x + now.width).toBe(width);
        else expect(now.x % step).toBe(0);
        if (2 * old.y + old.height === before.card.height) expect(2 * now.y + now.height).toBe(height);
        else expect(now.y % step).toBe(0);
      }
    }),
    { numRuns: 150 },
  );
});

test('free pieces that were flush with each other stay flush, where neither becomes narrower than a step', () => {
  const rows = fc.record({
    cuts: fc.uniqueArray(fc.integer({ min: 4, max: 92 }), { minLength: 2, maxLength: 5 }),
    to: fc.integer({ min: 60, max: 180 }),
  });
  fc.assert(
    fc.property(rows, ({ cuts, to }) => {
      const places = [...cuts].sort((a, b) => a - b);
      const boxes = places.slice(1).map((end, index) => {
        const start = places[index] ?? 0;
        return { x: start, y: 10, width: end - start, height: 20, reveal: 0, tilt: 0, round: false };
      });
      const after = fitted(inSteps('mm', [96, 60], boxes), millimetres(to), millimetres(60));
      for (const [index, left] of after.pieces.slice(0, -1).entries()) {
        const right = after.pieces[index + 1];
        expect(right?.x).toBeGreaterThanOrEqual(left.x + left.width - 640);
        if (left.width > 640 && (right?.width ?? 0) > 640) expect(right?.x).toBe(left.x + left.width);
      }
    }),
  );
});

test('the same card changes nothing but what is off the ruler', () => {
  fc.assert(
    fc.property(scenes, ({ unit, card, boxes }) => {
      const before = inSteps(unit, card, boxes);
      expect(fitToCard(before, before.card)).toEqual([{ do: 'card', card: before.card }]);
    }),
  );
});

test('tilted pieces and circles keep their proportion, and stay on the card', () => {
  const turned = cards.chain((card) =>
    fc.record({ card: fc.constant(card), box: boxOn(card), to: cards, tilt: fc.integer({ min: 1, max: 179 }) }),
  );
  fc.assert(
    fc.property(turned, ({ card, box, to, tilt }) => {
      const small = Math.max(6, Math.floor(Math.min(box.width, box.height) / 2));
      const middled = {
        ...box,
        reveal: 2,
        x: Math.floor(card[0] / 2 - small / 2),
        y: Math.floor(card[1] / 2 - small / 4),
      };
      const before = inSteps('in', card, [
        { ...middled, width: small, height: Math.max(3, Math.floor(small / 2)), tilt },
        { ...box, width: Math.min(box.width, box.height), height: Math.min(box.width, box.height), round: true },
      ]);
      const after = fitted(before, ticks(to[0] * 1016), ticks(to[1] * 1016));
      const circle = piece(after, 'piece-1');
      expect(circle.width).toBe(circle.height);
      expect(circle.x).toBeGreaterThanOrEqual(0);
      expect(circle.y).toBeGreaterThanOrEqual(0);
      expect(circle.x + circle.width).toBeLessThanOrEqual(after.card.width);
      expect(circle.y + circle.height).toBeLessThanOrEqual(after.card.height);
      const [old, now] = [piece(before, 'piece-0'), piece(after, 'piece-0')];
      expect(now.tilt).toBe(old.tilt);
      // With its mat, the turned rectangle lay on the old card around the middle; it lies on the new one.
      const turn = (tilt * Math.PI) / 180;
      const [cos, sin] = [Math.abs(Math.cos(turn)), Math.abs(Math.sin(turn))];
      const mat = piece(after, 'mat-0');
      const across = (mat.width * cos + mat.height * sin) / 2;
      const down = (mat.height * cos + mat.width * sin) / 2;
      expect(Math.abs(mat.x + mat.width / 2 - after.card.width / 2) + across).toBeLessThanOrEqual(
        after.card.width / 2 + 1,
      );
      expect(Math.abs(mat.y + mat.height / 2 - after.card.height / 2) + down).toBeLessThanOrEqual(
        after.card.height / 2 + 1,
      );
      // Outer sizes are scaled, down to a mark, never below one mark between the reveals of 2.
      for (const way of ['width', 'height'] as const) {
        const outer = old[way] / 1016 + 4;
        const scaled = Math.min(Math.floor((outer * to[0]) / card[0]), Math.floor((outer * to[1]) / card[1]));
        expect(now[way] / 1016 + 4).toBe(Math.max(5, scaled));
      }
    }),
  );
});

test('a size that comes to a mark exactly is not cut short: 22 marks on 44 are 49 on 98', () => {
  const box = { x: 13, y: 24, width: 18, height: 9, reveal: 2, tilt: 1, round: false };
  const after = fitted(inSteps('in', [44, 58], [box]), ticks(98 * 1016), ticks(130 * 1016));
  expect(piece(after, 'mat-0').width).toBe(49 * 1016);
});

test('an even border stays even, and as wide, whatever the proportion', () => {
  const before = sampleSketch();
  const after = fitted(before, inches(3.5), inches(8.5));
  expect(piece(after, 'panel-mat')).toMatchObject({
    x: inches(1 / 8),
    y: inches(1 / 8),
    width: inches(3.25),
    height: inches(8.25),
  });
  expect(piece(after, 'panel')).toMatchObject({
    x: inches(1 / 4),
    y: inches(1 / 4),
    width: inches(3),
    height: inches(8),
  });
  // The strip was flush with the panel inside the mat, and still is; the liner inside lies as evenly.
  expect(piece(after, 'strip')).toMatchObject({ x: inches(1 / 4), width: inches(3) });
  expect(piece(after, 'liner')).toMatchObject({ x: inches(1 / 8), width: inches(3.25) });
});

test('a piece that frames another evenly without being its mat still does', () => {
  const band = { x: 4, y: 50, width: 60, height: 14, reveal: 0, tilt: 0, round: false };
  const words = { ...band, x: 5, y: 51, width: 58, height: 12 };
  const after = fitted(inSteps('in', [68, 88], [band, words]), inches(5), inches(7));
  const [outer, inner] = [piece(after, 'piece-0'), piece(after, 'piece-1')];
  expect(inner).toMatchObject({
    x: outer.x + 1016,
    y: outer.y + 1016,
    width: outer.width - 2 * 1016,
    height: outer.height - 2 * 1016,
  });
});

test('corners that no longer have room are made as round as they can be', () => {
  const radius = inches(1 / 2);
  const sample = sampleSketch();
  const corners = { tl: radius, tr: radius, br: zero, bl: zero };
  const place = { x: inches(1), y: inches(2), width: inches(2.25), height: inches(1) };
  const before: Sketch = {
    ...sample,
    pieces: [free('label', place, { corners })],
    batch: { ...sample.batch, contrast: [] },
  };
  const after = fitted(before, inches(2), inches(2));
  expect(piece(after, 'label').corners.tl).toBe(
    ticks(Math.floor(Math.min(piece(after, 'label').width, piece(after, 'label').height) / 2)),
  );
  expect(checkSketch(after).filter(({ code }) => code === 'radius-too-large')).toEqual([]);
  expect(piece(fitted(before, inches(5), inches(7)), 'label').corners).toEqual(corners);
});

test('on a card off the ruler sizes stay on it, all but what spans the card', () => {
  const before = inSteps(
    'mm',
    [100, 100],
    [
      { x: 0, y: 10, width: 100, height: 20, reveal: 0, tilt: 0, round: false },
      { x: 0, y: 40, width: 40, height: 20, reveal: 0, tilt: 0, round: false },
      { x: 30, y: 40, width: 40, height: 20, reveal: 2, tilt: 0, round: false },
    ],
  );
  const after = fitted(before, millimetres(148.5), millimetres(105));
  expect(piece(after, 'piece-0')).toMatchObject({ x: 0, width: millimetres(148.5) });
  expect(piece(after, 'piece-1').x).toBe(0);
  expect(piece(after, 'piece-1').width % 640).toBe(0);
  const middle = piece(after, 'piece-2');
  expect(middle.width % 640).toBe(0);
  expect(2 * middle.x + middle.width).toBe(millimetres(148.5));
});

test('what reaches over the edge reaches over it as far as before', () => {
  const before = inSteps('in', [68, 88], [{ x: -8, y: 80, width: 84, height: 16, reveal: 0, tilt: 0, round: false }]);
  const after = fitted(before, inches(5), inches(7));
  expect(piece(after, 'piece-0')).toMatchObject({ x: inches(-0.5), width: inches(6) });
  expect(piece(after, 'piece-0').y + piece(after, 'piece-0').height).toBe(inches(7.5));
});

test.each(BEGINNINGS.map(({ id }) => id))('%s, fitted to another usual card, needs no new remark', (layout) => {
  const a2 = beginSketch({ layout, width: inches(4.25), height: inches(5.5), unit: 'in', fold: 'left' });
  expect(checkSketch(a2)).toEqual([]);
  for (const [width, height] of [
    [5, 7],
    [4.5, 6.25],
    [3.5, 4.875],
  ] as const) {
    const codes = checkSketch(fitted(a2, inches(width), inches(height))).map(({ code, piece: at }) => `${code} ${at}`);
    expect(codes, `${width} x ${height}`).toEqual([]);
  }
});
