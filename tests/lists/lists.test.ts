// @vitest-environment jsdom
import { BLADE_CAUTION, writePieceList } from '@trimwell/handout';
import { expectSketch, readPieceList, type Sketch } from '@trimwell/sketch';
import { marked, type Tokens } from 'marked';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { quickPlan } from '../kit/quick-plan.js';
import { sampleDocument } from '../kit/sample-document.js';
import { sampleSketch } from '../kit/sample-sketch.js';

const sketch = sampleSketch();

/** Names that a spreadsheet, a Markdown reader or a terminal could take for something else. */
const NASTY = [
  '=HYPERLINK("https://example.org","x")',
  '+1',
  '-2+3',
  '@SUM(A1)',
  "'=1",
  "'tis the season",
  'a|b \\| c',
  '<b>bold</b> <script>alert(1)</script> &amp;',
  '*star* _under_ `code` [link](https://example.org) ![i](x)',
  'two\r\nlines\tand a tab',
  'turned \u202eround\u202c',
  ' spaces at both ends ',
  'https://example.org www.example.org me@example.org',
  '名前 とても長い 🌱👩‍👩‍👧',
  '$x^2$ ~~gone~~ # head',
  ';semi;colon',
] as const;

function nastySketch(): Sketch {
  const document = sampleDocument();
  const [first] = document.pieces.slice(4);
  if (!first) throw new Error('The sample has no fifth piece.');
  const pieces = NASTY.map((name, index) => ({ ...first, id: `nasty-${index}`, name }));
  return expectSketch({
    ...document,
    pieces,
    batch: { cards: 2 },
    variations: [],
    papers: document.papers.map((paper, index) => ({ ...paper, name: NASTY[index] ?? paper.name })),
  });
}

function recordsOf(text: string): readonly Readonly<Record<string, string>>[] {
  const { data, errors } = Papa.parse<Record<string, string>>(text, { header: true, skipEmptyLines: true });
  expect(errors).toEqual([]);
  return data;
}

test('CSV is RFC 4180 to another reader, and no cell of it is a formula', () => {
  const text = writePieceList(nastySketch(), { arrange: 'card' }, 'csv').text;
  expect(text.endsWith('\r\n')).toBe(true);
  const records = recordsOf(text);
  expect(records).toHaveLength(1 + NASTY.length);
  for (const record of records) for (const cell of Object.values(record)) expect(cell).not.toMatch(/^[=+\-@\t\r\n]/);
  expect(records.slice(1).map(({ name }) => name)).toEqual(
    NASTY.map((name) => (/^'*[=+\-@]/.test(name) ? `'${name}` : name)),
  );
});

test('names that look like formulas come back as the very text', () => {
  const reading = readPieceList(writePieceList(nastySketch(), { arrange: 'card' }, 'csv').text);
  if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join('\n'));
  expect(reading.sketch.pieces.map(({ name }) => name).sort()).toEqual([...NASTY].sort());
});

/** Cells of all tables as another program shows them: marked makes HTML (GFM 0.29, section 4.10), a browser's parser reads its text. */
function shownCells(markdown: string): readonly (readonly string[])[] {
  const document = new DOMParser().parseFromString(marked.parse(markdown, { async: false }), 'text/html');
  expect(document.querySelectorAll('td a, td img, td b, td em, td strong, td code, td del, script')).toHaveLength(0);
  return [...document.querySelectorAll('tbody tr')].map((row) =>
    [...row.querySelectorAll('td')].map((cell) => cell.textContent),
  );
}

test('Markdown shows every cell as it is, with what cannot be seen shown by its number', () => {
  const cells = shownCells(writePieceList(nastySketch(), { arrange: 'card' }, 'markdown').text);
  const shown = NASTY.map((name) =>
    name
      .replaceAll('\r', '[U+000D]')
      .replaceAll('\n', '[U+000A]')
      .replaceAll('\t', '[U+0009]')
      .replaceAll('\u202e', '[U+202E]')
      .replaceAll('\u202c', '[U+202C]'),
  );
  expect(cells.slice(1).map(([, name]) => name)).toEqual(shown);
  const [head] = marked
    .lexer(writePieceList(sketch, { arrange: 'batch', cards: 6 }, 'markdown').text)
    .filter((token): token is Tokens.Table => token.type === 'table');
  expect(head?.header.map(({ text }) => text)).toEqual([
    'Letter',
    'Piece',
    'Kind',
    'Paper',
    'Size',
    'Cut',
    'Per card',
    'For 6 cards',
  ]);
  expect(head?.align.slice(-2)).toEqual(['right', 'right']);
});

test('plain text stands in columns, wide letters counted twice, no line wider than 100', () => {
  const text = writePieceList(nastySketch(), { arrange: 'batch', cards: 12 }, 'text').text;
  const lines = text.split('\n');
  const wide = (line: string): number =>
    [...new Intl.Segmenter('en', { granularity: 'grapheme' }).segment(line)].reduce(
      (sum, { segment }) => sum + (/^[\u3000-\u9fff\u{1f000}-\u{1faff}]/u.test(segment) ? 2 : 1),
      0,
    );
  expect(Math.max(...lines.map(wide))).toBeLessThanOrEqual(100);
  expect(text).toContain('[U+202E]');
  const rule = lines.find((line) => line.startsWith('---')) ?? '';
  const kind = rule.split('  ').slice(0, 2).join('  ').length + 2;
  const rows = lines.slice(lines.indexOf(rule) + 1).filter((line) => /^[A-Z]+ /.test(line));
  expect(rows).toHaveLength(1 + NASTY.length);
  for (const row of rows) {
    let [at, taken] = [0, 0];
    while (taken < kind) taken += wide(row[at++] ?? ' ');
    if (!/[\u{1f000}-\u{1faff}]/u.test(row)) expect(row.slice(at)).toMatch(/^(card base|liner) /);
  }
});

test('by paper: what a mix deals, the sheets of the plan, and areas that add up', () => {
  const plan = quickPlan(sketch, 6);
  const document = JSON.parse(writePieceList(sketch, { arrange: 'paper', cards: 6, plan }, 'json').text);
  expect(document).toMatchObject({ trimwellPapers: 1, cards: 6, complete: true, areaUnit: 'in²' });
  const papers = new Map<string, Record<string, unknown>>(
    document.papers.map((paper: { id: string }) => [paper.id, paper]),
  );
  // 6 bases of 8 1/2 x 5 1/2, 6 greetings of 2 1/4 x 3/4, 6 liners of 4 x 5 1/4 in, by hand: 280.5 + 10.125 + 126.
  expect(papers.get('ivory')).toMatchObject({
    sheet: { width: '8 1/2 in', height: '11 in' },
    area: 416.625,
    sheetsAtHand: null,
  });
  expect(papers.get('ivory')?.['sheetsNeeded']).toBe(
    plan.papers.find(({ paper }) => paper === 'ivory')?.plan.counts.sheets,
  );
  // The panel and the strip contrast, so that each print gets three of either (König 1916).
  for (const print of ['sprig', 'dots'])
    expect(papers.get(print)?.['pieces']).toMatchObject([
      { id: 'panel', quantity: 3 },
      { id: 'strip', quantity: 3, blankHeight: '1 1/8 in' },
    ]);
  const records = recordsOf(writePieceList(sketch, { arrange: 'paper', cards: 6 }, 'csv').text);
  const ivory = records.filter((record) => record['paper'] === 'Ivory card');
  expect(ivory.reduce((sum, record) => sum + Number(record['area square in']), 0)).toBeCloseTo(416.625, 6);
  expect(new Set(records.map((record) => record['sheets needed']))).toEqual(new Set(['']));
  expect(() => writePieceList(sketch, { arrange: 'paper', cards: 5, plan }, 'csv')).toThrow('cards is 5; allowed: 6');
});

test('by setting: all blanks come out, no setting twice in a row, the caution stands with it', () => {
  const plan = quickPlan(sketch, 6);
  const list = { arrange: 'setting', plan } as const;
  const records = recordsOf(writePieceList(sketch, list, 'csv').text);
  const made = new Map<string, number>();
  for (const { gives, label = '', quantity } of records)
    if (gives === 'blank') made.set(label, (made.get(label) ?? 0) + Number(quantity));
  expect(Object.fromEntries(made)).toEqual({ A: 6, B: 6, C: 6, D: 6, E: 6, F: 6 });
  const runs = records.filter((record, index) => record['number'] !== records[index - 1]?.['number']);
  const settings = runs.map((record) => record['setting']);
  expect(settings.some((setting, index) => index > 0 && setting === settings[index - 1])).toBe(false);
  // Papers that are cut one by one need at least as many settings as papers that are cut together.
  const apart = plan.papers.reduce((sum, { plan: { counts } }) => sum + counts.settings, 0);
  expect(settings.length).toBeLessThanOrEqual(apart);
  for (const format of ['markdown', 'text', 'json'] as const)
    expect(writePieceList(sketch, list, format).text.replaceAll(/\s+/g, ' ')).toContain(BLADE_CAUTION);
  const document = JSON.parse(writePieceList(sketch, list, 'json').text);
  expect(document).toMatchObject({ trimwellSettings: 1, cards: 6, complete: true, stack: 2 });
  expect(document.settings).toHaveLength(runs.length);
});

test('file names and types', () => {
  const files = [
    writePieceList(sketch, { arrange: 'card' }, 'csv'),
    writePieceList(sketch, { arrange: 'batch', cards: 2 }, 'markdown'),
  ];
  expect(files.map(({ name, type }) => [name, type])).toEqual([
    ['fern-sampler-pieces.csv', 'text/csv'],
    ['fern-sampler-pieces-batch.md', 'text/markdown'],
  ]);
});
