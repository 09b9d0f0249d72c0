import { inches } from '@trimwell/geometry';
import { applyEdits } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { bodiesOf } from '../../state/group.js';
import { HANDLES, type Handle } from '../../state/resize.js';
import { type GestureKind, momentsOf } from './live-gesture.js';

const sketch = sampleSketch();
const none = { altKey: false, shiftKey: false };

function start(id: string, kind: GestureKind, at = { x: 0, y: 0 }) {
  const piece = sketch.pieces.find((one) => one.id === id);
  if (!piece) throw new Error(`no piece ${id}`);
  const moments = momentsOf(kind, { sketch, piece, bodies: bodiesOf(sketch, [piece]), at, ticksPerPixel: 160 });
  const after = (moment: ReturnType<typeof moments>, of = id) => {
    const changed = applyEdits(sketch, moment.edits).pieces.find((one) => one.id === of);
    if (!changed) throw new Error(`no piece ${of}`);
    return changed;
  };
  return { moments, after };
}

test('a drag is counted from its start, snaps, and Alt suspends that to the tick', () => {
  const { moments, after } = start('strip', { do: 'move' });
  const there = moments({ x: 100, y: inches(0.5) + 130 }, none);
  expect(after(there)).toMatchObject({ x: inches(0.25), y: inches(3.5) });
  expect(there.marks.length).toBeGreaterThan(0);
  const exact = moments({ x: 100.4, y: 130 }, { ...none, altKey: true });
  expect(after(exact)).toMatchObject({ x: inches(0.25) + 100, y: inches(3) + 130 });
  expect(exact.marks).toEqual([]);
  expect(after(moments({ x: 0, y: 0 }, none))).toMatchObject({ x: inches(0.25), y: inches(3) });
});

test('Shift keeps a drag to one direction', () => {
  const { moments, after } = start('strip', { do: 'move' });
  expect(after(moments({ x: 3000, y: 9000 }, { ...none, shiftKey: true })).x).toBe(inches(0.25));
});

test('a pulled corner comes to rest on edges and marks, and its figure says the size', () => {
  const { moments, after } = start('strip', { do: 'resize', handle: { x: 1, y: 1 } });
  const there = moments({ x: -inches(1) + 50, y: inches(0.5) - 40 }, none);
  expect(after(there)).toMatchObject({ x: inches(0.25), y: inches(3), width: inches(2.75), height: inches(1.5) });
  expect(there.figure).toBe('2 3⁄4 × 1 1⁄2 in');
  expect(after(moments({ x: -inches(20), y: -inches(20) }, none))).toMatchObject({
    width: inches(1 / 16),
    height: inches(1 / 16),
  });
});

test('a mat cannot be pulled smaller than its piece allows', () => {
  const { moments, after } = start('panel-mat', { do: 'resize', handle: { x: -1, y: 0 } });
  const least = moments({ x: inches(9), y: 0 }, none);
  expect(after(least).width).toBe(inches(5 / 16));
  expect(after(least, 'panel').width).toBe(inches(1 / 16));
});

test('tilting follows the angle about the middle and rests on degrees and fifteenths', () => {
  const at = { x: inches(2.125), y: inches(2.5) };
  const { moments, after } = start('strip', { do: 'tilt' }, at);
  const swept = (degrees: number, keys = none) => {
    const [sine, cosine] = [Math.sin((degrees * Math.PI) / 180), Math.cos((degrees * Math.PI) / 180)];
    return after(moments({ x: inches(1) * sine, y: inches(1) * (1 - cosine) }, keys)).tilt;
  };
  expect([
    swept(20.4),
    swept(31),
    swept(-44),
    swept(20.44, { ...none, altKey: true }),
    swept(25, { ...none, shiftKey: true }),
  ]).toEqual([20, 30, -45, 20.4, 30]);
  expect(start('panel-mat', { do: 'tilt' }, at).moments({ x: 5000, y: 0 }, none).edits[0]).toMatchObject({
    do: 'tilt',
    piece: 'panel',
  });
});

test('several keep their places to each other, a mat and its piece go once, and Alt leaves the ruler', () => {
  const chosen = sketch.pieces.filter(({ id }) => ['panel', 'panel-mat', 'strip'].includes(id));
  const dragged = chosen.find(({ id }) => id === 'strip');
  if (!dragged) throw new Error('the sample has a strip');
  const bodies = bodiesOf(sketch, chosen);
  const moments = momentsOf({ do: 'move' }, { sketch, piece: dragged, bodies, at: { x: 0, y: 0 }, ticksPerPixel: 160 });
  for (const keys of [none, { ...none, altKey: true }]) {
    const moment = moments({ x: 4321, y: -1777 }, keys);
    expect(moment.edits).toHaveLength(2);
    const after = applyEdits(sketch, moment.edits).pieces;
    const moves = chosen.map((one) => {
      const now = after.find(({ id }) => id === one.id);
      return [(now?.x ?? 0) - one.x, (now?.y ?? 0) - one.y];
    });
    expect(new Set(moves.map(String)).size).toBe(1);
    if (keys.altKey) expect(moves[0]).toEqual([4321, -1777]);
    else expect(((moves[0]?.[0] ?? 0) + dragged.x) % inches(1 / 16)).toBe(0);
  }
});

test('however a piece is resized, with Shift, tilted or as a mat at its least, it stays on the ruler unless Alt is held', () => {
  const mark = inches(1 / 16);
  const offMarks = (id: string, handle: Handle, keys: typeof none, tilted = 0) => {
    const base = tilted === 0 ? sketch : applyEdits(sketch, [{ do: 'tilt', piece: id, tilt: tilted }]);
    const piece = base.pieces.find((one) => one.id === id);
    if (!piece) throw new Error(`no piece ${id}`);
    const bodies = bodiesOf(base, [piece]);
    const moments = momentsOf(
      { do: 'resize', handle },
      { sketch: base, piece, bodies, at: { x: 0, y: 0 }, ticksPerPixel: 160 },
    );
    return [
      { x: 3777, y: 1999 },
      { x: -inches(9) + 5, y: inches(0.25) + 7 },
    ].flatMap((pull) => {
      const after = applyEdits(base, moments(pull, keys).edits).pieces.find((one) => one.id === id);
      const { x = 1, y = 1, width = 1, height = 1 } = after ?? {};
      return [x, y, width, height].filter((length) => length % mark !== 0);
    });
  };
  const shift = { ...none, shiftKey: true };
  for (const handle of HANDLES) {
    for (const id of ['strip', 'panel', 'panel-mat'])
      for (const keys of [none, shift])
        expect(offMarks(id, handle, keys), `${id} ${JSON.stringify(handle)}`).toEqual([]);
    expect(offMarks('strip', handle, none, 17)).toEqual([]);
    expect(offMarks('strip', handle, shift, -33)).toEqual([]);
    expect(offMarks('strip', handle, { ...none, altKey: true }).length).toBeGreaterThan(0);
  }
});
