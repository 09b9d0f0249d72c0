import { inches } from '@trimwell/geometry';
import { EditError } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { redo, redoEvent, undo, undoEvent } from './history.js';
import { MOST_STEPS, openState, selectedPiece, type Transaction } from './state.js';
import { applyTransaction, cancelGesture, settleGesture } from './transaction.js';

const start = openState(sampleSketch());

function move(x: number, more: Partial<Transaction> = {}): Transaction {
  return { event: 'piece.move', edits: [{ do: 'place', piece: 'strip', x: inches(x), y: inches(1) }], at: 0, ...more };
}

test('undo gives the same object back, redo the same object again', () => {
  const once = applyTransaction(start, move(1));
  const twice = applyTransaction(once, move(2, { selection: ['panel'] }));
  expect(undo(twice).sketch).toBe(once.sketch);
  expect(undo(undo(twice)).sketch).toBe(start.sketch);
  expect(redo(undo(twice)).sketch).toBe(twice.sketch);
  expect(redo(redo(undo(undo(twice)))).sketch).toBe(twice.sketch);
  expect(undo(twice).selection).toBe(once.selection);
  expect([undoEvent(twice), redoEvent(twice), redoEvent(undo(twice))]).toEqual(['piece.move', null, 'piece.move']);
  expect(undo(start)).toBe(start);
  expect(redo(twice)).toBe(twice);
});

test('a drag of a hundred moves is one step, and a new step empties the future', () => {
  let state = start;
  for (let n = 1; n <= 100; n += 1) state = applyTransaction(state, move(n / 16, { gesture: 'drag-1' }));
  state = settleGesture(state, 'drag-1');
  expect(state.history.past).toHaveLength(1);
  expect(undo(state).sketch).toBe(start.sketch);
  const other = applyTransaction(undo(state), move(3));
  expect(redo(other)).toBe(other);
});

test('two drags of one id are two steps once the first has settled', () => {
  const first = settleGesture(applyTransaction(start, move(1, { gesture: 'drag-1' })), 'drag-1');
  const second = applyTransaction(first, move(2, { gesture: 'drag-1' }));
  expect(second.history.past).toHaveLength(2);
});

test('a cancelled gesture leaves the very sketch from before it, and no step', () => {
  const before = applyTransaction(start, move(1));
  const dragging = applyTransaction(before, move(2, { gesture: 'drag-2' }));
  expect(cancelGesture(dragging, 'drag-2').sketch).toBe(before.sketch);
  expect(cancelGesture(dragging, 'drag-2').history.past).toHaveLength(1);
  expect(cancelGesture(dragging, 'another')).toBe(dragging);
});

test('selecting makes no step; a selection that is gone is dropped', () => {
  const selected = applyTransaction(start, { event: 'piece.select', edits: [], selection: ['strip'], at: 0 });
  expect(selected.history).toBe(start.history);
  expect(selectedPiece(selected)?.name).toBe('Strip');
  const removed = applyTransaction(selected, {
    event: 'piece.remove',
    edits: [{ do: 'remove-piece', piece: 'strip' }],
    at: 0,
  });
  expect(removed.selection).toEqual([]);
  expect(undo(removed).selection).toEqual(['strip']);
});

test('a transaction with one edit that cannot be applied changes nothing', () => {
  const bad: Transaction = { event: 'x', edits: [...move(1).edits, { do: 'remove-piece', piece: 'lace' }], at: 0 };
  expect(() => applyTransaction(start, bad)).toThrow(EditError);
  expect(start.history.past).toHaveLength(0);
});

test('a transaction is data: after a trip through JSON it does the same', () => {
  const transaction = move(1.5, { gesture: 'drag-3', selection: ['strip'] });
  expect(applyTransaction(start, JSON.parse(JSON.stringify(transaction))).sketch).toEqual(
    applyTransaction(start, transaction).sketch,
  );
});

test('history keeps its newest steps and no more', () => {
  let state = start;
  for (let n = 0; n < MOST_STEPS + 5; n += 1) state = applyTransaction(state, move((n % 7) + 1));
  expect(state.history.past).toHaveLength(MOST_STEPS);
});

test('a gesture that comes to nothing leaves what could be done again', () => {
  const undone = undo(applyTransaction(start, move(2)));
  const dragged = applyTransaction(undone, move(1, { gesture: 'drag-9' }));
  expect(dragged.history.future).toEqual([]);
  expect(redo(cancelGesture(dragged, 'drag-9')).sketch).toEqual(applyTransaction(start, move(2)).sketch);
  const back = { ...dragged, document: undone.document, sketch: undone.sketch };
  expect(settleGesture(back, 'drag-9').history.future).toBe(undone.history.future);
  expect(settleGesture(dragged, 'drag-9').history.future).toEqual([]);
});

test('undo turns the card to the side that the step was made on', () => {
  const moved = applyTransaction(start, move(2, { selection: ['panel'] }));
  const turned = applyTransaction(moved, { event: 'card.turn', edits: [], selection: [], face: 'inside', at: 0 });
  expect(undo(turned)).toMatchObject({ face: 'front', selection: [] });
  expect(redo(undo(turned)).face).toBe('inside');
});
