import { rectangle } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { printPaths } from '../prints.js';
import { combine, groupMatrix, pageMatrix, place } from './matrix.js';
import { points } from './number.js';
import { dataOperators, outlineOperators } from './path-operators.js';

const INCH = 16256;

test('an outline is in points from the lower left corner of its page', () => {
  const matrix = pageMatrix(11 * INCH);
  const operators = outlineOperators(rectangle(INCH, INCH, 2 * INCH, INCH), matrix);
  expect(operators.split('\n')).toEqual(['72 720 m', '216 720 l', '216 648 l', '72 648 l', '72 720 l', 'h']);
  expect(outlineOperators(rectangle(0, 0, INCH, INCH), matrix, true)).not.toContain('h');
});

test('a group is turned clockwise about its origin, which lands on its place', () => {
  const group = groupMatrix({ origin: { x: 10, y: 20 }, move: { x: 100, y: 200 }, turn: 90 });
  expect(place(group, { x: 10, y: 20 })).toEqual({ x: 100, y: 200 });
  // To the right of the origin before, below it after: y points down.
  expect(place(group, { x: 15, y: 20 })).toEqual({ x: 100, y: 205 });
  const twice = combine(group, groupMatrix({ origin: { x: 0, y: 0 }, move: { x: 0, y: 0 }, turn: -450 }));
  // The turns cancel, and the origin lies at (-20, 10) when it is turned.
  expect(place(twice, { x: 3, y: 4 })).toEqual({ x: 100 + 20 + 3, y: 200 - 10 + 4 });
});

test('path data is walked from where it is', () => {
  expect(dataOperators('M1 2l3 -1 1 1zm5 5q3 0 3 3').split('\n')).toEqual([
    ...['1 2 m', '4 1 l', '5 2 l', 'h'],
    ...['6 7 m', '8 7 9 8 9 10 c'],
  ]);
  expect(dataOperators('M0 0c1 2 3 4 5 6')).toBe('0 0 m\n1 2 3 4 5 6 c');
});

test('all prints are drawn with commands that are known', () => {
  for (const pattern of ['blossom', 'sprig', 'shell', 'lettering', 'grid', 'heart', 'snow'] as const)
    for (const { d } of printPaths(pattern)) {
      const [commands, written] = [d.match(/[A-Za-z]/g) ?? [], dataOperators(d)];
      expect(commands.every((command) => 'MmlcqZz'.includes(command))).toBe(true);
      expect(written).not.toContain('NaN');
      expect(written.match(/ m$/gm)?.length).toBe(commands.filter((command) => /m/i.test(command)).length);
    }
});

test('numbers are short and never in powers of ten', () => {
  expect([0.00001, -0.00001, 1e-7, 12.34567, -3].map(points)).toEqual(['0', '0', '0', '12.3457', '-3']);
});
