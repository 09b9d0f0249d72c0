import { inches } from '@trimwell/geometry';
import { type CardEdit, MOST_VARIATIONS, type Sketch, type Variation } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { expectRefused, expectTransaction, transactionOf } from './expect-transaction.js';
import { type Command, type EditorState, openState } from './state.js';
import { applyTransaction } from './transaction.js';
import {
  addVariation,
  describeVariation,
  dropEdit,
  duplicateVariation,
  moveVariation,
  removeVariation,
  renameVariation,
  startVariation,
  takeIntoCard,
  wearVariation,
  writeVariation,
} from './variation-commands.js';

const place = (piece: string, x: number): CardEdit => ({ do: 'place', piece, x: inches(x), y: inches(1) });
const named = (id: string, name: string, edits: readonly CardEdit[]): Variation => ({ id, name, note: '', edits });
const sketch: Sketch = {
  ...sampleSketch(),
  variations: [
    named('a', 'Left', [place('strip', 0)]),
    named('b', 'Right', [place('strip', 2), place('lace', 1), place('panel', 1)]),
  ],
};
const start = openState(sketch);

/** The state after a command that makes no step. */
function done(state: EditorState, command: Command): EditorState {
  const transaction = transactionOf(state, command);
  if (!transaction) throw new Error('The command does not apply.');
  expect(transaction.edits).toEqual([]);
  return applyTransaction(state, transaction);
}

const names = (state: EditorState) => state.document.variations.map(({ name }) => name);
const x = (state: EditorState, id: string) => state.document.pieces.find((piece) => piece.id === id)?.x;

test('a variation is started, on and written at once, under a name that is free', () => {
  const once = expectTransaction(start, startVariation());
  expect([once.writing, once.on]).toEqual(['variation-1', ['variation-1']]);
  const twice = expectTransaction(once, startVariation());
  expect(names(twice)).toEqual(['Left', 'Right', 'Another way', 'Another way 2']);
  expect([twice.writing, twice.on]).toEqual(['variation-2', ['variation-1', 'variation-2']]);
  expectRefused(start, startVariation('  '));
  const full = openState({
    ...sketch,
    variations: Array.from({ length: MOST_VARIATIONS }, (_each, n) => named(`v-${n}`, `V ${n}`, [])),
  });
  expectRefused(full, startVariation());
  expectRefused(full, duplicateVariation('v-0'));
  expectRefused(full, addVariation(named('more', 'More', [])));
});

test('a ready variation is taken in and put on, not written; one more of its id gets another', () => {
  const ready = named('a', 'Left', [place('panel', 1)]);
  const added = expectTransaction(start, addVariation(ready));
  expect(added.document.variations[2]).toEqual({ ...ready, id: 'a-1', name: 'Left 2' });
  expect([added.on, added.writing]).toEqual([['a-1'], null]);
  expectRefused(done(start, writeVariation('a')), addVariation(ready));
});

test('writing puts on, and takes off what comes after; leaving it keeps it on', () => {
  const both = done(done(start, wearVariation('a', true)), wearVariation('b', true));
  expect(both.on).toEqual(['a', 'b']);
  const writing = done(both, writeVariation('a'));
  expect([writing.on, writing.writing]).toEqual([['a'], 'a']);
  expectRefused(writing, wearVariation('b', true));
  expectRefused(writing, wearVariation('a', false));
  const left = done(writing, writeVariation(null));
  expect([left.on, left.writing]).toEqual([['a'], null]);
  expect(done(left, wearVariation('a', false)).sketch).toBe(sketch);
  for (const command of [
    writeVariation(null),
    writeVariation('gone'),
    wearVariation('a', false),
    wearVariation('gone', true),
  ])
    expectRefused(start, command);
});

test('names, notes and order', () => {
  expect(names(expectTransaction(start, renameVariation('a', ' Far left ')))).toEqual(['Far left', 'Right']);
  for (const name of ['', 'Left', 'x'.repeat(81)]) expectRefused(start, renameVariation('a', name));
  const noted = expectTransaction(start, describeVariation('a', 'For a wide strip.'));
  expect(noted.document.variations[0]?.note).toBe('For a wide strip.');
  expectTransaction(noted, describeVariation('a', ''));
  expectRefused(start, describeVariation('a', 'x'.repeat(401)));
  expect(names(expectTransaction(start, moveVariation('a', 1)))).toEqual(['Right', 'Left']);
  expect(names(expectTransaction(start, moveVariation('b', -3)))).toEqual(['Right', 'Left']);
  expectRefused(start, moveVariation('b', 9));
});

test('the order decides who has it where two set the same thing', () => {
  const both = done(done(start, wearVariation('a', true)), wearVariation('b', true));
  const shown = (state: EditorState) => state.sketch.pieces.find(({ id }) => id === 'strip')?.x;
  expect(shown(both)).toBe(inches(2));
  expect(shown(expectTransaction(both, moveVariation('a', 1)))).toBe(inches(0));
});

test('a variation taken into the card is gone, and what fits of it is done', () => {
  const taken = expectTransaction(done(start, wearVariation('b', true)), takeIntoCard('b'));
  expect([x(taken, 'strip'), x(taken, 'panel')]).toEqual([inches(2), inches(1)]);
  expect([names(taken), taken.on, taken.writing]).toEqual([['Left'], [], null]);
  const written = expectTransaction(done(start, writeVariation('a')), takeIntoCard('a'));
  expect([x(written, 'strip'), written.writing]).toEqual([inches(0), null]);
  expectRefused(done(start, writeVariation('a')), takeIntoCard('b'));
});

test('a copy stands right behind, edits are left out by place, and one is taken away', () => {
  const copied = expectTransaction(start, duplicateVariation('a'));
  expect(names(copied)).toEqual(['Left', 'Left 2', 'Right']);
  expect(copied.on).toEqual([]);
  const dropped = expectTransaction(start, dropEdit('b', 1));
  expect(dropped.document.variations[1]?.edits).toEqual([place('strip', 2), place('panel', 1)]);
  for (const index of [-1, 3, 0.5]) expectRefused(start, dropEdit('b', index));
  expect(names(expectTransaction(done(start, writeVariation('a')), removeVariation('a')))).toEqual(['Right']);
  expectRefused(start, removeVariation('gone'));
});
