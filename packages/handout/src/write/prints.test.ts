import { inches } from '@trimwell/geometry';
import { type Look, PATTERNS } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { isFlat, lookFill, lookPattern } from './look.js';
import { lookPatterns } from './look-patterns.js';
import { markText } from './mark.js';
import { printPaths } from './prints.js';

type Point = readonly [x: number, y: number];

/** Points along a path of `M` and relative `m l c s q z`, several on each part, as SVG 1.1, section 8.3 has them. */
function pointsAlong(data: string): readonly Point[] {
  const points: Point[] = [];
  let at: Point = [0, 0];
  let start: Point = at;
  let control: Point = at;
  const along = (to: Point, first: Point, second: Point): void => {
    for (let step = 0; step <= 8; step += 1) {
      const t = step / 8;
      const part = (index: 0 | 1): number =>
        (1 - t) ** 3 * at[index] +
        3 * (1 - t) ** 2 * t * first[index] +
        3 * (1 - t) * t * t * second[index] +
        t ** 3 * to[index];
      points.push([part(0), part(1)]);
    }
    at = to;
  };
  for (const [, letter = '', rest = ''] of data.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const numbers = rest.split(/[ ,]+/).filter(Boolean).map(Number);
    expect(numbers.every(Number.isFinite)).toBe(true);
    const by = (from: number): Point => [
      at[0] + (numbers[from] ?? Number.NaN),
      at[1] + (numbers[from + 1] ?? Number.NaN),
    ];
    const stride = { M: 2, m: 2, l: 2, q: 4, s: 4, c: 6, z: 0 }[letter] ?? Number.NaN;
    if (letter === 'z') {
      along(start, at, start);
      control = at;
    }
    for (let from = 0; stride > 0 && from < numbers.length; from += stride) {
      if (letter === 'M' || letter === 'm') {
        at = letter === 'M' ? [numbers[0] ?? 0, numbers[1] ?? 0] : by(from);
        start = at;
      } else if (letter === 'l') {
        along(by(from), at, by(from));
      } else if (letter === 'q') {
        const [middle, to] = [by(from), by(from + 2)];
        const towards = (end: Point): Point => [
          end[0] + (2 / 3) * (middle[0] - end[0]),
          end[1] + (2 / 3) * (middle[1] - end[1]),
        ];
        along(to, towards(at), towards(to));
      } else if (letter === 'c') {
        const [first, second, to] = [by(from), by(from + 2), by(from + 4)];
        control = second;
        along(to, first, second);
      } else {
        const [second, to] = [by(from), by(from + 2)];
        const first: Point = [2 * at[0] - control[0], 2 * at[1] - control[1]];
        control = second;
        along(to, first, second);
      }
      if (letter !== 'c' && letter !== 's') control = at;
    }
  }
  return points;
}

/** Points whose ink would be seen once more if the tile were moved by its own size, and is not there. */
function seams(pattern: Look['pattern']): readonly string[] {
  const by = [-100, 0, 100];
  return printPaths(pattern).flatMap(({ d, line }) => {
    const points = pointsAlong(d);
    const there = ([x, y]: Point): boolean => points.some(([a, b]) => Math.abs(a - x) < 0.1 && Math.abs(b - y) < 0.1);
    const reach = line / 2 - 1e-6;
    const seen = (at: number): boolean => at + reach > 0 && at - reach < 100;
    return points.flatMap(([x, y]) =>
      by
        .flatMap((over) => by.map((down): Point => [x + over, y + down]))
        .filter((twin) => seen(twin[0]) && seen(twin[1]) && !there(twin))
        .map((twin) => `${pattern}: ${x} ${y} lacks ${twin}`),
    );
  });
}

test('every print repeats without a seam: what leaves the tile on one side comes in on the other', () => {
  for (const pattern of PATTERNS) expect(seams(pattern)).toEqual([]);
});

test('every print but plain is drawn, with few paths and few characters', () => {
  for (const pattern of PATTERNS) {
    const paths = printPaths(pattern);
    expect(paths.length > 0, pattern).toBe(pattern !== 'plain');
    expect(paths.length).toBeLessThanOrEqual(7);
    expect(paths.reduce((sum, { d }) => sum + d.length, 0)).toBeLessThan(6_000);
  }
});

test('prints with an up look otherwise when they are turned over', () => {
  const turnedOver = (pattern: Look['pattern']): boolean => {
    const paths = printPaths(pattern).map(({ d }) => pointsAlong(d));
    return paths.every((points) =>
      points.every(([x, y]) => points.some(([a, b]) => Math.abs(a - x) < 0.5 && Math.abs(100 - b - y) < 0.5)),
    );
  };
  for (const pattern of ['leaf', 'shell', 'lettering', 'music', 'heart', 'blossom'] as const) {
    expect(turnedOver(pattern), pattern).toBe(false);
  }
  // A stripe is the same upside down: the measure can tell.
  expect(turnedOver('stripe')).toBe(true);
});

const look: Look = {
  pattern: 'blossom',
  ground: '#fdf6ec',
  inks: ['#b0483c'],
  repeat: inches(1),
  photo: 'ab12'.repeat(8),
};
const sheet = { width: inches(12), height: inches(8) };

test('an ink that is not named is the one before it', () => {
  const text = markText(lookPattern(look, 'x'));
  expect(text).toContain('#b0483c');
  expect(
    [...text.matchAll(/#[0-9a-f]{6}/g)].map(([colour]) => colour).filter((colour) => colour !== '#fdf6ec'),
  ).toEqual(expect.not.arrayContaining(['#7c8a80']));
});

test('a photograph at hand spans the sheet; without it the print stands in', () => {
  const photos = new Map([[look.photo ?? '', 'blob:one']]);
  const shown = markText(lookPattern({ ...look, sheet }, 'x', photos));
  // 12 in are 3048 tenths of a millimetre.
  expect(shown).toContain('<pattern id="x" patternUnits="userSpaceOnUse" width="3048" height="2032">');
  expect(shown).toContain('<image width="3048" height="2032" href="blob:one" preserveAspectRatio="xMidYMid slice"/>');
  expect(shown).not.toContain('<path');
  for (const other of [undefined, new Map([['cd34', 'blob:two']])]) {
    const standIn = markText(lookPattern({ ...look, sheet }, 'x', other));
    expect(standIn).not.toContain('<image');
    expect(standIn).toContain('<path');
  }
});

test('plain paper is flat until its photograph is at hand', () => {
  const plain = { ...look, pattern: 'plain', sheet } as const;
  const photos = new Map([[look.photo ?? '', 'blob:one']]);
  expect(isFlat(plain)).toBe(true);
  expect(lookFill(plain, 'x')).toBe('#fdf6ec');
  expect(lookFill(plain, 'x', photos)).toBe('url(#x)');
  const context = { looks: { one: plain, two: { ...look, sheet } }, prefix: 'p' };
  expect(lookPatterns(context).map(({ key }) => key)).toEqual(['p-paper-two']);
  expect(lookPatterns({ ...context, photos }).map(({ key }) => key)).toEqual(['p-paper-one', 'p-paper-two']);
});
