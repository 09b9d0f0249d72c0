import { inches, millimetres, ticks } from '@trimwell/geometry';
import { applyEdit, type Piece } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import * as commands from './commands.js';
import { expectRefused, expectTransaction, transactionOf } from './expect-transaction.js';
import { type Command, type EditorState, openState } from './state.js';

const start = openState(sampleSketch());

function taking(selection: string | null, state: EditorState = start): EditorState {
  return { ...state, selection: selection === null ? [] : [selection] };
}

function piece(state: EditorState, id: string): Piece {
  const found = state.sketch.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

const frontIds = (state: EditorState) => commands.facePieces(state).map(({ id }) => id);

test('moving is by marks of the ruler of the unit', () => {
  expectTransaction(taking('strip'), commands.nudge(1, -2), (after) => {
    expect(piece(after, 'strip')).toMatchObject({ x: inches(5 / 16), y: inches(2 + 7 / 8), width: inches(3.75) });
  });
  const metric = taking('strip', openState(applyEdit(start.sketch, { do: 'unit', unit: 'mm' })));
  expectTransaction(metric, commands.nudge(3, 0), (after) => {
    // From 6.35 mm, between two marks, the first step goes to the next mark.
    expect(piece(after, 'strip').x).toBe(millimetres(9));
  });
  expectRefused(taking('strip'), commands.nudge(0, 0));
});

test('growing keeps left and top and never goes below one mark, nor below what a mat holds', () => {
  expectTransaction(taking('strip'), commands.grow(2, -1), (after) => {
    expect(piece(after, 'strip')).toMatchObject({
      x: inches(1 / 4),
      y: inches(3),
      width: inches(3.875),
      height: inches(15 / 16),
    });
  });
  const small = expectTransaction(taking('strip'), commands.grow(0, -999));
  expect(piece(small, 'strip').height).toBe(inches(1 / 16));
  expectRefused(small, commands.grow(0, -1));
  expectTransaction(taking('panel-mat'), commands.grow(-999, 0), (after) => {
    expect(piece(after, 'panel-mat').width).toBe(inches(1 / 4 + 1 / 16));
    expect(piece(after, 'panel').width).toBe(inches(1 / 16));
  });
});

test('typed sizes and places are taken as they are, or refused', () => {
  expectTransaction(taking('strip'), commands.resizeTo({ width: ticks(12345), y: ticks(-7) }), (after) => {
    expect(piece(after, 'strip')).toMatchObject({ width: 12345, y: -7, height: inches(1) });
  });
  expect(transactionOf(taking('strip'), commands.resizeTo({ x: ticks(3) }))?.event).toBe('piece.move');
  expectRefused(taking('strip'), commands.resizeTo({ width: ticks(0) }));
  expectRefused(taking('strip'), commands.resizeTo({ width: inches(3.75) }));
  expectRefused(taking('panel-mat'), commands.resizeTo({ width: inches(1 / 4) }));
});

test('tilting turns by degrees and comes round; a mat tilts with what it mats', () => {
  expectTransaction(taking('greeting'), commands.tilt(-15), (after) => expect(piece(after, 'greeting').tilt).toBe(-21));
  expectTransaction(taking('strip'), commands.tiltTo(190), (after) => expect(piece(after, 'strip').tilt).toBe(-170));
  expectTransaction(taking('panel-mat'), commands.tilt(1), (after) => {
    expect([piece(after, 'panel').tilt, piece(after, 'panel-mat').tilt]).toEqual([1, 1]);
  });
  expectRefused(taking('strip'), commands.tilt(360));
  expect([commands.asTilt(180), commands.asTilt(-180), commands.asTilt(0.0004), commands.asTilt(721.5)]).toEqual([
    180, 180, 0, 1.5,
  ]);
});

test('the order changes among the pieces of one face', () => {
  expect(frontIds(start)).toEqual(['panel-mat', 'panel', 'strip', 'greeting']);
  const order = (id: string, command: Command) => frontIds(expectTransaction(taking(id), command));
  expect(order('panel', commands.raiseOrder)).toEqual(['panel-mat', 'strip', 'panel', 'greeting']);
  expect(order('panel', commands.lowerOrder)).toEqual(['panel', 'panel-mat', 'strip', 'greeting']);
  expect(order('panel-mat', commands.toTop)).toEqual(['panel', 'strip', 'greeting', 'panel-mat']);
  expect(order('greeting', commands.toBottom)).toEqual(['greeting', 'panel-mat', 'panel', 'strip']);
  expectRefused(taking('greeting'), commands.raiseOrder);
  expectRefused(taking('greeting'), commands.toTop);
  expectRefused(taking('panel-mat'), commands.lowerOrder);
  expectRefused(taking('liner'), commands.toBottom);
});

test('a copy lies over its original, two marks aside, selected, with an id and a name of its own', () => {
  const once = expectTransaction(taking('strip'), commands.duplicate, (after) => {
    expect(after.selection).toEqual(['strip-1']);
    expect(piece(after, 'strip-1')).toMatchObject({
      name: 'Strip 2',
      x: inches(3 / 8),
      y: inches(3.125),
      punched: { bottom: 'scallops' },
    });
    expect(frontIds(after)).toEqual(['panel-mat', 'panel', 'strip', 'strip-1', 'greeting']);
  });
  const twice = expectTransaction(once, commands.duplicate);
  expect(piece(twice, 'strip-2').name).toBe('Strip 3');
  const mat = expectTransaction(taking('panel-mat'), commands.duplicate);
  expect('mats' in piece(mat, 'panel-mat-1')).toBe(false);
});

test('removing selects nothing', () => {
  expectTransaction(taking('panel'), commands.remove, (after) => {
    expect(after.selection).toEqual([]);
    expect(frontIds(after)).not.toContain('panel');
  });
});

test('next and previous go round the face, and selecting makes no step', () => {
  const next = (id: string | null, command: Command) => expectTransaction(taking(id), command).selection.at(-1) ?? null;
  expect([next(null, commands.selectNext), next('greeting', commands.selectNext)]).toEqual(['panel-mat', 'panel-mat']);
  expect([next(null, commands.selectPrevious), next('panel', commands.selectPrevious)]).toEqual([
    'greeting',
    'panel-mat',
  ]);
  expect(next('strip', commands.clearSelection)).toBeNull();
  expectRefused(start, commands.clearSelection);
  expectRefused(start, commands.select('lace'));
  expect(expectTransaction(start, commands.select('liner'))).toMatchObject({ selection: ['liner'], face: 'inside' });
});

test('turning the card over selects nothing; a single sheet with nothing behind it is not turned', () => {
  const inside = expectTransaction(taking('strip'), commands.turnOver);
  expect(inside).toMatchObject({ face: 'inside', selection: [] });
  expect(frontIds(inside)).toEqual(['liner']);
  expect(expectTransaction(inside, commands.turnOver).face).toBe('front');
  const { card } = start.sketch;
  const flat = applyEdit(applyEdit(start.sketch, { do: 'card', card: { ...card, fold: 'none' } }), {
    do: 'remove-piece',
    piece: 'liner',
  });
  expectRefused(openState(flat), commands.turnOver);
});

test('corners, edges, foam, name and paper', () => {
  const rounded = expectTransaction(taking('strip'), commands.setCorners(inches(1 / 4)));
  expect(piece(rounded, 'strip').corners).toEqual({ tl: 4064, tr: 4064, br: 4064, bl: 4064 });
  expect(piece(expectTransaction(rounded, commands.setCorners(ticks(0), 'br')), 'strip').corners).toMatchObject({
    br: 0,
    bl: 4064,
  });
  expectRefused(rounded, commands.setCorners(inches(1 / 4)));
  expectRefused(rounded, commands.setCorners(ticks(-1)));
  expect(piece(expectTransaction(taking('strip'), commands.setPunch('top', 'scallops')), 'strip').punched).toEqual({
    bottom: 'scallops',
    top: 'scallops',
  });
  expect(piece(expectTransaction(taking('strip'), commands.setPunch('bottom', null)), 'strip').punched).toEqual({});
  expectRefused(taking('strip'), commands.setPunch('bottom', 'scallops'));
  expectRefused(taking('strip'), commands.setPunch('left', null));
  expectRefused(taking('strip'), commands.setPunch('left', 'lace'));
  expect(piece(expectTransaction(taking('strip'), commands.setRaise(inches(1 / 16))), 'strip').raise).toBe(1016);
  expectRefused(taking('strip'), commands.setRaise(ticks(0)));
  expect(piece(expectTransaction(taking('strip'), commands.setName('  Lower strip ')), 'strip').name).toBe(
    'Lower strip',
  );
  expectRefused(taking('strip'), commands.setName(' '));
  expectRefused(taking('strip'), commands.setName('x'.repeat(81)));
  expect(piece(expectTransaction(taking('strip'), commands.cutFrom('moss')), 'strip').from).toBe('moss');
  expectRefused(taking('strip'), commands.cutFrom('gold'));
  expectRefused(taking('strip'), commands.cutFrom('prints'));
});

test('without a selection no command on the selected piece applies', () => {
  for (const command of [
    commands.nudge(1, 0),
    commands.grow(1, 1),
    commands.tilt(1),
    commands.duplicate,
    commands.remove,
    commands.matPiece(),
    commands.raiseOrder,
    commands.setCorners(ticks(5)),
  ])
    expectRefused(start, command);
});

test('a new piece lies where it was dropped, on the ruler, on the card, no larger than its sheet', () => {
  const added = expectTransaction(start, commands.addPiece('dots', { x: inches(2) + 100, y: inches(2) }));
  const panel = piece(added, added.selection.at(-1) ?? '');
  expect(panel).toMatchObject({
    id: 'panel-1',
    kind: 'panel',
    name: 'Seed dots panel',
    face: 'front',
    from: 'dots',
    width: inches(3.75),
  });
  expect([panel.x % inches(1 / 16), panel.y % inches(1 / 16), panel.height % inches(1 / 16)]).toEqual([0, 0, 0]);
  expect(frontIds(added).at(-1)).toBe('panel-1');
  const corner = expectTransaction(start, commands.addPiece('moss', { x: 0, y: inches(50) }));
  const focal = piece(corner, 'focal-piece-1');
  expect([focal.x, focal.y + focal.height]).toEqual([0, inches(5.5)]);
  const mix = expectTransaction(start, commands.addPiece('prints'));
  expect(piece(mix, 'panel-1')).toMatchObject({ from: 'prints', name: 'Prints panel' });
  const inside = expectTransaction({ ...start, face: 'inside' }, commands.addPiece('ivory'));
  expect(piece(inside, 'liner-1')).toMatchObject({
    face: 'inside',
    width: inches(4),
    height: inches(5.25),
    x: inches(1 / 8),
    y: inches(1 / 8),
  });
  const dots = start.sketch.papers.find(({ id }) => id === 'dots');
  if (!dots) throw new Error('the sample has dots');
  const scrap = applyEdit(start.sketch, {
    do: 'set-paper',
    paper: { ...dots, width: inches(1), height: inches(1 / 2) },
  });
  expect(piece(expectTransaction(openState(scrap), commands.addPiece('dots')), 'panel-1')).toMatchObject({
    width: inches(1),
    height: inches(1 / 2),
  });
  expectRefused(start, commands.addPiece('gold'));
});

test('a mat shows evenly, right behind its piece, with concentric corners, from a paper that sets it off', () => {
  const matted = expectTransaction(taking('greeting'), commands.matPiece());
  expect(matted.selection).toEqual(['mat-1']);
  expect(piece(matted, 'mat-1')).toMatchObject({
    kind: 'mat',
    x: inches(7 / 8),
    width: inches(2.5),
    tilt: -6,
    from: 'moss',
    corners: { tl: inches(1 / 4) },
    mats: { piece: 'greeting', reveal: inches(1 / 8) },
  });
  expect(frontIds(matted)).toEqual(['panel-mat', 'panel', 'strip', 'mat-1', 'greeting']);
  const again = expectTransaction(taking('greeting', matted), commands.matPiece(inches(1 / 16), 'dots'));
  expect(piece(again, 'mat-2')).toMatchObject({ from: 'dots', mats: { piece: 'mat-1' }, width: inches(2.625) });
  expect(frontIds(again)).toEqual(['panel-mat', 'panel', 'strip', 'mat-2', 'mat-1', 'greeting']);
  expect(piece(expectTransaction(taking('strip'), commands.matPiece()), 'mat-1').corners.tl).toBe(0);
  expect(commands.usualReveal('mm')).toBe(millimetres(3));
  expectRefused(taking('greeting'), commands.matPiece(ticks(0)));
  expectRefused(taking('greeting'), commands.matPiece(inches(1 / 8), 'gold'));
});
