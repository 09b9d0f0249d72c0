import { inches } from '@trimwell/geometry';
import type { Piece } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import * as commands from './commands.js';
import { expectRefused, expectTransaction } from './expect-transaction.js';
import { type EditorState, openState } from './state.js';

const cutNew = (): EditorState => expectTransaction(openState(sampleSketch()), commands.addPiece('moss'));

function taken(state: EditorState): Piece {
  const found = state.sketch.pieces.find(({ id }) => id === state.selection.at(-1));
  if (!found) throw new Error('nothing is taken');
  return found;
}

test('what was just cut becomes a usual banner from the fold, or a usual tag, under its own name', () => {
  const was = taken(cutNew());
  const banner = taken(expectTransaction(cutNew(), commands.setKind('banner')));
  expect(banner).toMatchObject({ kind: 'banner', shape: 'banner', x: 0, width: inches(3 + 3 / 16), height: inches(1) });
  expect(banner.name).toBe(was.name.replace('focal piece', 'banner'));
  const tag = taken(expectTransaction(cutNew(), commands.setShape('tag')));
  expect(tag).toMatchObject({ kind: 'tag', shape: 'tag', width: inches(1.5), height: inches(3) });
  const again = expectTransaction(
    expectTransaction(cutNew(), commands.setKind('tag')),
    commands.setKind('focal piece'),
  );
  expect(taken(again)).toMatchObject({ kind: 'focal piece', shape: 'rectangle', width: was.width, height: was.height });
  expect(taken(again).name).toBe(was.name);
});

test('the usual banner also comes when the list is gone through key by key', () => {
  const passed = expectTransaction(expectTransaction(cutNew(), commands.setKind('mat')), commands.setKind('strip'));
  expect(taken(passed)).toMatchObject({ kind: 'strip', width: inches(4.25), height: inches(1) });
  const shaped = expectTransaction(
    expectTransaction(cutNew(), commands.setShape('ellipse')),
    commands.setShape('banner'),
  );
  expect(taken(shaped)).toMatchObject({ kind: 'banner', shape: 'banner', height: inches(1) });
});

test('a piece that was worked on keeps its size when it is called something else, and a mat goes by its piece', () => {
  const wider = expectTransaction(cutNew(), commands.grow(1, 0));
  const named = taken(expectTransaction(wider, commands.setKind('banner')));
  expect(named).toMatchObject({ kind: 'banner', shape: 'rectangle', width: taken(wider).width });
  const shaped = taken(expectTransaction(wider, commands.setShape('banner')));
  expect(shaped).toMatchObject({ kind: 'focal piece', shape: 'banner', width: taken(wider).width });
  const matted = expectTransaction(cutNew(), commands.matPiece());
  const inner = { ...matted, selection: [taken(matted).mats?.piece ?? ''] };
  expect(taken(expectTransaction(inner, commands.setKind('banner')))).toMatchObject({
    kind: 'banner',
    width: taken(cutNew()).width,
  });
  expectRefused(cutNew(), commands.setKind('focal piece'));
});

test('a mat is cut from a card that sets it off from its piece, and from the card it lies on', () => {
  const sketch = sampleSketch();
  const { base } = sketch.card;
  const others = sketch.papers.filter(
    ({ kind, look, id }) => kind === 'cardstock' && look.pattern === 'plain' && id !== base,
  );
  for (const { from } of sketch.pieces) {
    const added = expectTransaction(openState(sketch), commands.addPiece(from));
    const mat = taken(expectTransaction(added, commands.matPiece()));
    expect(mat.from).not.toBe(from);
    if (others.some(({ id }) => id !== from)) expect(mat.from).not.toBe(base);
  }
});
