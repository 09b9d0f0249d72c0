import { at, full, type Hostile, json } from './hostile.js';
import { HOSTILE_TEXTS } from './hostile-words.js';

/** Where a sketch holds text that people write, and how long that may be. */
const TEXTS: readonly (readonly [path: readonly (string | number)[], longest: number])[] = [
  [['title'], 80],
  [['number'], 24],
  [['credit'], 200],
  [['notes'], 4_000],
  [['links', 0, 'text'], 80],
  [['supplies', 0], 200],
  [['card', 'envelope', 'name'], 80],
  [['papers', 0, 'name'], 80],
  [['mixes', 0, 'name'], 80],
  [['punches', 0, 'name'], 80],
  [['pieces', 1, 'name'], 80],
  [['pieces', 3, 'art', 'words'], 120],
  [['variations', 0, 'name'], 80],
  [['variations', 0, 'note'], 400],
];

/** Every text of people, saying everything: all of it is to be read, as text. */
export function hostileTexts(): readonly Hostile[] {
  return TEXTS.flatMap(([path, longest]) =>
    Object.entries(HOSTILE_TEXTS).map(([name, text]) =>
      json(`${name} in ${path.join('.')}`, at(full(), path, text.slice(0, longest)), 'read'),
    ),
  );
}

/** Where a sketch holds a name for programs, a colour, an address, a length or a number, and what must not stand there. */
const REFUSED: readonly (readonly [path: readonly (string | number)[], values: readonly unknown[]])[] = [
  [['id'], ['__proto__', 'a"b', '../up', 'A', '', 'a--b', 'x'.repeat(41), 7, null, {}, ['a']]],
  [
    ['papers', 0, 'id'],
    ['__proto__', 'a b', 'url(#x)', '</script>'],
  ],
  [
    ['pieces', 0, 'from'],
    ['constructor', 'hasOwnProperty', '__proto__', 'nothing'],
  ],
  [
    ['pieces', 0, 'kind'],
    ['constructor', '__proto__', 'PANEL', 0],
  ],
  [
    ['pieces', 0, 'shape'],
    ['toString', 'path'],
  ],
  [
    ['pieces', 3, 'art', 'motif'],
    ['__proto__', 'constructor', '<g/>'],
  ],
  [
    ['punches', 0, 'profile'],
    ['valueOf', '__proto__'],
  ],
  [
    ['papers', 0, 'look', 'ground'],
    ['url(javascript:alert(1))', 'red', '#fff', '#FFFFFF"', 'expression(1)', '#12345g', 0],
  ],
  [
    ['papers', 0, 'look', 'pattern'],
    ['constructor', 'url(#a)', '__proto__'],
  ],
  [
    ['papers', 0, 'look', 'photo'],
    ['https://example.invalid/seen', 'data:image/svg+xml,<svg/>', 'a'.repeat(65)],
  ],
  [
    ['papers', 0, 'look', 'repeat'],
    [0, -1, '0.0001 in', '1e-9 in', 1e-300],
  ],
  [
    ['links', 0, 'address'],
    [
      ...['javascript:alert(1)', 'data:text/html,x', 'http://example.invalid/', '//example.invalid/', 'HTTPS://x/'],
      ...[
        'https://a b',
        'https://a"onclick=1',
        "https://a'b",
        'https://a<b',
        ' https://a',
        '\u0001javascript:1',
        'https:x',
      ],
      `https://example.invalid/${'a'.repeat(500)}`,
    ],
  ],
  [
    ['pieces', 0, 'width'],
    [
      ...[0, -4, 1e308, -1e308, 5e-324, 2 ** 53, 79, '1/0 in', '0/0', '4..5 in', '1e9 mm', '', ' ', '٤ in'],
      ...[`${'9'.repeat(39)} in`, '9'.repeat(400), '0x10', 'Infinity', 'NaN', true, null, [4], { in: 4 }],
    ],
  ],
  [
    ['pieces', 0, 'x'],
    [1e308, -1e308, '-3000 mm', '1'.repeat(41)],
  ],
  [
    ['pieces', 0, 'tilt'],
    [181, -1e9, 1e308, '6', null],
  ],
  [
    ['pieces', 0, 'perCard'],
    [0, -1, 25, 1e9, 1.5, '1', 2 ** 53],
  ],
  [
    ['pieces', 0, 'raise'],
    [-1, 1e9],
  ],
  [
    ['batch', 'cards'],
    [0, -1, 501, 1e9, 1e308, 1.5, '12', 'as many as you like', null],
  ],
  [
    ['papers', 0, 'sheets'],
    [-1, 1000, 1e18, 0.5, '4'],
  ],
  [
    ['papers', 0, 'price'],
    [-1, 1e308],
  ],
  [
    ['papers', 0, 'gsm'],
    [0, 1e9],
  ],
  [
    ['papers', 0, 'margins'],
    [{ top: 6, bottom: 6, left: 0, right: 0 }, { top: -1 }],
  ],
  [
    ['pieces', 0, 'corners'],
    [{ tl: -1 }, { tl: 1e9 }, []],
  ],
  [
    ['pieces', 0, 'mats', 'piece'],
    ['panel-mat', 'nothing', '__proto__'],
  ],
  [['unit'], ['cm', 'IN', '__proto__', null]],
  [['trimwell'], [0, 2, 1e308, '1', -1, null, 1.5]],
];

/** Every one of `REFUSED`: all are to be refused. */
export function hostileValues(): readonly Hostile[] {
  return REFUSED.flatMap(([path, values]) =>
    values.map((value, index) =>
      json(`${path.join('.')} ${index}: ${JSON.stringify(value).slice(0, 40)}`, at(full(), path, value), 'refused'),
    ),
  );
}
