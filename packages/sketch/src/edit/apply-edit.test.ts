import { inches, type Length, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { Edit, Piece, Sketch } from '../model/sketch.js';
import { readEdit } from '../read/read-sketch.js';
import { writeEdit } from '../read/write-sketch.js';
import { applyEdit, applyEdits, EditError, freeId, movedBy } from './apply-edit.js';

const sketch = sampleSketch();

function pieceIn(from: Sketch, id: string): Piece {
  const found = from.pieces.find((piece) => piece.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

/** Applies `edit` after a trip through its document, and checks that the sketch before is untouched. */
function applied(edit: Edit, before: Sketch = sketch): Sketch {
  const text = JSON.stringify(before);
  const read = readEdit(JSON.parse(JSON.stringify(writeEdit(edit, 'in'))), 'in');
  expect(read).toEqual({ ok: true, edit });
  const after = applyEdit(before, edit);
  expect(JSON.stringify(before)).toBe(text);
  return after;
}

test('a moved piece is moved, and nothing else is a new object', () => {
  const after = applied({ do: 'place', piece: 'strip', x: inches(1), y: inches(2) });
  expect(pieceIn(after, 'strip')).toMatchObject({ x: inches(1), y: inches(2), width: inches(3.75) });
  expect(after.papers).toBe(sketch.papers);
  expect(pieceIn(after, 'panel')).toBe(pieceIn(sketch, 'panel'));
});

test('a mat follows its piece, wherever and however it goes', () => {
  fc.assert(
    fc.property(fc.integer({ min: -20_000, max: 60_000 }), fc.integer({ min: 1, max: 90_000 }), (place, side) => {
      const at = { x: ticks(place), y: ticks(-place), width: ticks(side), height: ticks(side + 1) };
      const after = applyEdit(sketch, { do: 'resize', piece: 'panel', ...at });
      const mat = pieceIn(after, 'panel-mat');
      const reveal = inches(1 / 8);
      expect([at.x - mat.x, at.y - mat.y]).toEqual([reveal, reveal]);
      expect([mat.x + mat.width - at.x - at.width, mat.y + mat.height - at.y - at.height]).toEqual([reveal, reveal]);
    }),
  );
});

test('moving or resizing a mat moves or resizes what it mats, so that the reveal stays even', () => {
  const moved = applied({ do: 'place', piece: 'panel-mat', x: inches(1), y: inches(1) });
  expect(pieceIn(moved, 'panel')).toMatchObject({ x: inches(1.125), y: inches(1.125), width: inches(3.75) });
  expect(pieceIn(moved, 'panel-mat')).toMatchObject({ x: inches(1), y: inches(1) });
  const smaller = applied({
    do: 'resize',
    piece: 'panel-mat',
    x: inches(0),
    y: inches(0),
    width: inches(2),
    height: inches(3),
  });
  expect(pieceIn(smaller, 'panel')).toMatchObject({
    x: inches(1 / 8),
    y: inches(1 / 8),
    width: inches(1.75),
    height: inches(2.75),
  });
  const nothingLeft: Edit = {
    do: 'resize',
    piece: 'panel-mat',
    x: inches(0),
    y: inches(0),
    width: inches(1 / 4),
    height: inches(3),
  };
  expect(() => applyEdit(sketch, nothingLeft)).toThrow('twice its reveal');
});

test('a new mat comes to its place at once, and a freed one stays where it is', () => {
  const withMat = applyEdits(sketch, [
    { do: 'add-piece', piece: { ...pieceIn(sketch, 'greeting'), id: 'greeting-mat', from: 'moss' }, at: 3 },
    { do: 'mat', piece: 'greeting-mat', mats: { piece: 'greeting', reveal: inches(1 / 16) } },
  ]);
  expect(withMat.pieces.map((piece) => piece.id).slice(2, 5)).toEqual(['strip', 'greeting-mat', 'greeting']);
  expect(pieceIn(withMat, 'greeting-mat')).toMatchObject({ x: inches(15 / 16), width: inches(2.375), tilt: -6 });
  const free = applied({ do: 'mat', piece: 'greeting-mat', mats: null }, withMat);
  const away = applyEdit(free, { do: 'place', piece: 'greeting', x: inches(0), y: inches(0) });
  expect(pieceIn(away, 'greeting-mat').x).toBe(inches(15 / 16));
});

test('corners, edges, paper, order, words', () => {
  const corners = { tl: inches(1 / 4), tr: ticks(0), br: ticks(0), bl: ticks(0) };
  expect(pieceIn(applied({ do: 'round', piece: 'strip', corners }), 'strip').corners).toEqual(corners);
  expect(pieceIn(applied({ do: 'punch', piece: 'strip', edge: 'top', punch: 'scallops' }), 'strip').punched).toEqual({
    top: 'scallops',
    bottom: 'scallops',
  });
  expect(pieceIn(applied({ do: 'punch', piece: 'strip', edge: 'bottom', punch: null }), 'strip').punched).toEqual({});
  expect(pieceIn(applied({ do: 'cut-from', piece: 'strip', from: 'dots' }), 'strip').from).toBe('dots');
  expect(applied({ do: 'order', piece: 'liner', to: 0 }).pieces[0]?.id).toBe('liner');
  expect(applied({ do: 'order', piece: 'panel-mat', to: 999 }).pieces.at(-1)?.id).toBe('panel-mat');
  expect(applied({ do: 'describe', title: 'Renamed' })).toMatchObject({ title: 'Renamed', id: 'fern-sampler' });
  expect(
    pieceIn(
      applied({
        do: 'alter-piece',
        piece: 'strip',
        name: 'Wide strip',
        art: { motif: 'heart', words: '', ink: '#aa0000' },
      }),
      'strip',
    ),
  ).toMatchObject({ name: 'Wide strip', art: { motif: 'heart' } });
  const drawn = applyEdit(sketch, {
    do: 'alter-piece',
    piece: 'strip',
    art: { motif: 'heart', words: '', ink: '#aa0000' },
  });
  expect('art' in pieceIn(applied({ do: 'alter-piece', piece: 'strip', art: null }, drawn), 'strip')).toBe(false);
  expect(applied({ do: 'unit', unit: 'mm' }).pieces).toBe(sketch.pieces);
});

test('removing a piece frees its mats and leaves no contrast of one', () => {
  const after = applied({ do: 'remove-piece', piece: 'panel' });
  expect(after.pieces).toHaveLength(4);
  expect('mats' in pieceIn(after, 'panel-mat')).toBe(false);
  expect(after.batch.contrast).toEqual([]);
});

test.each<readonly [string, Edit, string]>([
  ['a piece that is not there', { do: 'place', piece: 'lace', x: inches(0), y: inches(0) }, 'panel-mat, panel'],
  ['a paper that is not there', { do: 'cut-from', piece: 'strip', from: 'gold' }, 'gold'],
  ['a paper still in use', { do: 'remove-paper', paper: 'ivory' }, 'ivory'],
  ['a punch still in use', { do: 'remove-punch', punch: 'scallops' }, 'scallops'],
  ['a mix that is not there', { do: 'remove-mix', mix: 'winter' }, 'winter'],
  ['an id twice', { do: 'add-piece', piece: pieceIn(sketch, 'strip') }, 'not yet used'],
  [
    'a mat of its own mat',
    { do: 'mat', piece: 'panel', mats: { piece: 'panel-mat', reveal: inches(1 / 8) } },
    'not matted',
  ],
])('%s is refused with what is allowed', (_name, edit, words) => {
  expect(() => applyEdit(sketch, edit)).toThrow(EditError);
  expect(() => applyEdit(sketch, edit)).toThrow(words);
});

test('papers, mixes and punches are added or replaced by id', () => {
  const dots = sketch.papers[3];
  if (!dots) throw new Error('the sample has four papers');
  const more = applied({ do: 'set-paper', paper: { ...dots, id: 'stripes', name: 'Stripes' } });
  expect(more.papers).toHaveLength(5);
  expect(applied({ do: 'remove-paper', paper: 'stripes' }, more).papers).toHaveLength(4);
  expect(applied({ do: 'set-paper', paper: { ...dots, sheets: 3 } }).papers[3]).toMatchObject({
    id: 'dots',
    sheets: 3,
  });
  expect(applied({ do: 'set-mix', mix: { id: 'prints', name: 'Prints', papers: ['dots'] } }).mixes[0]?.papers).toEqual([
    'dots',
  ]);
  const punch = {
    id: 'waves',
    name: 'Waves',
    profile: 'wave',
    repeat: inches(1),
    depth: inches(1 / 8),
    bite: inches(0),
  } as const;
  expect(applied({ do: 'set-punch', punch }).punches).toHaveLength(2);
});

test('a free id is free, and moving by nothing changes no place', () => {
  expect(freeId('panel', [{ id: 'panel-1' }, { id: 'panel-3' }])).toBe('panel-2');
  const strip = pieceIn(sketch, 'strip');
  expect(movedBy(strip, 0, 0)).toEqual({ do: 'place', piece: 'strip', x: strip.x, y: strip.y });
  expect(movedBy(strip, 5 as Length, -5)).toMatchObject({ x: strip.x + 5, y: strip.y - 5 });
});
