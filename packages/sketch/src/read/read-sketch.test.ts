import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleDocument } from '../../../../tests/kit/sample-document.js';
import { sketchJsonSchema } from './json-schema.js';
import { migrate } from './migrate.js';
import { expectSketch, readEdit, readSketch, readSketchText, SketchError } from './read-sketch.js';
import { writeEdit, writeSketch, writeSketchText } from './write-sketch.js';

type Spoil = (document: ReturnType<typeof sampleDocument>) => unknown;

/** The problems of the sample after `spoil`, which may change it or give another document back. */
function problemsAfter(spoil: Spoil) {
  const document = sampleDocument();
  const reading = readSketch(spoil(document) ?? document);
  return reading.ok ? [] : reading.problems;
}

test('a sound document is read: lengths in ticks, defaults filled in', () => {
  const sketch = expectSketch(sampleDocument());
  expect(sketch.card).toEqual({ width: 69088, height: 89408, fold: 'left', base: 'ivory' });
  expect(sketch.papers[1]).toMatchObject({
    width: 195072,
    directional: false,
    margins: { top: 0, right: 0, bottom: 0, left: 0 },
  });
  expect(sketch.pieces[3]).toMatchObject({
    corners: { tl: 2032 },
    tilt: -6,
    perCard: 1,
    face: 'front',
    shape: 'rectangle',
  });
  expect(sketch.variations[0]?.edits[0]).toEqual({
    do: 'round',
    piece: 'greeting',
    corners: { tl: 0, tr: 0, br: 0, bl: 0 },
  });
});

test('what is written reads back as the same sketch, and is the same text again', () => {
  const sketch = expectSketch(sampleDocument());
  const text = writeSketchText(sketch);
  const again = readSketchText(text);
  expect(again).toEqual({ ok: true, sketch });
  expect(again.ok && writeSketchText(again.sketch)).toBe(text);
  expect(writeSketch(sketch).card.width).toBe('4 1/4 in');
});

test('every length survives writing and reading, whatever its ticks', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 1_000_000 }), fc.constantFrom('in', 'mm'), (width, unit) => {
      const sketch = { ...expectSketch(sampleDocument()), unit } as const;
      const odd = { ...sketch, card: { ...sketch.card, width: width as typeof sketch.card.width } };
      expect(readSketch(JSON.parse(writeSketchText(odd)))).toEqual({ ok: true, sketch: odd });
    }),
    { numRuns: 300 },
  );
});

const SPOILT: readonly (readonly [name: string, spoil: Spoil, path: string, value: string, allowed: RegExp])[] = [
  ['no object', () => 'card', '', '"card"', /trimwell/],
  ['an unknown version', (d) => ({ ...d, trimwell: 2 }), 'trimwell', '2', /1/],
  ['no version', (d) => ({ ...d, trimwell: undefined }), 'trimwell', 'nothing', /1/],
  ['an unknown key', (d) => ({ ...d, colour: 'red' }), 'colour', '"red"', /no such key/],
  [
    'an unknown key deep inside',
    (d) => {
      Object.assign(d.pieces[1] ?? {}, { glow: 1 });
      return d;
    },
    'pieces[1].glow',
    '1',
    /no such key/,
  ],
  [
    'a length that is none',
    (d) => {
      Object.assign(d.pieces[1] ?? {}, { width: 'wide' });
      return d;
    },
    'pieces[1].width',
    '"wide"',
    /4 1\/4 in/,
  ],
  [
    'a negative length',
    (d) => {
      Object.assign(d.pieces[0] ?? {}, { width: '-1 in' });
      return d;
    },
    'pieces[0].width',
    '"-1 in"',
    /above 0/,
  ],
  [
    'a huge length',
    (d) => {
      Object.assign(d.pieces[0] ?? {}, { x: 1e9 });
      return d;
    },
    'pieces[0].x',
    '1000000000',
    /from/,
  ],
  [
    'a number that is none',
    (d) => {
      Object.assign(d.pieces[0] ?? {}, { tilt: Number.NaN });
      return d;
    },
    'pieces[0].tilt',
    'NaN',
    /finite/,
  ],
  [
    'an endless number',
    (d) => {
      Object.assign(d.pieces[0] ?? {}, { x: Number.POSITIVE_INFINITY });
      return d;
    },
    'pieces[0].x',
    'Infinity',
    /finite/,
  ],
  [
    'a kind we do not have',
    (d) => {
      Object.assign(d.pieces[0] ?? {}, { kind: 'sticker' });
      return d;
    },
    'pieces[0].kind',
    '"sticker"',
    /"panel".*"strip"/,
  ],
  [
    'an id with two hyphens in a row',
    (d) => {
      Object.assign(d.pieces[0] ?? {}, { id: 'a--b' });
      return d;
    },
    'pieces[0].id',
    '"a--b"',
    /a-z0-9/,
  ],
  ['half a card', (d) => ({ ...d, batch: { cards: 0.5 } }), 'batch.cards', '0.5', /whole number|as many as possible/],
  [
    'a paper that is not there',
    (d) => {
      Object.assign(d.pieces[1] ?? {}, { from: 'gold' });
      return d;
    },
    'pieces[1].from',
    '"gold"',
    /ivory, moss/,
  ],
  [
    'a punch that is not there',
    (d) => {
      Object.assign(d.pieces[2] ?? {}, { punched: { top: 'waves' } });
      return d;
    },
    'pieces[2].punched.top',
    '"waves"',
    /scallops/,
  ],
  ['a base that is not there', (d) => ({ ...d, card: { ...d.card, base: 'gold' } }), 'card.base', '"gold"', /paper/],
  [
    'two pieces of one id',
    (d) => {
      Object.assign(d.pieces[1] ?? {}, { id: 'strip' });
      return d;
    },
    'pieces[2].id',
    '"strip"',
    /not yet used/,
  ],
  [
    'the id of the card base',
    (d) => {
      Object.assign(d.pieces[3] ?? {}, { id: 'card-base' });
      return d;
    },
    'pieces[3].id',
    '"card-base"',
    /not yet used/,
  ],
  [
    'a mat of itself',
    (d) => {
      Object.assign(d.pieces[1] ?? {}, { mats: { piece: 'panel-mat', reveal: 1 } });
      return d;
    },
    'pieces[0].mats.piece',
    '"panel"',
    /not matted by this one/,
  ],
  [
    'margins wider than the sheet',
    (d) => {
      Object.assign(d.papers[0] ?? {}, { margins: { left: 5, right: 4 } });
      return d;
    },
    'papers[0].margins',
    'an object',
    /leave something/,
  ],
  [
    'a link that is not https',
    (d) => ({ ...d, links: [{ text: 'more', address: 'javascript:alert(1)' }] }),
    'links[0].address',
    '"javascript:alert(1)"',
    /https/,
  ],
  [
    'an edit we do not know',
    (d) => ({ ...d, variations: [{ id: 'v', name: 'V', edits: [{ do: 'explode' }] }] }),
    'variations[0].edits[0].do',
    '"explode"',
    /"place".*"resize"/,
  ],
]; // prettier-ignore

test.each(SPOILT)('%s is refused by path, value and what is allowed', (_name, spoil, path, value, allowed) => {
  const problems = problemsAfter(spoil);
  const found = problems.find((problem) => problem.path === path);
  expect(found, JSON.stringify(problems)).toMatchObject({ path, value });
  expect(found?.allowed).toMatch(allowed);
  expect(found?.message).toContain(found?.allowed ?? '-');
});

test('hostile documents are refused, each by one clear problem and with little work', () => {
  const deep: unknown[] = [];
  let inner = deep;
  for (let n = 0; n < 100_000; n += 1) {
    const next: unknown[] = [];
    inner.push(next);
    inner = next;
  }
  expect(readSketch({ ...sampleDocument(), links: deep })).toMatchObject({
    ok: false,
    problems: [{ code: 'too-deep' }],
  });
  const many = Array.from({ length: 5_000 }, (_, n) => ({ ...sampleDocument().pieces[1], id: `p${n}` }));
  const crowd = readSketch({ ...sampleDocument(), pieces: many });
  expect(crowd.ok).toBe(false);
  const somewhat = Array.from({ length: 1_000 }, (_, n) => ({ ...sampleDocument().pieces[1], id: `p${n}` }));
  expect(readSketch({ ...sampleDocument(), pieces: somewhat })).toMatchObject({
    ok: false,
    problems: expect.arrayContaining([
      expect.objectContaining({ path: 'pieces', value: 'a list of 1000', allowed: 'at most 200 long' }),
    ]),
  });
  expect(readSketchText('{"trimwell":1,"__proto__":{"polluted":true}}')).toMatchObject({
    ok: false,
    problems: [{ code: 'forbidden-key' }],
  });
  expect(readSketchText('{"trimwell":1,"card":{"constructor":{}}}')).toMatchObject({
    ok: false,
    problems: [{ path: 'card.constructor' }],
  });
  expect(Reflect.get({}, 'polluted')).toBeUndefined();
  expect(readSketchText('[1,')).toMatchObject({ ok: false, problems: [{ code: 'not-json' }] });
  expect(readSketchText(`"${'x'.repeat(2_000_001)}"`)).toMatchObject({ ok: false, problems: [{ code: 'too-large' }] });
  expect(() => expectSketch(null)).toThrow(SketchError);
});

test('a text is refused for its depth before it is taken apart, and brackets in quoted text are only text', () => {
  const nested = (levels: number) => `${'['.repeat(levels)}${']'.repeat(levels)}`;
  // Behind the depth no JSON follows: a parser that was asked would say so.
  expect(readSketchText(`${'['.repeat(14)} and no JSON`)).toMatchObject({
    ok: false,
    problems: [{ code: 'too-deep' }],
  });
  for (const value of ['{}', '0'])
    expect(readSketchText(`[${`${value},`.repeat(60_001)} and no JSON`)).toMatchObject({
      ok: false,
      problems: [{ code: 'too-large' }],
    });
  expect(readSketchText(nested(13))).toMatchObject({ ok: false, problems: [{ code: 'not-a-sketch' }] });
  const quoted = { ...sampleDocument(), title: `" ${nested(20)} \\\\` };
  expect(readSketchText(JSON.stringify(quoted))).toMatchObject({ ok: true, sketch: { title: quoted.title } });
});

test('arbitrary JSON never throws and is never taken for a sketch', () => {
  fc.assert(
    fc.property(fc.jsonValue({ maxDepth: 6 }), (value) => {
      expect(readSketch(value).ok).toBe(false);
      const spoilt = readSketch({ ...sampleDocument(), card: value });
      expect(spoilt.ok).toBe(false);
    }),
    { numRuns: 500 },
  );
});

test('migrations run one by one, and a gap is our own mistake', () => {
  const steps = { 1: (d: object) => ({ ...d, sized: true }), 2: (d: object) => ({ ...d, named: true }) };
  expect(migrate({ trimwell: 1 }, steps, 3)).toEqual({ ok: true, document: { trimwell: 3, sized: true, named: true } });
  expect(migrate({ trimwell: 3 }, steps, 3)).toEqual({ ok: true, document: { trimwell: 3 } });
  expect(() => migrate({ trimwell: 1 }, { 2: steps[2] }, 3)).toThrow('from version 1 to 2');
});

test('the JSON Schema is generated and names every record', () => {
  const schema = JSON.stringify(sketchJsonSchema());
  for (const key of ['"papers"', '"pieces"', '"punched"', '"as many as possible"', '2020-12'])
    expect(schema).toContain(key);
});

test('an edit reads and writes like a sketch', () => {
  const read = readEdit({ do: 'place', piece: 'panel', x: '1/4 in', y: 2 }, 'in');
  expect(read).toEqual({ ok: true, edit: { do: 'place', piece: 'panel', x: 4064, y: 32512 } });
  expect(read.ok && writeEdit(read.edit, 'in')).toEqual({ do: 'place', piece: 'panel', x: '1/4 in', y: '2 in' });
  expect(readEdit({ do: 'place', piece: 'panel', x: 'far', y: 2 }, 'in')).toMatchObject({
    ok: false,
    problems: [{ path: 'x' }],
  });
});
