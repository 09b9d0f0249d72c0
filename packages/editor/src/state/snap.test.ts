import { inches, type Rect, rect, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { bodiesOf, tiedTo } from './group.js';
import { type SnapField, type SnapRect, snapEdge, snapMove, snapTolerance } from './snap.js';
import { snapFieldOf } from './snap-field.js';

const step = inches(1 / 16);
const card = { width: inches(4.25), height: inches(5.5) };
const inch = (x: number, y: number, width: number, height: number): Rect =>
  rect(inches(x), inches(y), inches(width), inches(height));
const SIDE = { x: 'width', y: 'height' } as const;
const panel = inch(0.25, 0.25, 3.75, 5);

function field(others: readonly SnapRect[] = [panel], tolerance = 900): SnapField {
  return { card, others, step, tolerance };
}

/** `at` moved by some ticks. */
function off(at: Rect, x: number, y: number): Rect {
  return rect(at.x + x, at.y + y, at.width, at.height);
}

test('edges line up with the edges of other pieces, and the mark spans both', () => {
  const strip = inch(0.25, 3.3125, 3, 1);
  const { rect: placed, marks } = snapMove(off(strip, 70, 0), field());
  expect(placed).toEqual(strip);
  expect(marks).toContainEqual({ axis: 'x', at: inches(0.25), from: inches(0.25), to: inches(5.25), kind: 'edge' });
});

test('centred on the card: a chain line and both reveals with one figure', () => {
  const tag = inch(1.625, 1.3125, 1, 1);
  const { rect: placed, marks } = snapMove(off(tag, -60, 0), field([]));
  expect(placed.x).toBe(tag.x);
  expect(marks.map(({ kind, length }) => [kind, length])).toEqual([
    ['centre', undefined],
    ['reveal', inches(1.625)],
    ['reveal', inches(1.625)],
  ]);
});

test('a reveal that is shown already is found again', () => {
  const corner = inch(1.25, 0.5, 2.5, 0.625);
  const strip = inch(0.5, 2.125, 1.125, 1);
  const reveals = { ...field([panel, corner]), tolerance: 200 };
  const { rect: placed, marks } = snapMove(off(strip, 150, 0), reveals);
  expect(placed.x).toBe(strip.x);
  expect(marks).toContainEqual(expect.objectContaining({ kind: 'reveal', axis: 'x', length: inches(0.25) }));
});

test('equally near: the card’s edge before another piece’s, an edge before a reveal', () => {
  const flush = inch(0, 1, 1, 1);
  const both = field([inch(0, 3, 2, 1)]);
  expect(snapMove(off(flush, 50, 0), both).marks[0]).toMatchObject({ kind: 'edge', at: 0, to: card.height });
});

test('out of reach of everything it comes to the nearest mark of the ruler, without a mark to draw', () => {
  const lone = inch(1.0625, 2.3125, 0.5, 0.5);
  expect(snapMove(off(lone, 400, -300), field([]))).toEqual({ rect: lone, marks: [] });
});

test('a tilted piece snaps by its centre only, and is snapped to by its centre only', () => {
  const tilted = { ...inch(1.625, 1.3125, 1, 1), tilted: true };
  expect(snapMove({ ...tilted, x: ticks(tilted.x + 90) }, field([])).marks.map(({ kind }) => kind)).toEqual(['centre']);
  const beside = off(inch(0.625, 3.3125, 0.5, 0.5), 400, 0);
  expect(snapMove(beside, field([{ ...inch(0.5625, 1, 2, 1), tilted: true }])).rect.x % step).toBe(0);
});

test('a pulled edge finds edges and equal reveals, else its size is a whole number of marks', () => {
  const strip = inch(0.5, 2, 1, 1);
  expect(snapEdge(strip, 'x', 'far', inches(4) + 100, field()).rect).toEqual(inch(0.5, 2, 3.5, 1));
  const equal = snapEdge(strip, 'x', 'far', inches(3.75) - 80, field([]));
  expect(equal.rect.width).toBe(inches(3.25));
  expect(equal.marks.map(({ length }) => length)).toEqual([inches(0.5), inches(0.5)]);
  const odd = off(strip, 37, 0);
  const pulled = snapEdge(odd, 'x', 'near', inches(0.75) + 333, field([], 1));
  expect(pulled.rect.width % step).toBe(0);
  expect(pulled.rect.x + pulled.rect.width).toBe(odd.x + odd.width);
  expect(snapEdge(strip, 'y', 'near', inches(9), field([])).rect).toEqual(inch(0.5, 3 - 1 / 16, 1, 1 / 16));
});

const places = fc.integer({ min: -20_000, max: 90_000 });
const sides = fc.integer({ min: 1016, max: 80_000 });
const rects = fc.tuple(places, places, sides, sides).map(([x, y, width, height]) => rect(x, y, width, height));

test('never farther than the tolerance or half a mark; on the ruler or flush with the card; the same again', () => {
  fc.assert(
    fc.property(
      rects,
      fc.array(rects, { maxLength: 5 }),
      fc.integer({ min: 1, max: 1016 }),
      (moving, others, tolerance) => {
        const around = field(others, tolerance);
        const { rect: placed, marks } = snapMove(moving, around);
        expect(snapMove(moving, around)).toEqual({ rect: placed, marks });
        expect([placed.width, placed.height]).toEqual([moving.width, moving.height]);
        for (const axis of ['x', 'y'] as const) {
          const mine = marks.filter((mark) => mark.axis === axis);
          expect(Math.abs(placed[axis] - moving[axis])).toBeLessThanOrEqual(mine.length > 0 ? tolerance : step / 2);
          const flush = placed[axis] === 0 || placed[axis] + placed[SIDE[axis]] === card[SIDE[axis]];
          expect(placed[axis] % step === 0 || flush).toBe(true);
          const size = axis === 'x' ? placed.width : placed.height;
          const lines = [placed[axis], placed[axis] + size];
          for (const mark of mine) {
            if (mark.kind === 'edge') expect(lines).toContain(mark.at);
            if (mark.kind === 'centre') expect(Math.abs(placed[axis] + size / 2 - mark.at)).toBeLessThanOrEqual(0.5);
            if (mark.kind === 'reveal') expect(mark.length).toBe(mark.to - mark.from);
          }
        }
      },
    ),
    { numRuns: 500 },
  );
});

test('a pulled edge leaves the other one, and stops within the tolerance or on a whole number of marks', () => {
  fc.assert(
    fc.property(
      rects,
      fc.array(rects, { maxLength: 4 }),
      fc.constantFrom('x' as const, 'y' as const),
      fc.boolean(),
      places,
      (from, others, axis, far, to) => {
        const around = field(others, 500);
        const { rect: placed, marks } = snapEdge(from, axis, far ? 'far' : 'near', to, around);
        const size = axis === 'x' ? 'width' : 'height';
        const [was, is] = far ? [from[axis], placed[axis]] : [from[axis] + from[size], placed[axis] + placed[size]];
        expect(is).toBe(was);
        expect(placed[size]).toBeGreaterThanOrEqual(step);
        const edge = far ? placed[axis] + placed[size] : placed[axis];
        if (marks.length > 0) expect(Math.abs(edge - to)).toBeLessThanOrEqual(500);
        expect(placed[size] % step).toBe(0);
      },
    ),
    { numRuns: 500 },
  );
});

test('a gap as wide as the next one in the row is found before, between and behind, with both figures', () => {
  const row = [inch(0.25, 1.25, 0.5, 1), inch(1.5, 1.5, 0.5, 1)];
  const around = { ...field(row), tolerance: 300 };
  const gaps = (moving: Rect) =>
    snapMove(moving, around).marks.flatMap(({ kind, length }) => (kind === 'gap' ? [length] : []));
  const behind = inch(2.75, 1.6875, 0.625, 0.3125);
  expect(snapMove(off(behind, 250, 0), around).rect).toEqual(behind);
  expect(gaps(off(behind, 250, 0))).toEqual([inches(0.75), inches(0.75)]);
  expect(gaps(off(inch(1, 1.6875, 0.25, 0.3125), -250, 0))).toEqual([inches(0.25), inches(0.25)]);
  // Beside the row nothing is in line.
  expect(gaps(off(inch(2.75, 4, 0.625, 0.3125), 250, 0))).toEqual([]);
});

test('a border that comes even is marked on every side of it', () => {
  const even = snapEdge(inch(0.5, 0.5, 3, 4.5), 'x', 'far', inches(3.75) + 200, field([]));
  expect(even.rect).toEqual(inch(0.5, 0.5, 3.25, 4.5));
  expect(even.marks.filter(({ kind }) => kind === 'reveal').map(({ length }) => length)).toEqual(
    Array(4).fill(inches(0.5)),
  );
  const three = snapMove(off(inch(0.5, 0.5, 3.25, 1), 90, -90), field([]));
  expect(three.rect).toEqual(inch(0.5, 0.5, 3.25, 1));
  expect(three.marks.filter(({ length }) => length === inches(0.5))).toHaveLength(3);
});

test('of several that move together it is the dragged one that comes to a mark', () => {
  fc.assert(
    fc.property(rects, fc.array(rects, { maxLength: 4 }), places, places, (box, others, x, y) => {
      const { rect: placed } = snapMove(box, field(others), { x, y });
      for (const [axis, ruled] of [['x', x] as const, ['y', y] as const]) {
        const flush = placed[axis] === 0 || placed[axis] + placed[SIDE[axis]] === card[SIDE[axis]];
        expect((placed[axis] + ruled) % step === 0 || flush).toBe(true);
      }
    }),
    { numRuns: 300 },
  );
});

test('the tolerance is six pixels but never more than a mark, so that every mark can be reached', () => {
  expect(snapTolerance(50, step)).toBe(300);
  expect(snapTolerance(500, step)).toBe(step);
});

test('what moves along is nothing to snap to', () => {
  const sketch = sampleSketch();
  expect([...tiedTo(sketch, 'panel-mat')].sort()).toEqual(['panel', 'panel-mat']);
  const panelPiece = sketch.pieces[1];
  if (!panelPiece) throw new Error('the sample has a panel');
  const around = snapFieldOf(sketch, panelPiece, bodiesOf(sketch, [panelPiece]), 50);
  expect(around.others).toHaveLength(2);
  expect(around.others.map(({ tilted }) => tilted)).toEqual([false, true]);
});
