import { inches, millimetres, ticks } from '@trimwell/geometry';
import { applyEdits, type Piece, USUAL_PUNCHES, type UsualPunch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import * as commands from './commands.js';
import { expectRefused, expectTransaction } from './expect-transaction.js';
import { type EditorState, openState, selectedPiece } from './state.js';
import * as tools from './tool-commands.js';
import { applyTransaction } from './transaction.js';

function taking(id: string | null, state: EditorState = openState(sampleSketch())): EditorState {
  return id === null ? state : applyTransaction(state, { event: 'piece.select', edits: [], selection: [id], at: 0 });
}

function piece(state: EditorState, id: string): Piece {
  const found = state.sketch.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

const lace = USUAL_PUNCHES.in.find(({ profile }) => profile === 'eyelet scallop') as UsualPunch;

test('a mat becomes concentric and is let go again', () => {
  const round = expectTransaction(taking('panel'), commands.setCorners(inches(1 / 4)));
  const on = expectTransaction(taking('panel-mat', round), tools.setConcentric(true));
  expect(piece(on, 'panel-mat').corners.tl).toBe(inches(3 / 8));
  expectRefused(on, tools.setConcentric(true));
  expectRefused(taking('panel', on), tools.setConcentric(true));
  const more = expectTransaction(on, commands.setCorners(inches(1 / 2)));
  expect(piece(more, 'panel').corners.br).toBe(inches(3 / 8));
  expectRefused(on, commands.setCorners(inches(1 / 8)));
  expectRefused(on, commands.setCorners(inches(1 / 16), 'tl'));
  const off = expectTransaction(more, tools.setConcentric(false));
  expect(piece(off, 'panel-mat').corners.tl).toBe(inches(1 / 2));
  expect(piece(expectTransaction(off, commands.setCorners(inches(1 / 16))), 'panel').corners.tl).toBe(inches(3 / 8));
});

test('the mat of a rounded piece is concentric, that of a square one is not yet', () => {
  const round = expectTransaction(taking('greeting'), commands.setCorners(inches(1 / 4)));
  const matted = expectTransaction(round, commands.matPiece());
  expect(selectedPiece(matted)).toMatchObject({
    mats: { piece: 'greeting', concentric: true },
    corners: { tl: inches(3 / 8) },
  });
  expect(selectedPiece(expectTransaction(taking('strip'), commands.matPiece()))?.mats).toEqual({
    piece: 'strip',
    reveal: inches(1 / 8),
  });
});

test('a piece becomes concentric with what it lies on evenly, mat or not', () => {
  const sketch = sampleSketch();
  const panel = piece(openState(sketch), 'panel');
  const inner: Piece = {
    ...panel,
    id: 'inner',
    x: ticks(panel.x + inches(1 / 4)),
    y: ticks(panel.y + inches(1 / 4)),
    width: ticks(panel.width - inches(1 / 2)),
    height: ticks(panel.height - inches(1 / 2)),
  };
  const nested = openState(
    applyEdits(sketch, [
      { do: 'add-piece', piece: inner },
      {
        do: 'round',
        piece: 'panel',
        corners: { tl: inches(1 / 2), tr: inches(1 / 8), br: ticks(0), bl: inches(3 / 8) },
      },
    ]),
  );
  expect(tools.evenUnder(nested.sketch, inner)).toMatchObject({ piece: { id: 'panel' }, reveal: inches(1 / 4) });
  const after = expectTransaction(taking('inner', nested), tools.roundWithin);
  expect(piece(after, 'inner').corners).toEqual({ tl: inches(1 / 4), tr: 0, br: 0, bl: inches(1 / 8) });
  expectRefused(after, tools.roundWithin);
  const moved = applyTransaction(taking('inner', nested), {
    event: 'piece.move',
    edits: [{ do: 'place', piece: 'inner', x: ticks(inner.x + 1), y: inner.y }],
    at: 0,
  });
  expectRefused(moved, tools.roundWithin);
  expectRefused(taking('panel-mat'), tools.roundWithin);
});

test('a punch is put into the sketch once, changed wherever it is used, and taken away with its uses', () => {
  const more = expectTransaction(taking(null), tools.addPunch(lace));
  expect(more.sketch.punches.map(({ id }) => id)).toEqual(['scallops', 'eyelet-scallop-1']);
  expectRefused(more, tools.addPunch({ ...lace, name: 'Another name' }));
  const scallops = more.sketch.punches[0];
  if (!scallops) throw new Error('the sample has a punch');
  const changed = expectTransaction(more, tools.changePunch({ ...scallops, bite: inches(1 / 4) }));
  expect(changed.sketch.punches[0]?.bite).toBe(inches(1 / 4));
  expectRefused(changed, tools.changePunch({ ...scallops, bite: inches(1 / 4) }));
  expectRefused(changed, tools.changePunch({ ...scallops, id: 'lace' }));
  expect(tools.usesOf(changed.sketch, 'scallops').map(({ piece: { id }, edge }) => `${id} ${edge}`)).toEqual([
    'strip bottom',
  ]);
  const gone = expectTransaction(changed, tools.removePunch('scallops'));
  expect(gone.sketch.punches.map(({ id }) => id)).toEqual(['eyelet-scallop-1']);
  expect(piece(gone, 'strip').punched).toEqual({});
  expectRefused(gone, tools.removePunch('scallops'));
});

test('an edge is punched from the library in one step, with the punch of the sketch where it is the same', () => {
  const laced = expectTransaction(taking('strip'), tools.punchWith('top', lace));
  expect(piece(laced, 'strip').punched).toEqual({ bottom: 'scallops', top: 'eyelet-scallop-1' });
  expectRefused(laced, tools.punchWith('top', lace));
  const again = expectTransaction(laced, tools.punchWith('bottom', { ...lace, name: 'Lace' }));
  expect(again.sketch.punches).toHaveLength(2);
  expectRefused(taking(null), tools.punchWith('top', lace));
});

test('a sketch with as many punches as it holds takes no more', () => {
  const many = Array.from({ length: tools.MOST_PUNCHES - 1 }, (_, n) => ({
    do: 'set-punch' as const,
    punch: { ...lace, id: `lace-${n}`, repeat: millimetres(n + 20) },
  }));
  const full = openState(applyEdits(sampleSketch(), many));
  expectRefused(full, tools.addPunch(lace));
  expectRefused(taking('strip', full), tools.punchWith('top', lace));
  expectTransaction(taking('strip', full), tools.punchWith('top', { ...lace, repeat: millimetres(20) }));
});

test('an edge is made to fit whole repeats about its middle', () => {
  const before = taking('strip');
  const { x, width } = piece(before, 'strip');
  const punch = before.sketch.punches[0];
  if (!punch) throw new Error('the sample has a punch');
  const off = applyTransaction(before, {
    event: 'piece.resize',
    edits: [{ do: 'resize', piece: 'strip', x, y: ticks(0), width: ticks(width + 700), height: inches(1) }],
    at: 0,
  });
  expect(tools.wholeRepeats(piece(off, 'strip'), 'bottom', punch)).toBe(
    Math.round((width + 700) / punch.repeat) * punch.repeat,
  );
  const fits = expectTransaction(off, tools.fitRepeats('bottom'));
  const after = piece(fits, 'strip');
  expect(after.width % punch.repeat).toBe(0);
  expect(after.x + after.width / 2).toBe(x + (width + 700) / 2);
  expectRefused(fits, tools.fitRepeats('bottom'));
  expectRefused(off, tools.fitRepeats('top'));
});
