import { inches, millimetres, ticks } from '@trimwell/geometry';
import { applyEdits, type CopiedPieces, copiedPieces, type Piece, type Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { paste } from './commands.js';
import { expectRefused, expectTransaction } from './expect-transaction.js';
import { type EditorState, openState } from './state.js';

const sketch = sampleSketch();
const start = openState(sketch);

function copied(ids: readonly string[], of: Sketch = sketch): CopiedPieces {
  const found = copiedPieces(of, ids);
  if (!found) throw new Error('nothing copied');
  return found;
}

function piece(state: EditorState, id: string): Piece {
  const found = state.sketch.pieces.find((one) => one.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

test('pasted where it lies already, a piece is shifted, again and again; elsewhere it keeps its place', () => {
  const once = expectTransaction(start, paste(copied(['strip'])), (after) => {
    expect(after.selection).toEqual(['strip-1']);
    expect(piece(after, 'strip-1')).toMatchObject({ name: 'Strip 2', x: inches(3 / 8), y: inches(3.125) });
  });
  const twice = expectTransaction(once, paste(copied(['strip'])));
  expect(piece(twice, 'strip-2').x).toBe(inches(1 / 2));
  const without = openState(applyEdits(sketch, [{ do: 'remove-piece', piece: 'strip' }]));
  expectTransaction(without, paste(copied(['strip'])), (after) => {
    expect(piece(after, 'strip')).toEqual(piece(start, 'strip'));
    expect(after.sketch.pieces.at(-1)?.id).toBe('strip');
  });
  expectTransaction({ ...start, face: 'inside' }, paste(copied(['strip'])), (after) => {
    expect(piece(after, 'strip-1')).toMatchObject({ face: 'inside', x: inches(1 / 4) });
  });
});

test('a mat and its piece come as mat and piece, shifted together', () => {
  const after = expectTransaction(start, paste(copied(['panel', 'panel-mat'])));
  expect(piece(after, 'panel-mat-1').mats).toEqual({ piece: 'panel-1', reveal: inches(1 / 8) });
  expect(piece(after, 'panel-1').x - piece(start, 'panel').x).toBe(inches(1 / 8));
});

test('papers that are the same are used, whatever their ids and stock; others are added under a free id', () => {
  const moss = sketch.papers.find(({ id }) => id === 'moss');
  const greeting = copied(['greeting']);
  const [ivory] = greeting.papers;
  if (!moss || !ivory) throw new Error('the sample has moss and ivory');
  const named: CopiedPieces = {
    ...greeting,
    papers: [{ ...ivory, id: 'cream', sheets: 3 }],
    pieces: greeting.pieces.map((one) => ({ ...one, from: 'cream' })),
  };
  expectTransaction(start, paste(named), (after) => {
    expect(after.sketch.papers).toBe(sketch.papers);
    expect(piece(after, 'greeting-1').from).toBe('ivory');
  });
  const other: CopiedPieces = { ...greeting, papers: [{ ...ivory, width: inches(6) }] };
  expectTransaction(start, paste(other), (after) => {
    expect(after.sketch.papers).toHaveLength(sketch.papers.length + 1);
    expect(piece(after, 'greeting-1').from).toBe(after.sketch.papers.at(-1)?.id);
    expect(after.sketch.papers.at(-1)?.width).toBe(inches(6));
  });
});

test('mixes and punches come along into a sketch that has none of them', () => {
  const bare = openState({
    ...sketch,
    mixes: [],
    punches: [],
    pieces: sketch.pieces.filter(({ id }) => id === 'liner'),
    batch: { ...sketch.batch, contrast: [] },
    variations: [],
  });
  expectTransaction(bare, paste(copied(['strip'])), (after) => {
    expect([after.sketch.mixes, after.sketch.punches]).toEqual([sketch.mixes, sketch.punches]);
    expect(piece(after, 'strip')).toMatchObject({ from: 'prints', punched: { bottom: 'scallops' } });
  });
});

test('between inches and millimetres sizes stay, places come to the nearest mark, a mat with its piece', () => {
  const odd = applyEdits(sketch, [{ do: 'place', piece: 'strip', x: ticks(12_345), y: ticks(77) }]);
  const metric = openState(applyEdits(sketch, [{ do: 'unit', unit: 'mm' }]));
  expectTransaction(metric, paste(copied(['strip'], odd)), (after) => {
    expect(piece(after, 'strip-1')).toMatchObject({ x: millimetres(19), y: 0, width: inches(3.75) });
  });
  expectTransaction(metric, paste(copied(['panel', 'panel-mat'])), (after) => {
    const [panel, mat] = [piece(after, 'panel-1'), piece(after, 'panel-mat-1')];
    expect([mat.x % millimetres(1), mat.y % millimetres(1)]).toEqual([0, 0]);
    expect([panel.x - mat.x, panel.width]).toEqual([inches(1 / 8), piece(start, 'panel').width]);
  });
  const there = applyEdits(sketch, [{ do: 'remove-piece', piece: 'strip' }]);
  expectTransaction(openState(there), paste(copied(['strip'], odd)), (after) => {
    expect(piece(after, 'strip')).toMatchObject({ x: 12_345, y: 77 });
  });
});

test('what would lie off the card comes onto it, on a mark; what only reaches over an edge stays', () => {
  const { card } = sketch;
  const bare = openState(applyEdits(sketch, [{ do: 'remove-piece', piece: 'strip' }]));
  const at = (x: number, y: number) =>
    copied(['strip'], applyEdits(sketch, [{ do: 'place', piece: 'strip', x: ticks(x), y: ticks(y) }]));
  const strip = piece(start, 'strip');
  expectTransaction(bare, paste(at(inches(70), inches(-50))), (after) => {
    const pasted = piece(after, 'strip');
    expect([pasted.x, pasted.y]).toEqual([card.width - strip.width, 0]);
    expect([pasted.x % inches(1 / 16), pasted.width]).toEqual([0, strip.width]);
  });
  const over = card.width - strip.width + inches(1 / 2);
  expectTransaction(bare, paste(at(over, inches(1))), (after) => expect(piece(after, 'strip').x).toBe(over));
  const wide = applyEdits(bare.document, [{ do: 'card', card: { ...card, width: inches(2) } }]);
  expectTransaction(openState(wide), paste(at(inches(9), inches(1))), (after) =>
    expect(piece(after, 'strip').x).toBe((inches(2) - strip.width) / 2),
  );
});

test('a sheet with a photograph is known again, though the photograph is not copied', () => {
  const photo = (id: string, hex: string) => {
    const found = sketch.papers.find((one) => one.id === id);
    if (!found) throw new Error(`no paper ${id}`);
    return { ...found, look: { ...found.look, photo: hex.repeat(32) } };
  };
  const twin = { ...photo('ivory', 'cd'), id: 'twin' };
  const shown = openState(
    applyEdits(sketch, [
      { do: 'set-paper', paper: twin },
      { do: 'set-paper', paper: photo('ivory', 'ab') },
    ]),
  );
  expectTransaction(shown, paste(copied(['greeting'])), (after) => {
    expect(after.sketch.papers).toBe(shown.sketch.papers);
    expect(piece(after, 'greeting-1').from).toBe(piece(start, 'greeting').from);
  });
});

test('a full sketch takes no more', () => {
  const many = {
    ...copied(['greeting']),
    pieces: Array.from({ length: 200 }, (_, n) => ({ ...piece(start, 'greeting'), id: `g-${n}` })),
  };
  expectRefused(start, paste(many));
});
