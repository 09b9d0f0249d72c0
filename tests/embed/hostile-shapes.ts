import { at, full, type Hostile, json } from './hostile.js';

function nested(depth: number, open: string, close: string): string {
  return open.repeat(depth) + close.repeat(depth);
}

/** Keys that reach what all objects share, as text, since an object of the program would lose them. */
export function hostileKeys(): readonly Hostile[] {
  const document = JSON.stringify(full());
  const put = (text: string, into = '{'): string => document.replace(into, `${into}${text},`);
  return [
    json('a prototype for the document', put('"__proto__":{"trimwell":1,"polluted":true}'), 'refused'),
    json('a constructor for the document', put('"constructor":{"prototype":{"polluted":true}}'), 'refused'),
    json('a prototype for a piece', put('"__proto__":{"locked":true}', '"pieces":[{'), 'refused'),
    json('a prototype for a look', put('"prototype":{"pattern":"dot"}', '"look":{'), 'refused'),
    json('a key that is unknown', put('"onload":"alert(1)"'), 'refused'),
    json('a key of a million letters', put(`"${'k'.repeat(1_000_000)}":1`), 'refused'),
    json('a piece with a key of a million letters', put(`"${'k'.repeat(1_000_000)}":1`, '"pieces":[{'), 'refused'),
    json('a hundred thousand keys', put(Array.from({ length: 100_000 }, (_, n) => `"k${n}":0`).join()), 'refused'),
    json('a thousand keys', put(Array.from({ length: 1_000 }, (_, n) => `"k${n}":0`).join()), 'refused'),
    json('a key that is a number', put('"0":"alert(1)"'), 'refused'),
    json('toJSON as a key', put('"toJSON":"x"'), 'refused'),
    json('then as a key', put('"then":"x"'), 'refused'),
    json('one key twice', put('"title":"first"'), 'read'),
  ];
}

/** Texts that are no sketch, or more of one than is looked at. */
export function hostileShapes(): readonly Hostile[] {
  const others = [
    '',
    ' ',
    '{',
    '[]',
    '{}',
    'null',
    'true',
    '7',
    '"text"',
    'NaN',
    'undefined',
    '\ufeff',
    '//',
    '[[[[',
    '{"a":',
  ];
  return [
    ...others.map((text) => json(`no sketch: ${JSON.stringify(text)}`, text, 'refused')),
    json('lists in lists', nested(100_000, '[', ']'), 'refused'),
    json('objects in objects', nested(50_000, '{"a":', '}').replace(':}', ':0}'), 'refused'),
    json('lists in a title', at(full(), ['title'], JSON.parse(nested(1_000, '[', ']'))), 'refused'),
    json('lists as pieces', at(full(), ['pieces'], JSON.parse(nested(13, '[', ']'))), 'refused'),
    json(
      'more values than are looked at',
      at(
        full(),
        ['supplies'],
        Array.from({ length: 60_001 }, () => 0),
      ),
      'refused',
    ),
    json('more characters than are looked at', `${JSON.stringify(full())}${' '.repeat(2_000_000)}`, 'refused'),
    json('a long title', at(full(), ['title'], 'x'.repeat(1_000_000)), 'refused'),
    json('a number of a million digits', `{"trimwell":${'9'.repeat(1_000_000)}}`, 'refused'),
  ];
}

/** Ids that are keys of every object, all in use: sound, and a trap for records that are asked by them. */
export function trap(): Hostile {
  const text = JSON.stringify(full());
  return json(
    'ids that every object has',
    text.replaceAll('"ivory"', '"constructor"').replaceAll('"panel"', '"valueof"').replaceAll('"moss"', '"prototype"'),
    // A piece's kind is "panel" too; that one is no id.
    'refused',
  );
}

/** A paper by a name that every object has: sound. */
export function soundTrap(): Hostile {
  const text = JSON.stringify(full());
  return json('a paper called constructor', text.replaceAll('"ivory"', '"constructor"'), 'read');
}
