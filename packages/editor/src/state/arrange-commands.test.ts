import { inches, type Length, ticks } from '@trimwell/geometry';
import { applyEdits, type Edit, type Piece, rulerStep } from '@trimwell/sketch';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import * as commands from './commands.js';
import { expectRefused, expectTransaction, transactionOf } from './expect-transaction.js';
import { selectedBodies } from './group.js';
import { type Command, type EditorState, openState } from './state.js';
import { applyTransaction } from './transaction.js';

const start = openState(sampleSketch());
const step = rulerStep('in');

function taking(selection: readonly string[], state: EditorState = start): EditorState {
  return { ...state, selection };
}

function piece(state: EditorState, id: string): Piece {
  const found = state.sketch.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

/** The sample with free pieces `a0`, `a1`, … in these places, all selected. */
function withPieces(places: readonly (readonly [number, number, number, number])[]): EditorState {
  const like = piece(start, 'strip');
  const edits = places.map(
    ([x, y, width, height], index): Edit => ({
      do: 'add-piece',
      piece: {
        ...like,
        id: `a${index}`,
        name: `A ${index}`,
        punched: {},
        x: ticks(x),
        y: ticks(y),
        width: ticks(width),
        height: ticks(height),
      },
    }),
  );
  const sketch = applyEdits(start.sketch, edits);
  return taking(
    places.map((_, index) => `a${index}`),
    openState(sketch),
  );
}

const onMarks = fc.integer({ min: 0, max: 60 }).map((n) => n * step);
const sizes = fc.integer({ min: 1, max: 30 }).map((n) => n * step);
const anything = fc.integer({ min: -9_000, max: 70_000 });
const placesOn = fc.array(fc.tuple(onMarks, onMarks, sizes, sizes), { minLength: 2, maxLength: 7 });
const placesOff = fc.array(fc.tuple(anything, anything, fc.integer({ min: 700, max: 40_000 }), sizes), {
  minLength: 2,
  maxLength: 7,
});
const axes = fc.constantFrom('x' as const, 'y' as const);
const lines = fc.constantFrom('near' as const, 'middle' as const, 'far' as const);

function after(state: EditorState, command: Command) {
  const transaction = transactionOf(state, command);
  return transaction ? applyTransaction(state, transaction) : state;
}

function mine(state: EditorState): readonly Piece[] {
  return state.selection.map((id) => piece(state, id));
}

const SIZE = { x: 'width', y: 'height' } as const;

test('pieces on marks line up on marks, middles within a mark of the line; the same again changes nothing', () => {
  fc.assert(
    fc.property(placesOn, axes, lines, (places, axis, line) => {
      const state = withPieces(places);
      const done = after(state, commands.align(axis, line));
      const size = SIZE[axis];
      const old = mine(state);
      const [low, high] = [
        Math.min(...old.map((one) => one[axis])),
        Math.max(...old.map((one) => one[axis] + one[size])),
      ];
      const goal = { near: low, middle: (low + high) / 2, far: high }[line];
      for (const [index, one] of mine(done).entries()) {
        expect(Math.abs(one[axis] % step)).toBe(0);
        const at = one[axis] + { near: 0, middle: one[size] / 2, far: one[size] }[line];
        expect(Math.abs(at - goal)).toBeLessThanOrEqual(line === 'middle' ? step : 0);
        // Only along the one axis, and never in size.
        expect({ ...one, [axis]: 0 }).toEqual({ ...old[index], [axis]: 0 });
      }
      expectRefused(done, commands.align(axis, line));
    }),
    { numRuns: 150 },
  );
});

test('who has left the ruler gets the line to the tick, and half a tick at most for middles', () => {
  fc.assert(
    fc.property(placesOff, axes, lines, (places, axis, line) => {
      const state = withPieces([...places, [1, 1, step, step]]);
      const done = after(state, commands.align(axis, line));
      const size = SIZE[axis];
      const ats = mine(done).map((one) => one[axis] + { near: 0, middle: one[size] / 2, far: one[size] }[line]);
      expect(Math.max(...ats) - Math.min(...ats)).toBeLessThanOrEqual(line === 'middle' ? 1 : 0);
    }),
    { numRuns: 150 },
  );
});

test('gaps are equal to a mark on marks, else to a tick; the outermost two stay', () => {
  fc.assert(
    fc.property(fc.boolean(), placesOn, placesOff, axes, (ruled, on, off, axis) => {
      const state = withPieces(ruled ? on : [...off, [1, 1, step, step]]);
      fc.pre(state.selection.length > 2);
      const done = after(state, commands.spaceEvenly(axis));
      const size = SIZE[axis];
      const middle = (one: Piece): number => one[axis] + one[size] / 2;
      const order = mine(state).toSorted((a, b) => middle(a) - middle(b));
      const row = order.map(({ id }) => piece(done, id));
      expect([row[0], row.at(-1)]).toEqual([order[0], order.at(-1)]);
      const gaps = row.slice(1).map((one, index) => one[axis] - (row[index]?.[axis] ?? 0) - (row[index]?.[size] ?? 0));
      expect(Math.max(...gaps) - Math.min(...gaps)).toBeLessThanOrEqual(ruled ? step : 1);
    }),
    { numRuns: 150 },
  );
});

test('a single piece lines up with the card; what comes to the nearest mark says by how much', () => {
  const middle = expectTransaction(taking(['strip']), commands.align('x', 'far'));
  expect(piece(middle, 'strip').x).toBe(inches(0.5));
  const odd = withPieces([[0, 0, inches(1 + 1 / 16), inches(1)]]);
  const transaction = transactionOf(odd, commands.align('x', 'middle'));
  // 4 1/4 - 1 1/16 leaves 3 3/16: the middle is at 1 19/32, between two marks; the left one is taken.
  expect(transaction).toMatchObject({ off: inches(1 / 32), edits: [{ x: inches(1 + 9 / 16) }] });
});

test('a mat and its piece are lined up once, and keep their reveal', () => {
  const state = taking(['panel', 'panel-mat', 'strip']);
  expect(selectedBodies(state).map(({ handle }) => handle.id)).toEqual(['panel-mat', 'strip']);
  const done = expectTransaction(state, commands.align('y', 'far'));
  const [mat, panel, strip] = ['panel-mat', 'panel', 'strip'].map((id) => piece(done, id));
  expect((mat?.y ?? 0) + (mat?.height ?? 0)).toBe((strip?.y ?? 0) + (strip?.height ?? 0));
  expect((panel?.y ?? 0) - (mat?.y ?? 0)).toBe(inches(1 / 8));
});

test('the same width and height as the piece taken last, mats only as far as they hold something', () => {
  const done = expectTransaction(taking(['greeting', 'strip']), commands.sameSize('x'));
  expect(piece(done, 'greeting').width).toBe(piece(done, 'strip').width);
  expect(piece(done, 'greeting').x).toBe(piece(start, 'greeting').x);
  expectRefused(done, commands.sameSize('x'));
  expectRefused(taking(['strip']), commands.sameSize('x'));
  const thin = withPieces([[0, 0, inches(1 / 8), inches(1)]]);
  expectRefused(taking(['panel-mat', 'a0'], thin), commands.sameSize('x'));
});

test('what is locked counts for the line, and stays', () => {
  const locked = after(taking(['strip']), commands.setLocked(true));
  const done = expectTransaction(taking(['strip', 'greeting'], locked), commands.align('x', 'near'));
  expect(piece(done, 'strip')).toEqual(piece(locked, 'strip'));
  expect(piece(done, 'strip').x).toBeLessThanOrEqual(piece(done, 'greeting').x);
});

test('spacing wants three pieces', () => {
  expectRefused(taking(['strip', 'greeting']), commands.spaceEvenly('y'));
});

test('several pieces move by the same, whatever marks they lie off', () => {
  fc.assert(
    fc.property(placesOff, fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 }), (places, right, down) => {
      fc.pre(right !== 0 || down !== 0);
      const state = withPieces(places);
      const done = after(state, commands.nudge(right, down));
      const moves = mine(done).map((one, index): readonly Length[] => {
        const old = mine(state)[index] as Piece;
        return [ticks(one.x - old.x), ticks(one.y - old.y)];
      });
      for (const move of moves) expect(move).toEqual(moves[0]);
      const last = mine(done).at(-1) as Piece;
      if (right !== 0) expect(Math.abs(last.x % step)).toBe(0);
      if (down !== 0) expect(Math.abs(last.y % step)).toBe(0);
    }),
    { numRuns: 200 },
  );
});
