import { inches, type Length, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { type CardEdit, type Edit, MOST_EDITS, type Piece, type Sketch, type Variation } from '../model/sketch.js';
import { readSketch } from '../read/read-sketch.js';
import { writeSketch } from '../read/write-sketch.js';
import { applyEdit, applyEdits, EditError, freeId } from './apply-edit.js';
import { joinEdit } from './join-edit.js';
import { everyPiece, everySource, isCardEdit, withEdits, withVariation, withVariations } from './variations.js';

const sketch = sampleSketch();
const IDS = ['panel-mat', 'panel', 'strip', 'greeting', 'liner'] as const;

function pieceIn(from: Sketch, id: string): Piece {
  const found = from.pieces.find((piece) => piece.id === id);
  if (!found) throw new Error(`no piece ${id}`);
  return found;
}

const place = (piece: string, x: number, y = x): CardEdit => ({ do: 'place', piece, x: inches(x), y: inches(y) });
const corners = (radius: number): CardEdit => ({
  do: 'round',
  piece: 'greeting',
  corners: { tl: inches(radius), tr: inches(radius), br: inches(radius), bl: inches(radius) },
});
const named = (id: string, edits: readonly CardEdit[]): Variation => ({ id, name: id, note: '', edits });
const having = (...variations: Variation[]): Sketch => ({ ...sketch, variations });

const length = (least: number, most: number) => fc.integer({ min: least, max: most }).map((n) => ticks(n));
const id = fc.constantFrom(...IDS);
const at = length(-9_000, 60_000);
const side = length(9_000, 60_000);

/** Every kind of edit that a variation holds, most of them about the same few pieces, so that many can be joined. */
const anEdit: fc.Arbitrary<CardEdit> = fc.oneof(
  { weight: 4, arbitrary: fc.record({ do: fc.constant('place' as const), piece: id, x: at, y: at }) },
  {
    weight: 4,
    arbitrary: fc.record({ do: fc.constant('resize' as const), piece: id, x: at, y: at, width: side, height: side }),
  },
  fc.record({ do: fc.constant('tilt' as const), piece: id, tilt: fc.integer({ min: -90, max: 90 }) }),
  fc.record({
    do: fc.constant('round' as const),
    piece: id,
    corners: fc.record({ tl: length(0, 4_000), tr: length(0, 4_000), br: length(0, 4_000), bl: length(0, 4_000) }),
  }),
  fc.record({
    do: fc.constant('punch' as const),
    piece: id,
    edge: fc.constantFrom('top' as const, 'bottom' as const),
    punch: fc.constantFrom('scallops', null),
  }),
  fc.record({ do: fc.constant('order' as const), piece: id, to: fc.integer({ min: 0, max: 5 }) }),
  fc.record({ do: fc.constant('cut-from' as const), piece: id, from: fc.constantFrom('ivory', 'moss', 'prints') }),
  fc.record({ do: fc.constant('alter-piece' as const), piece: id, raise: length(0, 900) }),
  fc.record({ do: fc.constant('alter-piece' as const), piece: id, raise: length(0, 900), perCard: fc.constant(2) }),
  fc.record({
    do: fc.constant('mat' as const),
    piece: fc.constant('panel-mat'),
    mats: fc.oneof(fc.constant(null), fc.record({ piece: fc.constant('panel'), reveal: length(1, 4_000) })),
  }),
  length(20_000, 90_000).map((width): CardEdit => ({ do: 'card', card: { ...sketch.card, width } })),
  ...sketch.punches.map((punch) =>
    length(1, 2_000).map((bite): CardEdit => ({ do: 'set-punch', punch: { ...punch, bite } })),
  ),
  fc.constantFrom<CardEdit>(
    { do: 'remove-piece', piece: 'liner' },
    { do: 'remove-punch', punch: 'scallops' },
    { do: 'remove-paper', paper: 'moss' },
    { do: 'set-mix', mix: { id: 'prints', name: 'Prints', papers: ['dots'] } },
    { do: 'set-mix', mix: { id: 'prints', name: 'Prints', papers: ['dots', 'sprig'] } },
  ),
);

/** Edits all of which can be made, one after the other. */
const someEdits = fc.array(anEdit, { maxLength: 24, size: 'max' }).map((edits) => {
  let after = sketch;
  return edits.filter((edit) => {
    try {
      after = applyEdit(after, edit);
      return true;
    } catch (error) {
      if (error instanceof EditError) return false;
      throw error;
    }
  });
});

test('joined edits make the same sketch as the edits one by one, and are never more', () => {
  let joinedAny = 0;
  fc.assert(
    fc.property(someEdits, (edits) => {
      const joined = edits.reduce(joinEdit, [] as readonly CardEdit[]);
      expect(applyEdits(sketch, joined)).toEqual(applyEdits(sketch, edits));
      expect(joined.length).toBeLessThanOrEqual(edits.length);
      joinedAny += edits.length - joined.length;
    }),
    { numRuns: 600 },
  );
  expect(joinedAny).toBeGreaterThan(300);
});

test('a piece dragged and resized in turns a thousand times is two edits', () => {
  let variation = named('a', []);
  for (let n = 0; n < 1_000; n += 1) {
    const { width, height } = pieceIn(sketch, 'strip');
    variation = withEdits(variation, [
      place('strip', n / 16),
      { do: 'resize', piece: 'strip', x: inches(1), y: inches(n / 16), width, height },
      place('greeting', n / 32),
      { do: 'resize', piece: 'strip', x: inches(2), y: inches(n / 16), width, height },
      place('strip', 1),
    ]);
  }
  expect(variation.edits.map((edit) => edit.do)).toEqual(['place', 'resize', 'place']);
});

test('what an edit in between depends on is not joined away', () => {
  const free: CardEdit = { do: 'mat', piece: 'panel-mat', mats: null };
  const edits = [place('panel', 1), free, place('panel', 2)].reduce(joinEdit, [] as readonly CardEdit[]);
  expect(edits).toHaveLength(3);
  expect(pieceIn(applyEdits(sketch, edits), 'panel-mat').x).toBe(inches(7 / 8));
});

test('a variation put on and taken off again leaves the very object', () => {
  expect(withVariations(sketch, []).sketch).toBe(sketch);
  expect(withVariations(sketch, ['not-there']).sketch).toBe(sketch);
  const on = withVariations(sketch, ['square']);
  expect(on.sketch).not.toBe(sketch);
  expect(pieceIn(on.sketch, 'greeting').corners.tl).toBe(0);
  expect(on.sketch.papers).toBe(sketch.papers);
});

test('variations are put on in the order of the sketch, whatever order they are asked for in: the later one has it', () => {
  const two = having(named('first', [place('strip', 1)]), named('second', [place('strip', 2), corners(0)]));
  for (const on of [
    ['first', 'second'],
    ['second', 'first'],
  ]) {
    expect(pieceIn(withVariations(two, on).sketch, 'strip').x).toBe(inches(2));
  }
  const turned = applyEdit(two, { do: 'set-variation', variation: named('first', [place('strip', 1)]), at: 1 });
  expect(turned.variations.map((variation) => variation.id)).toEqual(['second', 'first']);
  const both = withVariations(turned, ['first', 'second']).sketch;
  expect([pieceIn(both, 'strip').x, pieceIn(both, 'greeting').corners.tl]).toEqual([inches(1), 0]);
});

test('what does not fit any more is left out and told of; the rest is done', () => {
  const gone = applyEdit(having(named('a', [place('strip', 1), place('panel', 1), place('strip', 2)])), {
    do: 'remove-piece',
    piece: 'strip',
  });
  const { sketch: varied, problems, unfit } = withVariations(gone, ['a']);
  expect(pieceIn(varied, 'panel').x).toBe(inches(1));
  expect(unfit.map(({ variation, edit }) => [variation, edit])).toEqual([
    ['a', 0],
    ['a', 2],
  ]);
  expect(problems.map(({ path, value }) => [path, value])).toEqual([
    ['place.piece', '"strip"'],
    ['place.piece', '"strip"'],
  ]);
  expect(withVariation(gone, named('b', [place('panel', 2)])).unfit).toEqual([]);
});

test('only changes to the card are held by a variation', () => {
  const edits: readonly Edit[] = [
    place('strip', 1),
    { do: 'card', card: sketch.card },
    { do: 'unit', unit: 'mm' },
    { do: 'describe', title: 'Another' },
    { do: 'batch', batch: sketch.batch },
    { do: 'remove-variation', variation: 'square' },
    { do: 'set-variation', variation: named('a', []) },
  ];
  expect(edits.map(isCardEdit)).toEqual([true, true, false, false, false, false, false]);
});

test('a variation that is full is refused by its path, and one that is nearly full can be written and read', () => {
  const many = Array.from({ length: MOST_EDITS }, (_each, n): CardEdit => ({ do: 'remove-piece', piece: `p-${n}` }));
  const full = withEdits(named('a', []), many);
  expect(() => withEdits(full, [place('strip', 1)])).toThrow(
    'variations.a.edits is 401; allowed: at most 400 changes.',
  );
  expect(readSketch(JSON.parse(JSON.stringify(writeSketch(having(full)))))).toMatchObject({ ok: true });
});

test('a new piece or mix takes no id that a variation brings, so that both can be on', () => {
  const brought: Piece = { ...pieceIn(sketch, 'strip'), id: 'strip-1' };
  const mix = { id: 'mix-1', name: 'Two', papers: ['dots', 'moss'] };
  const two = having(
    named('a', [
      { do: 'add-piece', piece: brought },
      { do: 'set-mix', mix },
    ]),
  );
  expect(freeId('strip', everyPiece(two))).toBe('strip-2');
  expect(freeId('mix', everySource(two))).toBe('mix-2');
  expect(everyPiece(sketch)).toBe(sketch.pieces);
  const more = applyEdit(two, { do: 'add-piece', piece: { ...brought, id: 'strip-2' } });
  expect(withVariations(more, ['a']).problems).toEqual([]);
});

test('a length of a variation survives its document', () => {
  const odd = having(named('a', [{ do: 'place', piece: 'strip', x: 12_347 as Length, y: ticks(-1) }]));
  const read = readSketch(JSON.parse(JSON.stringify(writeSketch(odd))));
  expect(read.ok && read.sketch.variations).toEqual(odd.variations);
});
