import { inches, ticks } from '@trimwell/geometry';
import type { Piece } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import * as commands from './card-commands.js';
import { expectRefused, expectTransaction, transactionOf } from './expect-transaction.js';
import { type EditorState, openState } from './state.js';
import { applyTransaction } from './transaction.js';

const start = openState(sampleSketch());
const square = { width: inches(5), height: inches(5) };

function piece(state: EditorState, id: string): Piece {
  const found = state.sketch.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

test('another card size leaves the pieces, or fits them, each as one step', () => {
  expectTransaction(start, commands.setCardSize(square, 'leave'), (after) => {
    expect(after.sketch.card).toEqual({ ...start.sketch.card, ...square });
    expect(after.sketch.pieces).toBe(start.sketch.pieces);
  });
  expectTransaction(start, commands.setCardSize(square, 'fit'), (after) => {
    expect(after.sketch.card).toMatchObject(square);
    expect(piece(after, 'panel-mat')).toMatchObject({ x: inches(1 / 8), width: inches(4.75), height: inches(4.75) });
    expect(after.history.past).toHaveLength(1);
  });
  expect(transactionOf(start, commands.setCardSize(square, 'fit'))?.event).toBe('card.size');
  expectRefused(start, commands.setCardSize(start.sketch.card, 'fit'));
  expectRefused(start, commands.setCardSize({ width: ticks(0), height: inches(5) }, 'leave'));
});

test('while a variation is written, the card of that variation is changed', () => {
  const writing: EditorState = { ...start, on: ['square'], writing: 'square' };
  const made = transactionOf(writing, commands.setFold('top'));
  if (!made) throw new Error('it applies');
  const after = applyTransaction(writing, made);
  expect(after.document.card.fold).toBe('left');
  expect(after.sketch.card.fold).toBe('top');
});

test('fold, base and envelope', () => {
  expectTransaction(start, commands.setFold('top'), (after) => expect(after.sketch.card.fold).toBe('top'));
  expectRefused(start, commands.setFold('left'));
  expectTransaction(start, commands.setBase('moss'), (after) => expect(after.sketch.card.base).toBe('moss'));
  expectRefused(start, commands.setBase('ivory'));
  expectRefused(start, commands.setBase('prints'));
  const envelope = { name: 'US A2', width: inches(4.375), height: inches(5.75) };
  const put = expectTransaction(start, commands.setEnvelope(envelope), (after) =>
    expect(after.sketch.card.envelope).toEqual(envelope),
  );
  expectRefused(put, commands.setEnvelope({ ...envelope }));
  expectRefused(put, commands.setEnvelope({ ...envelope, name: '' }));
  expectTransaction(put, commands.setEnvelope(null), (after) => expect('envelope' in after.sketch.card).toBe(false));
  expectRefused(start, commands.setEnvelope(null));
});

test('words change only when they differ; a sketch keeps its title', () => {
  expectTransaction(start, commands.describeSketch({ title: 'Fern corner', number: '31' }), (after) => {
    expect(after.sketch).toMatchObject({ title: 'Fern corner', number: '31' });
  });
  expect(transactionOf(start, commands.describeSketch({ notes: 'Score first.' }))?.edits).toEqual([
    { do: 'describe', notes: 'Score first.' },
  ]);
  const numbered = expectTransaction(start, commands.describeSketch({ number: '31' }));
  expectTransaction(numbered, commands.describeSketch({ number: '' }), (after) => expect(after.sketch.number).toBe(''));
  expectRefused(start, commands.describeSketch({ number: '' }));
  expectRefused(start, commands.describeSketch({ title: start.sketch.title }));
  expectRefused(start, commands.describeSketch({ title: '' }));
  expectRefused(start, commands.describeSketch({ title: 'x'.repeat(81) }));
});

test('closing lines: added, changed, moved, taken away; https alone', () => {
  const first = { text: 'Club notes', address: 'https://fernhollow.example/notes' };
  const second = { text: 'Next sketch', address: 'https://fernhollow.example/next' };
  const one = expectTransaction(start, commands.addLink(first));
  const two = expectTransaction(one, commands.addLink(second), (after) =>
    expect(after.sketch.links).toEqual([first, second]),
  );
  expectTransaction(two, commands.moveLink(1, 0), (after) => expect(after.sketch.links).toEqual([second, first]));
  expectRefused(two, commands.moveLink(0, -1));
  expectRefused(two, commands.moveLink(1, 2));
  expectTransaction(two, commands.changeLink(0, { ...first, text: 'Notes' }), (after) =>
    expect(after.sketch.links[0]?.text).toBe('Notes'),
  );
  expectRefused(two, commands.changeLink(0, { ...first }));
  expectRefused(two, commands.changeLink(7, first));
  expectTransaction(two, commands.removeLink(0), (after) => expect(after.sketch.links).toEqual([second]));
  expectRefused(two, commands.removeLink(2));
  for (const address of ['http://fernhollow.example', 'javascript:alert(1)', 'https://a b', 'https://', ''])
    expectRefused(start, commands.addLink({ text: 'x', address }));
  expectRefused(start, commands.addLink({ text: '', address: first.address }));
  const full = { ...start.sketch, links: Array.from({ length: commands.MOST_LINKS }, () => first) };
  expectRefused(openState(full), commands.addLink(second));
});

test('supplies: added once, changed, moved, taken away', () => {
  const one = expectTransaction(start, commands.addSupply('Foam pads'));
  expectRefused(one, commands.addSupply('Foam pads'));
  expectRefused(one, commands.addSupply(''));
  expectRefused(one, commands.addSupply('x'.repeat(201)));
  const two = expectTransaction(one, commands.addSupply('Bone folder'));
  expectTransaction(two, commands.moveSupply(0, 1), (after) =>
    expect(after.sketch.supplies).toEqual(['Bone folder', 'Foam pads']),
  );
  expectTransaction(two, commands.changeSupply(0, 'Foam tape'), (after) =>
    expect(after.sketch.supplies).toEqual(['Foam tape', 'Bone folder']),
  );
  expectRefused(two, commands.changeSupply(0, 'Bone folder'));
  expectTransaction(two, commands.removeSupply(1), (after) => expect(after.sketch.supplies).toEqual(['Foam pads']));
  expectRefused(two, commands.removeSupply(5));
});
