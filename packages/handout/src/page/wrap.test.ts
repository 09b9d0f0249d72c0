import fc from 'fast-check';
import { expect, test } from 'vitest';
import { estimateMeasure } from './measure.js';
import { STYLES } from './text-style.js';
import { tied, wrapText } from './wrap.js';

const style = STYLES.body;
const width = (text: string): number => estimateMeasure.width(text, style.size, style.face);

test('no line is wider than asked for, and no letter is lost', () => {
  const word = fc.string({ minLength: 1, maxLength: 30 }).map((text) => text.replace(/\s/g, 'x'));
  fc.assert(
    fc.property(fc.array(word, { maxLength: 40 }), fc.integer({ min: 12_000, max: 120_000 }), (words, room) => {
      const lines = wrapText(words.join(' '), room, style, estimateMeasure);
      for (const line of lines) expect(width(line)).toBeLessThanOrEqual(room);
      expect(lines.join('').replace(/ /g, '')).toBe(words.join(''));
    }),
    { numRuns: 300 },
  );
});

test('a line is as full as it can be: the next word would not have fitted', () => {
  const words = 'Glue the scalloped edge under the strip before the strip goes down'.split(' ');
  const room = Math.ceil(width('Glue the scalloped edge')) + 1;
  const lines = wrapText(words.join(' '), room, style, estimateMeasure);
  expect(lines[0]).toBe('Glue the scalloped edge');
  for (const [index, line] of lines.slice(1).entries()) {
    expect(width(`${lines[index]} ${line.split(' ')[0]}`)).toBeGreaterThan(room);
  }
});

test('a size is not parted, and is drawn with plain spaces', () => {
  const size = tied('3 3⁄4 × 5 in');
  expect(wrapText(`set aside ${size}`, width('set aside 3 3⁄4'), style, estimateMeasure)).toEqual([
    'set aside',
    '3 3⁄4 × 5 in',
  ]);
});

test('line ends of the text stand, and an empty text is one empty line', () => {
  expect(wrapText('one\ntwo\r\nthree', 1e6, style, estimateMeasure)).toEqual(['one', 'two', 'three']);
  expect(wrapText('', 1e6, style, estimateMeasure)).toEqual(['']);
});
