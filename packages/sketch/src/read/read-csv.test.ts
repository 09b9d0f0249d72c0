import fc from 'fast-check';
import { expect, test } from 'vitest';
import { plainCell, safeCell } from './csv-cell.js';
import { readCsv } from './read-csv.js';

const texts = (text: string): readonly (readonly string[])[] =>
  readCsv(text).rows.map((row) => row.map((cell) => cell.text));

/** The examples of RFC 4180, section 2, by their number there. */
test.each([
  ['1', 'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n', ['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']],
  ['2', 'aaa,bbb,ccc\r\nzzz,yyy,xxx', ['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']],
  ['5', '"aaa","bbb","ccc"\r\nzzz,yyy,xxx', ['aaa', 'bbb', 'ccc'], ['zzz', 'yyy', 'xxx']],
  ['6', '"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', ['aaa', 'b\r\nbb', 'ccc'], ['zzz', 'yyy', 'xxx']],
  ['7', '"aaa","b""bb","ccc"\r\nzzz,yyy,xxx', ['aaa', 'b"bb', 'ccc'], ['zzz', 'yyy', 'xxx']],
])('RFC 4180, section 2, rule %s', (_rule, text, one, other) => {
  expect(texts(text)).toEqual([one, other]);
  expect(readCsv(text).faults).toEqual([]);
});

test('a head and spaces are cells like any other (RFC 4180, section 2, rules 3 and 4)', () => {
  expect(texts('field_name, field_name ,\r\n')).toEqual([['field_name', ' field_name ', '']]);
});

test('line ends of any kind, a byte order mark and empty rows', () => {
  expect(texts('\ufeffa,b\n1,2\r3,4')).toEqual([
    ['a', 'b'],
    ['1', '2'],
    ['3', '4'],
  ]);
  expect(texts('a,b\r\n\r\n1,2\r\n')).toEqual([['a', 'b'], [''], ['1', '2']]);
  expect(texts('a,')).toEqual([['a', '']]);
  expect(texts('')).toEqual([]);
});

test('the separator is the one that the first row has most of, outside quotes', () => {
  expect(readCsv('a;"b,c,d,e";f\n1,5;2;3').separator).toBe(';');
  expect(readCsv('a\tb,c\td').separator).toBe('\t');
  expect(readCsv('alone').separator).toBe(',');
  expect(texts('a;b\n1,5;"x;y"')).toEqual([
    ['a', 'b'],
    ['1,5', 'x;y'],
  ]);
});

test('an inch mark in a plain cell is a letter; quotes that go wrong are told by row and cell', () => {
  expect(texts('w,h\n4 1/4",5"')).toEqual([
    ['w', 'h'],
    ['4 1/4"', '5"'],
  ]);
  expect(readCsv('a,b\n1,"two" and more').faults).toEqual([
    { row: 2, cell: 2, text: 'two and more', fault: 'text after a quote' },
  ]);
  expect(readCsv('a,b\n"1,2\n3,4\n').faults).toMatchObject([{ row: 2, cell: 1, fault: 'quote not closed' }]);
});

test('any text is read to its end, whatever it is', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom('"', ',', ';', '\t', '\r', '\n', 'a', ' ', '\ufeff') }), (text) => {
      const { rows } = readCsv(text);
      expect(rows.length).toBeLessThanOrEqual(text.length + 1);
    }),
    { numRuns: 500 },
  );
});

test('a guarded cell gives back the very text, and begins like no formula', () => {
  expect(['=1', '+1', '-1', '@a', '\tx', '\rx', '\nx', '＝1', "'=1", "''-1"].map(safeCell)).toEqual([
    "'=1",
    "'+1",
    "'-1",
    "'@a",
    "'\tx",
    "'\rx",
    "'\nx",
    "'＝1",
    "''=1",
    "'''-1",
  ]);
  expect(["'tis", "''", 'a=b', ''].map(safeCell)).toEqual(["'tis", "''", 'a=b', '']);
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom("'", '=', '+', '-', '@', '\t', '\r', '\n', 'a', '＠') }), (text) => {
      expect(plainCell(safeCell(text))).toBe(text);
      expect(safeCell(text)).not.toMatch(/^[=+\-@＝＋－＠\t\r\n]/);
    }),
    { numRuns: 500 },
  );
});
