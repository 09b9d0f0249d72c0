import { formatSize, inches, type Length, millimetres, pieceOutline, stepList } from '@trimwell/geometry';
import {
  type GroupItem,
  type Item,
  LANGUAGES,
  labelPieces,
  PAGE_PAPERS,
  pageDrawing,
  pieceShape,
  workList,
  writeSvg,
} from '@trimwell/handout';
import { expectSketch, pieceBlank } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { taggedSketch } from '../kit/centre-sketch.js';
import { flatCard } from '../kit/flat-card.js';
import { sampleDocument } from '../kit/sample-document.js';
import { blocksOf, laidOut, SAMPLES, sampleOf, wordsOf } from './pages-kit.js';

const each = SAMPLES.flatMap((sample) =>
  PAGE_PAPERS.flatMap((paper) => LANGUAGES.map((language) => [sample.name, paper, language, sample] as const)),
);

test.each(each)('%s on %s in %s holds, and is laid out in the same way twice', (_name, paper, language, sample) => {
  const pages = laidOut(sample, { paper, language, templates: true });
  expect(laidOut(sample, { paper, language, templates: true })).toEqual(pages);
  const size = paper === 'letter' ? [inches(8.5), inches(11)] : [millimetres(210), millimetres(297)];
  for (const page of pages.pages) expect([page.width, page.height]).toEqual(size);
  expect(pages).toMatchObject({ title: sample.sketch.title, author: 'Fernhollow paper club', language });
  expect(pages.pages[0]?.marks[0]).toMatchObject({ title: sample.sketch.title, level: 1 });
});

test.each(each)(
  '%s on %s in %s: each letter has one row of sizes, with its size',
  (_name, paper, language, { sketch, ...rest }) => {
    const { pages } = laidOut({ sketch, ...rest }, { paper, language });
    const tables = blocksOf(pages).filter(({ tag }) => tag === 'Table');
    const rows = tables.flatMap(({ blocks = [] }) => blocks).filter(({ blocks = [] }) => blocks[1]?.tag === 'TD');
    expect(rows.every(({ blocks = [] }) => blocks[0]?.tag === 'TH')).toBe(true);
    expect(rows).toHaveLength(sketch.pieces.length + 1);
    const labels = labelPieces(sketch);
    for (const piece of sketch.pieces) {
      const own = rows.filter(({ blocks = [] }) => blocks[0] && wordsOf(blocks[0]) === labels.get(piece.id));
      expect(own).toHaveLength(1);
      const cells = (own[0]?.blocks ?? []).map(wordsOf);
      const english = formatSize(piece, { unit: sketch.unit });
      const size = language === 'de' ? english.replaceAll('.', ',').replace(/ in$/, ' Zoll') : english;
      expect(cells[1]).toBe(piece.name);
      expect(cells.filter((cell) => cell === size)).toEqual([size]);
    }
  },
);

test.each(SAMPLES.map((sample) => [sample.name, sample] as const))(
  '%s has a box to tick for every step',
  (_name, sample) => {
    const { sketch, batch } = sample;
    const entries = blocksOf(laidOut(sample).pages).filter(
      ({ tag, items }) => tag === 'LI' && items.some(({ key }) => key.startsWith('box:')),
    );
    const cuts = batch.papers.reduce(
      (sum, { plan, job }) => sum + stepList(plan, job.trimmer, { stack: 2 }).steps.length,
      0,
    );
    const { pieces } = sketch;
    const rounded = pieces.filter(({ corners }) => Object.values(corners).some((radius) => radius > 0)).length;
    const punched = pieces.filter(({ punched: edges }) =>
      Object.values(edges).some((punch) => punch !== undefined),
    ).length;
    const shaped = pieces.filter(({ shape }) => shape !== 'rectangle').length;
    const scored = sketch.card.fold === 'none' ? 0 : 1;
    expect(entries).toHaveLength(cuts + rounded + punched + shaped + scored + pieces.length);
  },
);

test.each(SAMPLES.map((sample) => [sample.name, sample] as const))(
  '%s has a guide for every layout, named like its steps',
  (_name, sample) => {
    const { pages } = laidOut(sample);
    const layouts = sample.batch.papers.flatMap(({ plan }) => plan.sheets);
    const titles = blocksOf(pages)
      .filter(({ tag }) => tag === 'H3')
      .map(wordsOf);
    const guides = titles.filter((title) => title.startsWith('Sheet '));
    expect(guides.map((title) => Number(/^Sheet (\d+): /.exec(title)?.[1]))).toEqual(
      layouts.map((_, index) => index + 1),
    );
    const all = blocksOf(pages).map(wordsOf);
    for (const { copies } of layouts) {
      expect(all.some((words) => words.endsWith(copies === 1 ? 'cut 1' : `cut ${copies} alike`))).toBe(true);
    }
  },
);

function groups(items: readonly Item[]): readonly GroupItem[] {
  return items.flatMap((item) => (item.kind === 'group' ? [item] : []));
}

test.each(SAMPLES.map((sample) => [sample.name, sample] as const))(
  '%s: templates are the very outlines, to the tick',
  (_name, sample) => {
    const { sketch } = sample;
    const { pages } = laidOut(sample, { templates: true, paper: 'a4' });
    const drawn = blocksOf(pages)
      .flatMap(({ items }) => groups(items))
      .filter(({ key }) => key.startsWith('template:'));
    for (const piece of sketch.pieces) {
      const [own, ...others] = drawn.filter(({ key }) => key === `template:${piece.id}`);
      expect(others).toEqual([]);
      const { outline } = pieceOutline(pieceShape(sketch, piece));
      expect(own?.items[0]).toMatchObject({ kind: 'path', outline });
      expect(own && Math.abs(own.turn) % 90).toBe(0);
      const corner = own && own.turn === 0 ? [own.move.x - own.origin.x, own.move.y - own.origin.y] : [0, 0];
      for (const place of corner) expect(Number.isInteger(place)).toBe(true);
    }
  },
);

test('every template page has rulers of exactly 2 in and 50 mm', () => {
  const [sample] = SAMPLES;
  if (!sample) throw new Error('There is no sample.');
  const plain = laidOut(sample).pages.length;
  const { pages } = laidOut(sample, { templates: true });
  expect(pages.length).toBeGreaterThan(plain);
  for (const page of pages.slice(plain)) {
    const lines = blocksOf([page]).flatMap(({ items }) => items.filter((item) => item.kind === 'line'));
    const length = (key: string): number[] =>
      lines.filter((line) => line.key === key).map(({ from, to }) => to.x - from.x);
    expect(length('inches:line')).toEqual([32_512]);
    expect(length('millimetres:line')).toEqual([32_000]);
  }
});

test('a piece larger than a page is parted into tiles that are laid cross on cross', () => {
  const document = sampleDocument();
  const sketch = expectSketch({
    ...document,
    card: { ...document.card, width: 9, height: 12, fold: 'none' },
    papers: document.papers.map((paper) => ({ ...paper, width: 24, height: 24 })),
  });
  const { pages } = laidOut(sampleOf('large', sketch), { templates: true });
  const tiles = blocksOf(pages).filter(({ items }) => items.some(({ key }) => key.startsWith('tile:card-base')));
  expect(tiles.length).toBe(4);
  for (const { items } of tiles) {
    expect(items.filter(({ key }) => key.startsWith('cross:')).length).toBeGreaterThanOrEqual(4);
  }
});

test('the blank to cut is told where it is larger than the piece, and cautions come where they belong', () => {
  const document = sampleDocument();
  const sketch = expectSketch({ ...document, supplies: ['Hot glue gun'] });
  const words = blocksOf(laidOut(sampleOf('sample', sketch)).pages)
    .map(wordsOf)
    .join('\n');
  const strip = sketch.pieces.find(({ id }) => id === 'strip');
  expect(words).toContain(
    `cut to ${formatSize(strip ? pieceBlank(sketch, strip) : { width: 0 as Length, height: 0 as Length }, { unit: 'in' })} first`,
  );
  for (const caution of ['Blades:', 'Punches:', 'Hot glue:', 'local authority']) expect(words).toContain(caution);
  expect(words).not.toContain('Knife:');
  const tide = SAMPLES.find(({ name }) => name === 'star-window.json');
  const without = tide ? blocksOf(laidOut(tide).pages).map(wordsOf).join('\n') : '';
  expect(without).toContain('Blades:');
  expect(without).not.toContain('Punches:');
  expect(without).not.toContain('Hot glue:');
});

test('centres of pieces are cut out with a knife before they are cut up, and the guide says whose they are', () => {
  const words = blocksOf(laidOut(sampleOf('tagged', taggedSketch(1))).pages).map(wordsOf);
  expect(words.some((text) => /Cut the centre, .* out of \d+ of B The mat with a knife/.test(text))).toBe(true);
  expect(words.some((text) => text.includes('the centre of B The mat'))).toBe(true);
  expect(words.some((text) => text.startsWith('– Knife: cut on a mat'))).toBe(true);
});

test('a bridge goes onto all that bears it, as it is built, in both languages (by hand)', () => {
  // Over two rails on foam of 1/8 in; it does not reach the background under its middle.
  const sketch = flatCard({
    left: { at: [1 / 2, 1, 1 / 2, 3], foam: 1 / 8 },
    right: { at: [3, 1, 1 / 2, 3], foam: 1 / 8 },
    band: { at: [1 / 2, 2, 3, 1] },
  });
  const words = (language: 'en' | 'de'): readonly string[] =>
    blocksOf(laidOut(sampleOf('rails', sketch), { language }).pages).map(wordsOf);
  const [english, german] = [words('en'), words('de')];
  expect(english.some((text) => text.endsWith('E band onto C and D'))).toBe(true);
  expect(english.some((text) => /D onto B \(on foam, 1⁄8 in\), E onto C and D/.test(text))).toBe(true);
  expect(german.some((text) => text.endsWith('E band auf C und D'))).toBe(true);
  expect(german.some((text) => text.endsWith('E auf C und D'))).toBe(true);
});

test('what cannot be made is told with its reason', () => {
  const document = sampleDocument();
  const papers = document.papers.map((paper) => (paper.id === 'moss' ? { ...paper, sheets: 0 } : paper));
  const words = blocksOf(laidOut(sampleOf('short', expectSketch({ ...document, papers }))).pages).map(wordsOf);
  expect(words.some((text) => text.includes('6 of B Panel mat: out of sheets'))).toBe(true);
  expect(words).toContain('Not everything can be made; what is missing stands with the steps.');
});

test('the front is glued first, then the inside, on the pages and for a reader, in both languages', () => {
  const document = sampleDocument();
  // In the sketch the inside comes first.
  const [liner, ...others] = [...document.pieces].reverse();
  const sample = sampleOf('sample', expectSketch({ ...document, pieces: [liner, ...others.reverse()] }));
  const order = [/^C Panel mat/, /^D Panel/, /^E Strip/, /^F Greeting/, /^B Liner/];
  for (const [language, onto, lines] of [
    ['en', ' onto ', ['Front: C onto A', 'Inside: B onto A']],
    ['de', ' auf ', ['Vorderseite: C auf A', 'Innenseite: B auf A']],
  ] as const) {
    const blocks = blocksOf(laidOut(sample, { language }).pages);
    const words = blocks.map(wordsOf);
    const [front, inside] = lines.map((line) => words.findIndex((text) => text.startsWith(line)));
    expect(front).toBeGreaterThan(0);
    expect(inside).toBeGreaterThan(front ?? 0);
    const entries = blocks.filter(({ tag }) => tag === 'LI').map((block) => wordsOf(block).replace(/^\d+ /, ''));
    const glued = entries.slice(-order.length);
    const { parts } = workList(sample.sketch, sample.batch, { language, unit: 'in' });
    for (const told of [glued, (parts.at(-1)?.tasks ?? []).map(({ text }) => text)]) {
      expect(told).toHaveLength(order.length);
      for (const [at, text] of told.entries()) {
        expect(text).toMatch(order[at] ?? /never/);
        expect(text).toContain(onto);
      }
    }
  }
});

test('the unit of the handout may be another than the sketch has', () => {
  const tide = SAMPLES.find(({ name }) => name === 'tide-line.json');
  const hedge = SAMPLES.find(({ name }) => name === 'hedgerow-wreath.json');
  if (!tide || !hedge) throw new Error('A sample is missing.');
  const german = blocksOf(laidOut(hedge, { unit: 'mm', language: 'de' }).pages)
    .map(wordsOf)
    .join('\n');
  expect(german).toContain('95,25 × 127 mm');
  expect(german).not.toMatch(/\d\.\d/);
  expect(
    blocksOf(laidOut(tide, { unit: 'in' }).pages)
      .map(wordsOf)
      .join('\n'),
  ).toContain(' in');
});

test('the letter is that of the country that was chosen, else of the one where it is likely read', () => {
  const [sample] = SAMPLES;
  if (!sample) throw new Error('There is no sample.');
  const letter = (options: Parameters<typeof laidOut>[1]): string =>
    blocksOf(laidOut(sample, options).pages)
      .filter(({ tag }) => tag === 'LI')
      .map(wordsOf)
      .find((text) => /check with your post office|die Post fragen/.test(text)) ?? '';
  expect(letter({})).toMatch(/^– United States: /);
  expect(letter({ post: 'CA' })).toMatch(/^– Canada: /);
  expect(letter({ language: 'de' })).toMatch(/^– Deutschland: /);
  expect(letter({ language: 'de', post: 'GB' })).toMatch(/^– Vereinigtes Königreich: /);
});

test('links go where they say, and are told in full', () => {
  const links = [{ text: 'The club’s pages', address: 'https://example.org/fernhollow' }];
  const { pages } = laidOut(sampleOf('linked', expectSketch({ ...sampleDocument(), links })));
  const linked = blocksOf(pages).filter(({ link }) => link !== undefined);
  expect(linked.map(({ link }) => link)).toEqual(['https://example.org/fernhollow']);
  expect(linked.map(wordsOf)).toEqual(['– The club’s pages https://example.org/fernhollow']);
});

test('a page is shown as the very drawing that is printed', () => {
  const [sample] = SAMPLES;
  const pages = sample ? laidOut(sample) : null;
  const [page] = pages?.pages ?? [];
  if (!pages || !page) throw new Error('There is no page.');
  const drawing = pageDrawing(page, pages.looks);
  expect(drawing).toMatchObject({
    title: 'Hedgerow wreath',
    box: { x: 0, y: 0, width: inches(8.5), height: inches(11) },
  });
  expect(drawing.items).toHaveLength(blocksOf([page]).reduce((sum, { items }) => sum + items.length, 0));
  expect(drawing.description).toContain('Sizes for one card');
  const svg = writeSvg(drawing, { unit: 'in' });
  expect(svg).toContain('width="8.5in" height="11in"');
  // Every look that is filled with is there, at the scale that it is drawn at.
  for (const [, id] of svg.matchAll(/url\(#(trimwell-paper-[^)]+)\)/g)) expect(svg).toContain(`id="${id}"`);
});

test.each([
  ['paper', { paper: 'legal' }],
  ['language', { language: 'fr' }],
  ['date', { date: 'tomorrow' }],
  ['post', { post: 'XX' }],
])('a %s that there is not is refused by name', (name, options) => {
  const [sample] = SAMPLES;
  expect(() => sample && laidOut(sample, options as object)).toThrow(
    `${name} is "${Object.values(options)[0]}"; allowed: `,
  );
});
