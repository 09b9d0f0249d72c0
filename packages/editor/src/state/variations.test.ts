import { inches, ticks } from '@trimwell/geometry';
import { type CardEdit, EditError, type Piece, type Sketch, type Variation } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { redo, undo } from './history.js';
import { shownSketch } from './shown-sketch.js';
import { type EditorState, openState, type Transaction } from './state.js';
import { applyTransaction, cancelGesture, settleGesture } from './transaction.js';

const place = (piece: string, x: number): CardEdit => ({ do: 'place', piece, x: inches(x), y: inches(1) });

function pieceIn(sketch: Sketch, id: string): Piece {
  const found = sketch.pieces.find((piece) => piece.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

const named = (id: string, edits: readonly CardEdit[] = []): Variation => ({ id, name: id, note: '', edits });
const tag: Piece = { ...pieceIn(sampleSketch(), 'greeting'), id: 'tag-1', name: 'Tag' };
/** `a` moves the strip, `b` brings a tag, `c` moves the strip elsewhere. */
const sketch: Sketch = {
  ...sampleSketch(),
  variations: [
    named('a', [place('strip', 1)]),
    named('b', [{ do: 'add-piece', piece: tag }]),
    named('c', [place('strip', 2)]),
  ],
};
const start = openState(sketch);

function after(state: EditorState, change: Partial<Transaction>): EditorState {
  return applyTransaction(state, { event: 'test', edits: [], at: 0, ...change });
}

const editsOf = (state: EditorState, id: string) => state.document.variations.find((each) => each.id === id)?.edits;
const strip = (sketch: Sketch) => pieceIn(sketch, 'strip').x;

test('the shown sketch is the document without variations, and the very same object each time with the same ones', () => {
  expect(start.sketch).toBe(start.document);
  expect(shownSketch(sketch, ['a', 'c'])).toBe(shownSketch(sketch, ['c', 'a']));
  expect(shownSketch(sketch, ['a', 'gone'])).toBe(shownSketch(sketch, ['a']));
  expect(shownSketch(sketch, ['a'])).not.toBe(shownSketch(sketch, ['c']));
  const on = after(start, { on: ['a'] });
  expect(strip(on.sketch)).toBe(inches(1));
  expect(on.document).toBe(sketch);
  expect(on.history).toBe(start.history);
  expect(after(on, { on: [] }).sketch).toBe(sketch);
});

test('while a variation is written, changes to the card go into it and the card stays', () => {
  const writing = after(start, { writing: 'a' });
  expect(writing.on).toEqual(['a']);
  const moved = after(writing, { edits: [place('panel', 1 / 2)] });
  expect(editsOf(moved, 'a')).toEqual([place('strip', 1), place('panel', 1 / 2)]);
  expect(moved.document.pieces).toBe(sketch.pieces);
  expect(pieceIn(moved.sketch, 'panel').x).toBe(inches(1 / 2));
  const { batch } = sketch;
  const counted = after(moved, { edits: [{ do: 'batch', batch: { ...batch, cards: 9 } }, place('panel', 1)] });
  expect(counted.document.batch.cards).toBe(9);
  expect(editsOf(counted, 'a')).toEqual([place('strip', 1), place('panel', 1)]);
  const done = after(counted, { writing: null });
  expect(after(done, { on: [], edits: [place('strip', 3)] }).document.pieces).not.toBe(sketch.pieces);
});

test('undo brings back the document, what was on and what was written; redo the very state after', () => {
  const writing = after(after(start, { on: ['b'] }), { writing: 'c' });
  const moved = after(writing, { edits: [place('panel', 1)] });
  const elsewhere = after(after(moved, { writing: null }), { on: [] });
  const back = undo(elsewhere);
  expect([back.document, back.sketch]).toEqual([writing.document, writing.sketch]);
  expect(back.document).toBe(writing.document);
  expect(back.sketch).toBe(writing.sketch);
  expect([back.on, back.writing]).toEqual([['b', 'c'], 'c']);
  expect(redo(back).document).toBe(moved.document);
  expect([redo(back).on, redo(back).writing]).toEqual([[], null]);
});

test('a drag while writing leaves one edit and one step, and a cancelled one nothing', () => {
  let state = after(start, { writing: 'a' });
  const before = state;
  for (let n = 1; n <= 100; n += 1) state = after(state, { edits: [place('panel', n / 64)], gesture: 'drag' });
  expect(editsOf(state, 'a')).toEqual([place('strip', 1), place('panel', 100 / 64)]);
  expect(settleGesture(state, 'drag').history.past).toHaveLength(1);
  expect(undo(settleGesture(state, 'drag')).document).toBe(before.document);
  const cancelled = cancelGesture(state, 'drag');
  expect(cancelled.document).toBe(before.document);
  expect(cancelled.sketch).toBe(before.sketch);
  expect(cancelled.writing).toBe('a');
});

test('changes to the card while variations are on change the document, and what is shown follows', () => {
  const on = after(start, { on: ['a'] });
  const moved = after(on, { edits: [place('panel', 1 / 2)] });
  expect(moved.document.variations).toBe(sketch.variations);
  expect(pieceIn(moved.document, 'panel').x).toBe(inches(1 / 2));
  expect([pieceIn(moved.sketch, 'panel').x, strip(moved.sketch)]).toEqual([inches(1 / 2), inches(1)]);
});

test('a change to what only a variation brings goes into the last variation that is on; the rest goes to the card', () => {
  const on = after(start, { on: ['a', 'b'] });
  const moved = after(on, { edits: [place('tag-1', 2), place('panel', 1 / 2)] });
  expect(editsOf(moved, 'b')).toEqual([{ do: 'add-piece', piece: tag }, place('tag-1', 2)]);
  expect(pieceIn(moved.document, 'panel').x).toBe(inches(1 / 2));
  expect(editsOf(moved, 'a')).toEqual([place('strip', 1)]);
  const mat: Piece = { ...tag, id: 'mat-1', mats: { piece: 'tag-1', reveal: inches(1 / 8) } };
  const matted = after(moved, { edits: [{ do: 'add-piece', piece: mat, at: 4 }], selection: ['mat-1'] });
  expect(matted.document.pieces.map(({ id }) => id)).not.toContain('mat-1');
  const pulled = after(matted, { edits: [place('tag-1', 3)] });
  expect(pieceIn(pulled.sketch, 'mat-1').x).toBe(inches(3 - 1 / 8));
  expect(matted.selection).toEqual(['mat-1']);
  expect(after(matted, { on: ['a'] }).selection).toEqual([]);
});

test('what cannot be made on what is shown is refused, and nothing is written down', () => {
  const on = after(start, { on: ['b'] });
  expect(() => after(on, { edits: [place('lace', 1)] })).toThrow(EditError);
  const writing = after(start, { writing: 'a' });
  expect(() => after(writing, { edits: [place('panel', 1), place('tag-1', 1)] })).toThrow(EditError);
  expect(editsOf(writing, 'a')).toEqual([place('strip', 1)]);
});

test('a variation that is taken away while it is on or written is off and written no more', () => {
  const writing = after(after(start, { on: ['a'] }), { writing: 'c' });
  const gone = after(writing, { edits: [{ do: 'remove-variation', variation: 'c' }] });
  expect([gone.on, gone.writing, strip(gone.sketch)]).toEqual([['a'], null, inches(1)]);
  const moved = after(gone, { edits: [place('panel', 1)] });
  expect(pieceIn(moved.document, 'panel').x).toBe(inches(1));
  expect(undo(undo(moved)).writing).toBe('c');
});

test('what comes after the variation that is written is taken off, since it would hide the change', () => {
  const writing = after(after(start, { on: ['c', 'a'] }), { writing: 'a' });
  expect([writing.on, strip(writing.sketch)]).toEqual([['a'], inches(1)]);
  expect(after(writing, { on: ['a', 'c'] }).on).toEqual(['a']);
  const last: Variation = { ...named('a', [place('strip', 1)]) };
  const moved = after(writing, { edits: [{ do: 'set-variation', variation: last, at: 2 }] });
  expect(after(moved, { on: ['c', 'a'] }).on).toEqual(['c', 'a']);
});

test('what a transaction writes in is where its own edits go', () => {
  const moved = after(start, { writing: 'a', edits: [place('panel', 1)] });
  expect(moved.document.pieces).toBe(sketch.pieces);
  const card = after(moved, { writing: null, on: [], edits: [place('panel', 2)] });
  expect(pieceIn(card.document, 'panel').x).toBe(inches(2));
});

test('the same list of what is on stays the same object, so that nothing is drawn again', () => {
  const on = after(start, { on: ['a'] });
  expect(after(on, { selection: ['panel'] }).on).toBe(on.on);
  const nowhere = after(on, { edits: [{ do: 'tilt', piece: 'strip', tilt: ticks(3) }] });
  expect(nowhere.on).toBe(on.on);
});

test('what a variation that is on sets is changed in it, and the card keeps its own', () => {
  const on = after(start, { on: ['a'] });
  const before = pieceIn(on.document, 'strip');
  const moved = after(on, { edits: [place('strip', 3)] });
  expect(strip(moved.sketch)).toBe(inches(3));
  expect(pieceIn(moved.document, 'strip')).toBe(before);
  expect(editsOf(moved, 'a')).toEqual([place('strip', 3)]);
  const tilted = after(moved, { edits: [{ do: 'tilt', piece: 'strip', tilt: 5 }] });
  expect(pieceIn(tilted.document, 'strip').tilt).toBe(5);
  expect(editsOf(tilted, 'a')).toEqual([place('strip', 3)]);
  expect(strip(undo(undo(tilted)).sketch)).toBe(inches(1));
});
