// @vitest-environment jsdom
import { inches } from '@trimwell/geometry';
import { batchRecipe, expectSketch, PATTERNS, planBatch, type Sketch } from '@trimwell/sketch';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleDocument } from '../../../../tests/kit/sample-document.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { drawCard } from '../draw/card.js';
import { drawStack } from '../draw/stack.js';
import { BLADE_CAUTION } from './cautions.js';
import { escapeXml } from './escape.js';
import { writeCsv } from './lists/csv.js';
import { writePieceList } from './lists/write-piece-list.js';
import { lookPattern } from './look.js';
import { pathData } from './path-data.js';
import { batchText } from './plan-text.js';
import { fileStem, sheetGuides } from './sheet-guides.js';
import { writeSvg } from './svg.js';
import { unit } from './units.js';

const sketch = sampleSketch();

/** Parses as XML, by a parser that is not ours, and gives the root. */
function parsed(svg: string): Element {
  const document = new DOMParser().parseFromString(svg, 'image/svg+xml');
  expect(document.querySelector('parsererror')?.textContent ?? '').toBe('');
  return document.documentElement;
}

function card(from: Sketch): string {
  return writeSvg(drawCard(from, { face: 'front', style: { unit: from.unit }, labels: true }), { unit: from.unit });
}

test('the SVG is well-formed, at true size, titled, and the same each time', () => {
  const root = parsed(card(sketch));
  expect(root.getAttribute('width')).toMatch(/^\d+(\.\d+)?in$/);
  const view = (root.getAttribute('viewBox') ?? '').split(' ').map(Number);
  expect((view[2] ?? 0) / 254).toBeCloseTo(Number.parseFloat(root.getAttribute('width') ?? ''), 4);
  expect(root.querySelector('title')?.textContent).toBe('Fern sampler, card face');
  expect(card(sketch)).toBe(card(sampleSketch()));
});

test('each guide is as large as its sheet, in the unit of the sketch', () => {
  const files = sheetGuides(sketch, planBatch(batchRecipe(sketch), 6));
  const sizes = files.map(({ name, text }) => [
    name,
    parsed(text).getAttribute('width'),
    parsed(text).getAttribute('height'),
  ]);
  expect(sizes[0]).toEqual(['fern-sampler-ivory-1-x3.svg', '8.5in', '11in']);
  expect(sizes.find(([name]) => name?.includes('moss'))?.slice(1)).toEqual(['12in', '12in']);
  expect(new Set(files.map(({ name }) => name)).size).toBe(files.length);
});

test('all text of a sketch is text, whatever it says', () => {
  const nasty = `<script>alert("1")</script>&'\u0000\ud800 ]]>`;
  const document = sampleDocument();
  Object.assign(document.pieces[3] ?? {}, {
    name: nasty.slice(0, 70),
    art: { motif: 'words', words: nasty, ink: '#000000' },
  });
  const root = parsed(card(expectSketch({ ...document, title: nasty })));
  expect(root.querySelector('script')).toBeNull();
  expect([...root.querySelectorAll('text')].map((text) => text.textContent)).toContain(
    nasty.replace('\u0000', '\ufffd').replace('\ud800', '\ufffd'),
  );
});

test('any text whatever is escaped into well-formed XML', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary' }), (text) => {
      parsed(`<svg xmlns="http://www.w3.org/2000/svg" a="${escapeXml(text)}">${escapeXml(text)}</svg>`);
    }),
    { numRuns: 200 },
  );
});

test('whole ticks are written exactly: a unit is 0.1 mm', () => {
  expect([unit(0), unit(-0), unit(64), unit(1), unit(16256)]).toEqual(['0', '0', '1', '0.015625', '254']);
  fc.assert(
    fc.property(fc.integer({ min: -2_000_000, max: 2_000_000 }), (ticks) => {
      expect(Number(unit(ticks)) * 64).toBe(ticks);
      expect(unit(ticks)).not.toContain('e');
    }),
  );
});

test('arcs stay arcs in path data', () => {
  const outline = {
    start: { x: 64, y: 0 },
    steps: [{ kind: 'arc', to: { x: 128, y: 64 }, radiusX: 64, radiusY: 64, clockwise: true }],
  } as const;
  expect(pathData(outline)).toBe('M1 0A1 1 0 0 1 2 1Z');
});

test('every look is drawn, each unlike the others', () => {
  const marks = PATTERNS.map((pattern) =>
    JSON.stringify(
      lookPattern({ pattern, ground: '#ffffff', inks: ['#aa0000', '#00aa00'], repeat: inches(1 / 2) }, 'x'),
    ),
  );
  expect(new Set(marks).size).toBe(PATTERNS.length);
  expect(marks.join()).not.toMatch(/NaN|undefined|Infinity/);
});

test('CSV follows RFC 4180 section 2, and a cell is never a formula', () => {
  expect(
    writeCsv([
      ['a', 'b c'],
      ['x,y', 'say "no"'],
      ['two\r\nlines', 3],
    ]),
  ).toBe('a,b c\r\n"x,y","say ""no"""\r\n"two\r\nlines",3\r\n');
  expect(writeCsv([['=1+1', '+1', '-1', '@x', '\tx']])).toBe("'=1+1,'+1,'-1,'@x,\"'\tx\"\r\n");
});

test('the piece list for one card and for the batch', () => {
  const rows = writePieceList(sketch, { arrange: 'batch', cards: 6 }, 'csv').text.trimEnd().split('\r\n');
  expect(rows[1]).toBe(
    'A,Card base,card base,Ivory card,4 1/4 in,5 1/2 in,8 1/2 in,5 1/2 in,8.5,5.5,215.9,139.7,1,6,rectangle,front',
  );
  const one = JSON.parse(writePieceList(sketch, { arrange: 'batch', cards: 1 }, 'json').text);
  expect(one).toMatchObject({ trimwellPieces: 1, unit: 'in', cards: 1 });
  expect(one.pieces[3]).toMatchObject({ label: 'D', id: 'strip', blankHeight: '1 1/8 in', quantity: 1 });
});

test('the plan in plain words names sheets, blanks, settings and what is proven', () => {
  const text = batchText(sketch, planBatch(batchRecipe(sketch), 6));
  expect(text).toMatch(/^Fern sampler: 6 cards from \d+ sheets/);
  expect(text).toContain('B Panel mat');
  expect(text).toContain('set the guide to');
  expect(text.trimEnd().split('\n').at(-1)).toBe(BLADE_CAUTION);
  expect(text).toMatch(/fewest, proven by/);
});

test('a drawing and a stack on one page do not share ids', () => {
  const style = { unit: 'in' } as const;
  const [one, two] = [
    writeSvg(drawCard(sketch, { face: 'front', style }), { unit: 'in', prefix: 'one' }),
    writeSvg(drawStack(sketch, { face: 'front', style }), { unit: 'in', prefix: 'two' }),
  ];
  const ids = (svg: string) => [...svg.matchAll(/ id="([^"]+)"/g)].map((found) => found[1]);
  expect(ids(one).filter((id) => ids(two).includes(id))).toEqual([]);
});

test('file names are plain', () => {
  expect([fileStem('Hedgerow wreath!'), fileStem('Été à la mer'), fileStem('../..'), fileStem('日本')]).toEqual([
    'hedgerow-wreath',
    'ete-a-la-mer',
    'sketch',
    'sketch',
  ]);
});
