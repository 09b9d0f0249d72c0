// @vitest-environment jsdom
import { expectSketch, type Sketch } from '@trimwell/sketch';
import { readShareCode, writeShareCode } from '@trimwell/sketch/share-code';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomSketch } from '../../../../../tests/kit/random-sketch.js';
import { sampleDocument } from '../../../../../tests/kit/sample-document.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { pieceTable } from '../../draw/piece-table.js';
import { BLADE_CAUTION } from '../cautions.js';
import { elementSnippet, frameSnippet, SnippetError, staticSnippet } from './index.js';

const FILES = 'https://example.org/trimwell';

function live(sketch: Sketch) {
  return { files: FILES, code: writeShareCode(sketch) };
}

/** A page with `html` in it, read by a parser that is not ours (parse5, the HTML standard's own algorithm). */
function page(html: string, scripting = false): Document {
  if (!scripting) return new DOMParser().parseFromString(`<!doctype html><body>${html}`, 'text/html');
  const shown = document.implementation.createHTMLDocument('');
  shown.body.innerHTML = html;
  return shown;
}

function all(sketch: Sketch): readonly string[] {
  return [elementSnippet(sketch, live(sketch)), frameSnippet(sketch, live(sketch)), staticSnippet(sketch)];
}

/** Every attribute in the page, as `element name value`. */
function attributes(root: ParentNode): readonly (readonly [string, string, string])[] {
  return [...root.querySelectorAll('*')].flatMap((node) =>
    [...node.attributes].map(({ name, value }) => [node.localName, name, value] as const),
  );
}

function cells(root: ParentNode): readonly (readonly string[])[] {
  return [...root.querySelectorAll('tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent ?? ''));
}

const NASTY = [
  '</td></table><script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  "' onload='alert(1)",
  '&lt;b&gt; &amp; &#60; &copy',
  '</trimwell-sketch></noscript></svg><!-- ]]> -->',
  '\u202egnp.exe\u202c \u200b\ufeff zero',
  'a\rb\r\nc\td',
  '<![CDATA[x]]><?xml?><style>*{display:none}</style>',
] as const;

function nasty(text: string): Sketch {
  const document = sampleDocument();
  for (const each of [...document.pieces, ...document.papers]) each.name = text;
  return expectSketch({
    ...document,
    title: text,
    credit: text,
    links: [{ text, address: 'https://example.org/a?b=1&c=2' }],
  });
}

test.each(NASTY)('text in is text out: %j', (text) => {
  const sketch = nasty(text);
  for (const html of all(sketch)) {
    const shown = page(html);
    const table = shown.querySelector('table');
    expect(table?.querySelector('caption bdi')?.textContent).toBe(text);
    expect(cells(shown).map(([name, , paper]) => [name?.slice(2), paper])).toEqual(
      pieceTable(sketch, 1).map(({ name, paper }) => [name, paper]),
    );
    expect(shown.querySelector('div + p')?.textContent).toBe(`${text}, ${text}`);
    expect([...shown.querySelectorAll('a')].map((link) => link.textContent)).toEqual([text]);
    expect(shown.querySelectorAll('script')).toHaveLength(html.startsWith('<script') ? 1 : 0);
    expect(shown.querySelectorAll('img, style, object, embed')).toHaveLength(0);
  }
});

test('no handler, no style and no address but https, whatever the sketch', () => {
  fc.assert(
    fc.property(randomSketch(20), (sketch) => {
      for (const html of all(sketch)) {
        for (const [element, name, value] of attributes(page(html))) {
          expect(name, element).not.toMatch(/^on|^style$|^srcdoc$|^formaction$/);
          if (['href', 'src'].includes(name)) expect(value, element).toMatch(/^https:\/\//);
        }
      }
    }),
    { numRuns: 60, seed: 4 },
  );
});

test('the table is a real one: a caption, a scope for every heading, a row for every piece', () => {
  const sketch = sampleSketch();
  const table = page(staticSnippet(sketch)).querySelector('table');
  expect(table?.caption?.textContent).toBe('Fern sampler: sizes for one card');
  expect([...(table?.tHead?.rows[0]?.cells ?? [])].map((cell) => [cell.localName, cell.scope])).toEqual(
    Array.from({ length: 3 }, () => ['th', 'col']),
  );
  expect([...(table?.tBodies[0]?.rows ?? [])].map((row) => [row.cells[0]?.localName, row.cells[0]?.scope])).toEqual(
    Array.from({ length: 6 }, () => ['th', 'row']),
  );
  // 4 1/4 in wide with a fold at the left opens to 8 1/2 in: worked out by hand.
  expect(cells(table ?? document)[0]).toEqual(['A Card base', '8\u00a01⁄2\u00a0× 5\u00a01⁄2\u00a0in', 'Ivory card']);
  expect(page(staticSnippet(sketch, { unit: 'mm' })).querySelector('td')?.textContent).toBe(
    '215.9\u00a0× 139.7\u00a0mm',
  );
});

test('what a card has several of is told in a column of its own', () => {
  const document = sampleDocument();
  const [first, second, ...others] = document.pieces;
  const sketch = expectSketch({ ...document, pieces: [first, { ...second, perCard: 3 }, ...others] });
  const counts = cells(page(staticSnippet(sketch))).map((row) => row[1]);
  expect(counts).toEqual(['1', '1', '3', '1', '1', '1']);
});

test('the static part is the same in all, and the caution with it', () => {
  const sketch = sampleSketch();
  const [element = '', frame = '', plain = ''] = all(sketch);
  for (const html of [element, frame]) expect(html).toContain(plain.trimEnd());
  expect(page(plain).querySelector('small')?.textContent).toBe(BLADE_CAUTION);
  expect(all(sketch)).toEqual(all(sampleSketch()));
});

test('the element carries a code that reads back, and its script comes from the folder', () => {
  const sketch = sampleSketch();
  const shown = page(elementSnippet(sketch, live(sketch)));
  expect(shown.querySelector('script')?.getAttribute('src')).toBe(`${FILES}/trimwell-sketch.js`);
  expect(shown.querySelector('script')?.getAttribute('type')).toBe('module');
  const element = shown.querySelector('trimwell-sketch');
  expect(readShareCode(element?.getAttribute('code') ?? '')).toEqual({ ok: true, sketch });
  expect(element?.querySelector('table')).not.toBeNull();
});

test('the frame carries the code in its fragment, loads late, and cannot lead the page away', () => {
  const sketch = sampleSketch();
  const html = frameSnippet(sketch, { ...live(sketch), files: '/trimwell/' });
  const frame = page(html, true).querySelector('iframe');
  const [address, code = ''] = (frame?.getAttribute('src') ?? '').split('#');
  expect(address).toBe('/trimwell/frame.html');
  expect(readShareCode(code)).toEqual({ ok: true, sketch });
  expect(frame?.getAttribute('loading')).toBe('lazy');
  expect(frame?.getAttribute('title')).toContain('Fern sampler');
  const may = (frame?.getAttribute('sandbox') ?? '').split(' ');
  expect(may).toContain('allow-downloads');
  expect(may.filter((word) => word.startsWith('allow-top-navigation'))).toEqual([]);
  // With scripts the static part is not shown beside the frame; without them it is there to be read.
  expect(page(html).querySelectorAll('noscript table')).toHaveLength(1);
});

test('several stand on one page: their ids differ, and each drawing uses its own', () => {
  const printed = (id: string): Sketch => {
    const document = sampleDocument();
    const papers = document.papers.map((paper) => ({ ...paper, look: { ...paper.look, pattern: 'dot' as const } }));
    return expectSketch({ ...document, id, papers });
  };
  const first = printed('fern-sampler');
  const shown = page(
    staticSnippet(first) + staticSnippet(printed('another')) + staticSnippet(first, { prefix: 'third' }),
  );
  const ids = [...shown.querySelectorAll('[id]')].map(({ id }) => id);
  expect(ids.length).toBeGreaterThan(5);
  expect(new Set(ids).size).toBe(ids.length);
  for (const svg of shown.querySelectorAll('svg')) {
    const uses = attributes(svg).flatMap(([, , value]) => [...value.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id));
    expect(uses.length).toBeGreaterThan(0);
    for (const id of uses) expect(svg.querySelector(`[id="${id}"]`)).not.toBeNull();
  }
});

test('the drawing fits the narrowest column, and what is in it the drawing', () => {
  fc.assert(
    fc.property(randomSketch(12), (sketch) => {
      const svg = page(staticSnippet(sketch)).querySelector('svg');
      expect(Number(svg?.getAttribute('width'))).toBeLessThanOrEqual(264);
      expect(Number(svg?.getAttribute('height'))).toBeLessThanOrEqual(340);
      const pieces = sketch.pieces.filter(({ face }) => face === 'front').map(({ id }) => id);
      const drawn = [...(svg?.querySelectorAll('[data-piece][data-role="label"]') ?? [])];
      expect(drawn.map((each) => each.getAttribute('data-piece'))).toEqual(pieces);
    }),
    { numRuns: 60, seed: 9 },
  );
});

test('a snippet stays small: 20 kB and 400 bytes a piece at most', () => {
  fc.assert(
    fc.property(randomSketch(40), (sketch) => {
      for (const html of all(sketch))
        expect(new TextEncoder().encode(html).length).toBeLessThan(20_000 + 400 * 4 * sketch.pieces.length);
    }),
    { numRuns: 60, seed: 11 },
  );
});

test.each([
  ['files', { files: 'javascript:alert(1)//' }],
  ['files', { files: 'http://example.org/' }],
  ['files', { files: '//example.org/' }],
  ['files', { files: 'https://example.org/?a=1' }],
  ['files', { files: `/${'a'.repeat(500)}` }],
  ['files', { files: 'https://example.org/"onload="alert(1)' }],
  ['code', { code: 'a"><script>' }],
  ['code', { code: '' }],
  ['link.address', { link: { text: 'The handout', address: 'javascript:alert(1)' } }],
  ['link.text', { link: { text: ' ', address: 'https://example.org/' } }],
  ['prefix', { prefix: 'a b' }],
  ['unit', { unit: 'ell' as 'in' }],
])('%s is refused by path, value and what is allowed: %j', (path, wrong) => {
  const sketch = sampleSketch();
  const options = { ...live(sketch), ...wrong };
  const refused = (make: () => string): SnippetError | null => {
    try {
      make();
      return null;
    } catch (error) {
      if (error instanceof SnippetError) return error;
      throw error;
    }
  };
  for (const make of [elementSnippet, frameSnippet]) {
    const error = refused(() => make(sketch, options));
    expect(error?.path).toBe(path);
    expect(error?.message).toContain('allowed:');
  }
});
