import { inches, ticks } from '@trimwell/geometry';
import { applyEdit, type Piece } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { changedPieces, onlyPlacesChanged } from './changed-pieces.js';
import * as commands from './commands.js';
import { expectRefused, expectTransaction } from './expect-transaction.js';
import { type Command, type EditorState, openState } from './state.js';

const start = openState(sampleSketch());

function taking(selection: readonly string[], state: EditorState = start): EditorState {
  return { ...state, selection };
}

function piece(state: EditorState, id: string): Piece {
  const found = state.sketch.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

const order = (state: EditorState) => commands.facePieces(state).map(({ id }) => id);
const selected = (state: EditorState, command: Command) => expectTransaction(state, command).selection;

test('one more is taken, put back, and taken along the stack; all are taken but what is hidden', () => {
  expect(selected(taking(['strip']), commands.toggleSelect('panel'))).toEqual(['strip', 'panel']);
  expect(selected(taking(['strip', 'panel']), commands.toggleSelect('strip'))).toEqual(['panel']);
  expect(selected(taking(['strip']), commands.toggleSelect('liner'))).toEqual(['liner']);
  expect(selected(taking(['panel']), commands.selectNextToo)).toEqual(['panel', 'strip']);
  expect(selected(taking(['panel', 'strip']), commands.selectPreviousToo)).toEqual(
    ['panel', 'strip', 'panel-mat'].filter((id) => id !== 'panel-mat').concat('panel-mat'),
  );
  expect(selected(start, commands.selectAll)).toEqual(['panel-mat', 'panel', 'strip', 'greeting']);
  expectRefused(taking(['panel-mat', 'panel', 'strip', 'greeting']), commands.selectNextToo);
  const hidden = expectTransaction(taking(['panel']), commands.setHidden(true));
  expect(selected(hidden, commands.selectAll)).toEqual(['panel-mat', 'strip', 'greeting']);
  expectRefused(start, commands.selectThese(['strip', 'liner']));
});

test('a frame takes what lies wholly in it, tilted pieces by all of their corners', () => {
  const whole = { x: -inches(1), y: -inches(1), width: inches(7), height: inches(8) };
  expect(commands.piecesWithin(start, whole)).toEqual(['panel-mat', 'panel', 'strip', 'greeting']);
  const { x, y, width, height } = commands.extentOf(piece(start, 'greeting'));
  expect(width).toBeGreaterThan(piece(start, 'greeting').width);
  expect(commands.piecesWithin(start, { x, y, width, height })).toEqual(['greeting']);
  expect(commands.piecesWithin(start, { x: x + 1, y, width, height })).toEqual([]);
});

test('several move once with their mats, and are tilted, taken away and cut from another paper together', () => {
  const all = taking(['panel', 'panel-mat', 'strip']);
  expectTransaction(all, commands.nudge(2, 0), (after) => {
    for (const id of all.selection) expect(piece(after, id).x - piece(start, id).x).toBe(inches(1 / 8));
  });
  expectTransaction(all, commands.tilt(5), (after) => {
    expect(all.selection.map((id) => piece(after, id).tilt)).toEqual([5, 5, 5]);
  });
  expectTransaction(all, commands.remove, (after) => expect(order(after)).toEqual(['greeting']));
  expectTransaction(all, commands.cutFrom('moss'), (after) => {
    expect(all.selection.map((id) => piece(after, id).from)).toEqual(['moss', 'moss', 'moss']);
  });
  expectTransaction(taking(['strip', 'greeting']), commands.setRaise(ticks(100)));
  expectRefused(all, commands.setName('All alike'));
});

test('several keep their order among each other when the order changes', () => {
  const after = (ids: readonly string[], command: Command) => order(expectTransaction(taking(ids), command));
  expect(after(['panel-mat', 'panel'], commands.raiseOrder)).toEqual(['strip', 'panel-mat', 'panel', 'greeting']);
  expect(after(['strip', 'greeting'], commands.lowerOrder)).toEqual(['panel-mat', 'strip', 'greeting', 'panel']);
  expect(after(['panel-mat', 'strip'], commands.toTop)).toEqual(['panel', 'greeting', 'panel-mat', 'strip']);
  expect(after(['panel', 'greeting'], commands.toBottom)).toEqual(['panel', 'greeting', 'panel-mat', 'strip']);
  expect(after(['panel', 'greeting'], commands.raiseOrder)).toEqual(['panel-mat', 'strip', 'panel', 'greeting']);
  expectRefused(taking(['strip', 'greeting']), commands.raiseOrder);
  expectRefused(taking(['strip', 'greeting']), commands.toTop);
});

test('copies of a mat and its piece stay mat and piece', () => {
  expectTransaction(taking(['panel', 'panel-mat']), commands.duplicate, (after) => {
    expect(after.selection).toEqual(['panel-mat-1', 'panel-1']);
    expect(piece(after, 'panel-mat-1').mats).toEqual({ piece: 'panel-1', reveal: inches(1 / 8) });
    expect(order(after)).toEqual(['panel-mat', 'panel', 'panel-mat-1', 'panel-1', 'strip', 'greeting']);
  });
});

test('what is locked is not moved, resized, tilted, reordered or taken away; it can be selected and unlocked', () => {
  const locked = taking(['panel'], expectTransaction(taking(['panel']), commands.toggleLocked));
  const refused: readonly Command[] = [
    commands.nudge(1, 0),
    commands.grow(1, 1),
    commands.resizeTo({ x: ticks(5) }),
    commands.tilt(1),
    commands.raiseOrder,
    commands.remove,
    commands.setShape('tag'),
    commands.setFace('inside'),
    commands.align('x', 'near'),
  ];
  for (const command of refused) expectRefused(locked, command);
  // A mat would move its locked piece along, so it is held as well; it can still be taken away.
  for (const command of refused.slice(0, 4)) expectRefused(taking(['panel-mat'], locked), command);
  expectTransaction(taking(['panel-mat'], locked), commands.remove);
  expectTransaction(taking(['panel', 'strip'], locked), commands.nudge(1, 0), (after) => {
    expect(piece(after, 'panel')).toBe(piece(locked, 'panel'));
    expect(piece(after, 'strip').x).toBe(inches(5 / 16));
  });
  expectTransaction(taking(['panel', 'strip'], locked), commands.remove, (after) =>
    expect(after.selection).toEqual(['panel']),
  );
  const free = expectTransaction(locked, commands.toggleLocked);
  expectTransaction(taking(['panel'], free), commands.nudge(1, 0));
});

test('hidden pieces are passed over along the stack, and come back one by one or all at once', () => {
  const hidden = expectTransaction(taking(['panel', 'strip']), commands.toggleHidden);
  expect(commands.seenPieces(hidden).map(({ id }) => id)).toEqual(['panel-mat', 'greeting']);
  expect(selected(taking(['panel-mat'], hidden), commands.selectNext)).toEqual(['greeting']);
  expect(piece(expectTransaction(taking(['strip'], hidden), commands.toggleHidden), 'strip').hidden).toBe(false);
  expect(commands.seenPieces(expectTransaction(hidden, commands.showAll))).toHaveLength(4);
  expectRefused(start, commands.showAll);
});

test('a shape keeps its size, and the mat follows it; the other face is taken with all that is tied', () => {
  expectTransaction(taking(['panel']), commands.setShape('ellipse'), (after) => {
    expect([piece(after, 'panel').shape, piece(after, 'panel-mat').shape]).toEqual(['ellipse', 'ellipse']);
    expect(piece(after, 'panel')).toMatchObject({ width: piece(start, 'panel').width, x: piece(start, 'panel').x });
    expectTransaction(taking(['panel'], after), commands.matPiece(), (matted) => {
      expect(piece(matted, 'mat-1')).toMatchObject({ shape: 'ellipse', mats: { piece: 'panel-mat' } });
    });
  });
  expectTransaction(taking(['panel']), commands.setFace('inside'), (after) => {
    expect(after).toMatchObject({ face: 'inside', selection: ['panel'] });
    expect(order(after)).toEqual(['panel-mat', 'panel', 'liner']);
  });
  expectTransaction(taking(['strip', 'panel']), commands.setPerCard(3));
  for (const wrong of [0, 25, 1.5, Number.NaN]) expectRefused(taking(['strip']), commands.setPerCard(wrong));
  expectTransaction(taking(['strip']), commands.setKind('tag'));
});

test('a reveal is set on the mat or on its piece, and a mat that is let go follows nothing', () => {
  for (const id of ['panel', 'panel-mat'])
    expectTransaction(taking([id]), commands.setReveal(inches(1 / 4)), (after) => {
      expect(piece(after, 'panel-mat').x).toBe(piece(start, 'panel').x - inches(1 / 4));
      expect(piece(after, 'panel')).toEqual(piece(start, 'panel'));
    });
  expectRefused(taking(['panel-mat']), commands.setReveal(ticks(0)));
  const free = expectTransaction(taking(['panel-mat']), commands.freeMat);
  expect('mats' in piece(free, 'panel-mat')).toBe(false);
  expectRefused(taking(['panel']), commands.freeMat);
});

test('a move touches places only; anything else is told apart', () => {
  const { sketch } = start;
  const moved = applyEdit(sketch, { do: 'place', piece: 'panel', x: ticks(1), y: ticks(2) });
  expect(changedPieces(sketch, moved)?.map(({ id }) => id)).toEqual(['panel-mat', 'panel']);
  expect(onlyPlacesChanged(sketch, moved)).toBe(true);
  const tilted = applyEdit(sketch, { do: 'tilt', piece: 'strip', tilt: 3 });
  expect([changedPieces(sketch, tilted)?.length, onlyPlacesChanged(sketch, tilted)]).toEqual([1, false]);
  const others = [
    applyEdit(sketch, { do: 'order', piece: 'strip', to: 0 }),
    applyEdit(sketch, { do: 'remove-piece', piece: 'strip' }),
    applyEdit(sketch, { do: 'cut-from', piece: 'strip', from: 'moss' }),
    applyEdit(sketch, { do: 'alter-piece', piece: 'strip', hidden: true }),
    applyEdit(sketch, { do: 'unit', unit: 'mm' }),
  ];
  for (const other of others) expect(changedPieces(sketch, other)).toBeNull();
});
