import { inches, millimetres, parseLength } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MOST_PIECES } from '../../model/sketch.js';
import { readSketch } from '../../read/read-sketch.js';
import { writeSketch } from '../../read/write-sketch.js';
import { type PieceListWish, readPieceList } from './read-piece-list.js';

function read(text: string, wish: PieceListWish = { card: '4 1/4 x 5 1/2 in' }) {
  const reading = readPieceList(text, wish);
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  return reading;
}

function messages(text: string, wish: PieceListWish = { card: '4 1/4 x 5 1/2 in' }): readonly string[] {
  const reading = readPieceList(text, wish);
  return reading.ok ? [] : reading.problems.map(({ message }) => message);
}

test('rows become pieces, largest first, in papers by name, all on the card', () => {
  const { sketch, told } = read(
    'name,kind,paper,width,height,per card\nTag,tag,Oat,1 in,2 in,3\nPanel,PANEL,Fern,3 3/4 in,5 in,\nStrip,,Fern,95.25 mm,1",1\n',
  );
  expect(sketch.pieces.map(({ name, kind, perCard, from }) => [name, kind, perCard, from])).toEqual([
    ['Panel', 'panel', 1, 'fern'],
    ['Strip', 'other', 1, 'fern'],
    ['Tag', 'tag', 3, 'oat'],
  ]);
  expect(sketch.papers.map(({ name, width }) => [name, width])).toEqual([
    ['Base card', inches(8.5)],
    ['Oat', inches(12)],
    ['Fern', inches(12)],
  ]);
  expect(sketch.card).toMatchObject({ width: inches(4.25), height: inches(5.5), fold: 'left', base: 'base-card' });
  for (const { x, y, width, height } of sketch.pieces) {
    expect(Math.min(x, y)).toBeGreaterThanOrEqual(0);
    expect([x + width <= sketch.card.width, y + height <= sketch.card.height]).toEqual([true, true]);
  }
  expect(sketch.pieces[0]).toMatchObject({ x: inches(0.25), y: inches(0.25) });
  expect(sketch.pieces[1]?.width).toBe(inches(3.75));
  expect(told).toEqual([]);
});

test('small pieces lie side by side in rows and not on each other while there is room', () => {
  const rows = Array.from({ length: 9 }, (_, index) => `P${index},1 in,${1 + (index % 3) / 4} in`);
  const { pieces } = read(`name,width,height\n${rows.join('\n')}`).sketch;
  for (const one of pieces)
    for (const other of pieces) {
      if (one === other) continue;
      const apart =
        one.x + one.width <= other.x ||
        other.x + other.width <= one.x ||
        one.y + one.height <= other.y ||
        other.y + other.height <= one.y;
      expect(apart).toBe(true);
    }
});

test('other names, another separator, units in the head, in a column and in the wish', () => {
  const { sketch, told } = read('Piece;Cut from;Wide (mm);Length [cm];Qty;colour\n Sky ;Blue;95;13,8;2;x\n', {
    card: '105 x 148 mm',
  });
  expect(sketch.unit).toBe('mm');
  expect(sketch.pieces[0]).toMatchObject({
    name: 'Sky',
    width: millimetres(95),
    height: millimetres(138),
    perCard: 2,
    from: 'blue',
  });
  expect(told).toEqual([
    'The list is separated by semicolons.',
    'Left out, because they mean nothing here: the columns "colour".',
  ]);
  const sizes = read('size\tunits\n3 3/4 x 5\tin\n2 × 3\tcm\n', {
    card: '5 x 7',
    unit: 'in',
    fold: 'top',
    title: 'Mine',
  });
  expect(sizes.sketch).toMatchObject({ title: 'Mine', id: 'mine', card: { fold: 'top', height: inches(7) } });
  expect(sizes.sketch.pieces.map(({ name, width }) => [name, width])).toEqual([
    ['Piece 2', inches(3.75)],
    ['Piece 3', millimetres(20)],
  ]);
});

test('the row of a card base gives the card, its fold and its paper', () => {
  const row = (blank: string) =>
    `name,kind,paper,width,height,blank width,blank height\nBase,Card base,Oat,4 in,5 in,${blank}\n`;
  const folds = ['8 in,5 in', '4 in,10 in', '4 in,5 in'].map((blank) => read(row(blank), {}).sketch.card);
  expect(folds.map(({ fold }) => fold)).toEqual(['left', 'top', 'none']);
  expect(folds[0]).toMatchObject({ width: inches(4), height: inches(5), base: 'oat' });
  expect(messages(row('9 in,5 in'), {})).toEqual([
    'Row 2, column "blank width" is "9 in x 5 in"; allowed: for a card base a blank of its own size, of twice its width, or of twice its height.',
  ]);
});

test('every mistake is told, by row and column as the file has them', () => {
  const text = [
    '',
    'Name,Kind,Paper,Width,Height,Per card',
    'a,panel,Oat,wide,5 in,1',
    '',
    `"two\nlines",plate,Oat,4 in,-5 in,0`,
    `${'x'.repeat(81)},mat,Oat,4 in,3 m,25`,
    'b,mat,Oat,4 in,5 in,1,more',
  ].join('\r\n');
  const reading = readPieceList(text, { card: '4 x 5 in' });
  if (reading.ok) throw new Error('It was read.');
  expect(reading.problems.map(({ row, column, code }) => [row, column, code])).toEqual([
    [3, 'Width', 'not-a-length'],
    [5, 'Kind', 'unknown-word'],
    [5, 'Per card', 'not-a-count'],
    [5, 'Height', 'not-a-length'],
    [6, 'Name', 'too-long'],
    [6, 'Per card', 'not-a-count'],
    [6, 'Height', 'not-a-length'],
    [7, null, 'too-many-cells'],
  ]);
  expect(reading.problems[0]?.message).toBe(
    'Row 3, column "Width" is "wide"; allowed: a length above 0, up to 2 m, such as 4 1/4 in, 4¼", 108 mm or 10.8 cm.',
  );
});

test.each([
  ['', {}, 'The piece list is ""; allowed: CSV with a head'],
  ['a,b\n1,2', {}, 'missing: width, height'],
  ['width,height,w\n1 in,2 in,3 in', {}, 'Row 1, column "w" is "w"; allowed: one such column; "width" means the same.'],
  ['size,width,height\n', {}, 'either a size, or a width and a height, not both'],
  ['width,height\n1 in,2 in', {}, 'The size of the card is nothing; allowed: a size beside the list'],
  ['width,height\n1 in,2 in', { card: 'big' }, 'The size of the card is "big"; allowed: a width and a height'],
  [
    'width,height\n1,2\n3,4 in',
    {},
    'Row 2, column "width" is "1"; allowed: a length with its unit, such as 3 in or 76 mm, or a unit for the whole list; so do 2 more cells.',
  ],
  ['width,height,unit\n1,2,ell', { card: '4 x 5 in' }, 'Row 2, column "unit" is "ell"; allowed: one of in, mm, cm.'],
  [
    'width,height\n1 in,"2 in',
    { card: '4 x 5 in' },
    'Row 2, column "height" is "2 in"; allowed: a text in quotes that ends with a quote.',
  ],
  [
    'width,height\n1 in,"2" in',
    { card: '4 x 5 in' },
    'a text wholly in quotes, with each quote inside it written twice',
  ],
  [
    'kind,width,height\ncard base,4 in,5 in\ncard base,4 in,5 in',
    {},
    'Row 3, column "kind" is "card base"; allowed: one card base in a list.',
  ],
  ['width,height\n1 in,2 in', { card: '4 x 5 in', title: '' }, 'The title is ""; allowed: 1 to 80 characters.'],
] as const)('%j is refused in words', (text, wish, words) => {
  expect(messages(text, wish).join('\n')).toContain(words);
});

test('no more pieces and papers than a sketch holds', () => {
  const rows = (count: number) => Array.from({ length: count }, (_, index) => `P${index},1 in,1 in`).join('\n');
  expect(read(`name,width,height\n${rows(MOST_PIECES)}`).sketch.pieces).toHaveLength(MOST_PIECES);
  expect(messages(`name,width,height\n${rows(MOST_PIECES + 1)}`).join()).toContain(
    'Row 202 is "P200 | 1 in | 1 in"; allowed: at most 200 pieces.',
  );
  const papers = Array.from({ length: 60 }, (_, index) => `P${index},1 in,1 in`).join('\n');
  expect(messages(`paper,width,height\n${papers}`).join()).toContain(
    'Row 61, column "paper" is "P59"; allowed: at most 59 papers.',
  );
});

test('what is larger than the card, between ticks, or punched is told', () => {
  const { sketch, told } = read('name,width,height,blank width,blank height\nBig,9 in,1.00001 in,9 in,2 in\n');
  expect(told).toEqual([
    'Row 2: a length lies between ticks of 1/16256 in and went to the nearest.',
    'Row 2: its blank is larger than the piece, as for a punched edge; which punch, no list says.',
    '"Big" is larger than the card and hangs over its edges.',
  ]);
  expect(sketch.pieces[0]?.height).toBe(parseLength('1.00001', 'in'));
});

test('any text whatever is read or refused, and what is read is a sound sketch', () => {
  const cell = fc.oneof(
    fc.constantFrom('1 in', '2,5', '3 3/4"', 'panel', 'card base', '', '"', "'=1", '4 x 5', 'Ω', '1e9', '24', '0'),
    fc.string({ unit: 'binary', maxLength: 6 }),
  );
  const head = fc.constantFrom(
    'name',
    'width',
    'height',
    'size',
    'kind',
    'paper',
    'per card',
    'unit',
    'face',
    'shape',
    'x',
  );
  const text = fc
    .record({
      head: fc.array(head, { maxLength: 7 }),
      rows: fc.array(fc.array(cell, { maxLength: 8 }), { maxLength: 6 }),
      sign: fc.constantFrom(',', ';', '\t'),
    })
    .map((list) => [list.head, ...list.rows].map((row) => row.join(list.sign)).join('\n'));
  const length = fc.constantFrom('1 in', '2,5 cm', '3 3/4"', '4', '9 in', '0.1 mm');
  const row = fc.tuple(length, length, fc.constantFrom('', 'Tag', '"a, b"'), fc.constantFrom('', 'Oat', 'Fern'));
  const sane = fc
    .array(row, { maxLength: 12 })
    .map((rows) =>
      [
        'width,height,name,paper',
        ...rows.map(([w, h, ...rest]) => [`"${w.replace('"', '""')}"`, `"${h.replace('"', '""')}"`, ...rest].join(',')),
      ].join('\n'),
    );
  let sound = 0;
  const lists = fc.oneof({ weight: 2, arbitrary: text }, sane, fc.string({ unit: 'binary' }));
  fc.assert(
    fc.property(lists, fc.constantFrom('in', 'mm', undefined), (list, unit) => {
      const reading = readPieceList(list, { card: '4 x 5 in', ...(unit ? { unit } : {}) });
      if (!reading.ok) expect(reading.problems.length).toBeGreaterThan(0);
      else {
        expect(readSketch(writeSketch(reading.sketch))).toEqual({ ok: true, sketch: reading.sketch });
        sound += 1;
      }
    }),
    { numRuns: 1000, seed: 20261126 },
  );
  expect(sound).toBeGreaterThan(100);
});
