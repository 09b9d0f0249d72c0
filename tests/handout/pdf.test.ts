import {
  PDFArray,
  PDFDict,
  PDFDocument,
  PDFHexString,
  PDFName,
  PDFNumber,
  type PDFRawStream,
  PDFRef,
} from '@cantoo/pdf-lib';
import { inches, rectangle } from '@trimwell/geometry';
import { type Item, writeSvg } from '@trimwell/handout';
import { loadTextMeasure, type UnprintableText, unprintableTexts, writePdf } from '@trimwell/handout/pdf';
import { PNG } from 'pngjs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { HandoutPages, PageBlock } from '../../packages/handout/src/page/page.js';
import {
  A4,
  block,
  drawingHandout,
  drawingOf,
  LETTER,
  LOOKS,
  onePage,
  pathItem,
  photoHandout,
  textItem,
  wordsHandout,
} from './pdf-pages.js';
import { difference, largestDifference, paintPdf, paintSvg, shrink, storedPicture } from './pictures.js';
import { facts, read } from './read-pdf.js';
import { contentsOf, elementsOf, readStructure } from './read-structure.js';

const created = new Date('2026-01-02T03:04:05Z');
const PASSWORD = 'drü7 fern';

let words: Uint8Array;
let drawing: Uint8Array;

beforeAll(async () => {
  words = await writePdf(wordsHandout(), { created, subject: 'A card in five pieces' });
  drawing = await writePdf(drawingHandout(), { created });
});

describe('the file', () => {
  test('is sound', () => {
    for (const bytes of [words, drawing]) {
      const { status, out } = read('qpdf', bytes, ['--check', 'FILE']);
      expect(out).toContain('No syntax or stream encoding errors found');
      expect(status).toBe(0);
    }
  });

  test('says what it is', () => {
    expect(facts(words)).toMatchObject({
      Title: 'Fern & Dew (Tøfte)',
      Author: 'Fernhollow paper club',
      Subject: 'A card in five pieces',
      Producer: 'Trimwell',
      Tagged: 'yes',
      'Page size': '595.276 x 841.89 pts (A4)',
      CreationDate: expect.stringContaining('Jan  2 03:04:05 2026'),
    });
    expect(facts(drawing)).toMatchObject({ 'Page size': '612 x 792 pts (letter)' });
  });

  test('has language, window title, page labels and the metadata of an accessible document', async () => {
    const { catalog, context } = await PDFDocument.load(words);
    expect(String(catalog.get(PDFName.of('Lang')))).toBe('(en)');
    expect(String(catalog.lookup(PDFName.of('ViewerPreferences')))).toContain('/DisplayDocTitle true');
    expect(String(catalog.lookup(PDFName.of('PageLabels')))).toContain('/S /D');
    expect(String(catalog.lookup(PDFName.of('MarkInfo')))).toContain('/Marked true');
    const packet = context.lookup(catalog.get(PDFName.of('Metadata'))) as PDFRawStream;
    const text = new TextDecoder().decode(packet.contents);
    expect(text).toContain('<pdfuaid:part>1</pdfuaid:part>');
    expect(text).toContain('<rdf:li xml:lang="x-default">Fern &amp; Dew (Tøfte)</rdf:li>');
    expect(text).toContain('<rdf:li>en</rdf:li>');
    expect(text).toContain('<xmp:CreateDate>2026-01-02T03:04:05Z</xmp:CreateDate>');
  });

  test('is the same byte for byte for the same pages, and another for another date', async () => {
    const again = await writePdf(wordsHandout(), { created, subject: 'A card in five pieces' });
    expect(Buffer.from(again).equals(Buffer.from(words))).toBe(true);
    const later = await writePdf(wordsHandout(), { created: new Date('2026-01-03T03:04:05Z') });
    expect(Buffer.from(later).equals(Buffer.from(words))).toBe(false);
    expect(Buffer.from(await writePdf(drawingHandout(), { created })).equals(Buffer.from(drawing))).toBe(true);
  });
});

describe('text', () => {
  test('is in fonts that are embedded as subsets and can be read', () => {
    for (const bytes of [words, drawing]) {
      const rows = read('pdffonts', bytes, ['FILE']).out.trim().split('\n').slice(2);
      expect(rows.length).toBeGreaterThan(0);
      for (const row of rows) expect(row).toMatch(/^[A-Z]{6}\+\S+ +CID TrueType +Identity-H +yes yes yes /);
    }
    expect(words.length).toBeLessThan(25_000);
  });

  test('reads back with fractions, accents, and letters of other alphabets', () => {
    const { out } = read('pdftotext', words, ['FILE', '-']);
    expect(out).toContain('Fern & Dew: AVATAR Tøfte');
    expect(out).toContain('Mats of 4 1⁄4 × 5 11⁄16 in for Zoë, Łukasz, Ștefan and Müßig.');
    expect(out).toContain('About ≈ 10,8 cm → 4 1⁄8 in, Зоя, ½ office.');
    // The rim behind a letter of a drawing is no second letter.
    expect(read('pdftotext', drawing, ['FILE', '-']).out.match(/[B-E]/g)?.sort()).toEqual(['B', 'C', 'D', 'E']);
  });

  test('is as wide on paper as it was measured', async () => {
    const measure = await loadTextMeasure();
    const size = 20 * (16256 / 72);
    for (const [face, text] of [
      ['text', 'Waltz11⁄16'],
      ['strong', 'AVATAR'],
      ['italic', 'Łukasz'],
      ['heading', 'office'],
      ['art', 'Dew≈Зоя'],
    ] as const) {
      const pages = onePage(block('P', [textItem('one', text, 20, 30, 20, face)]));
      const { out } = read('pdftotext', await writePdf(pages, { created }), ['-bbox', 'FILE', '-']);
      const [, left, right] = /<word xMin="([\d.]+)"[^>]*xMax="([\d.]+)"/.exec(out) ?? [];
      const printed = ((Number(right) - Number(left)) * 16256) / 72;
      expect(Math.abs(measure.width(text, size, face) - printed), text).toBeLessThan(16);
    }
    expect(measure.ascent('text')).toBeGreaterThan(0.6);
    expect(measure.descent('heading')).toBeGreaterThan(0.15);
  });

  test('is kerned, and its fractions are narrower than their figures', async () => {
    const { width } = await loadTextMeasure();
    expect(width('AVA', 1000, 'text')).toBeLessThan(width('A', 1000, 'text') * 2 + width('V', 1000, 'text') - 20);
    expect(width('11⁄16', 1000, 'text')).toBeLessThan(0.8 * width('1111', 1000, 'text'));
    expect(width('a4⅛', 1000, 'text')).toBeCloseTo(width('a4 1⁄8', 1000, 'text'), 0);
  });

  test('with letters that no font has is reported, and shows their codes', async () => {
    const text = 'Grow \u{1f331} and \u{1f331}\ufe0f tall';
    const pages = onePage(block('P', [textItem('seed', text, 20, 30, 12)]));
    const told: UnprintableText[] = [];
    const bytes = await writePdf(pages, { created, report: (problem) => told.push(problem) });
    expect(told).toEqual(await unprintableTexts(pages));
    expect(told).toMatchObject([{ page: 1, key: 'seed', text, letters: ['\u{1f331}'] }]);
    expect(told[0]?.message).toBe(
      `Page 1: ${JSON.stringify(text)} has letters that no font of the handout has: \u{1f331} (shown as [U+1F331]).`,
    );
    expect(read('pdftotext', bytes, ['FILE', '-']).out).toContain('Grow [U+1F331] and [U+1F331] tall');
    expect(await unprintableTexts(wordsHandout())).toEqual([]);
  });
});

describe('structure', () => {
  test('has the blocks in reading order, and nothing of the foot', () => {
    const { out } = read('pdfinfo', words, ['-struct-text', 'FILE']);
    expect(out.split('\n').map((line) => line.trim().replace(/ \((block|inline)\)$/, ''))).toEqual([
      'Document',
      ...['H1', '"Fern & Dew: AVATAR Tøfte"', 'P'],
      '"Mats of 4 1⁄4 × 5 11⁄16 in for Zoë, Łukasz, Ștefan and Müßig. About ≈ 10,8 cm → 4 1⁄8 in, Зоя, ½ office."',
      ...['L', 'LI', 'LBody', '"1. Cut the base"', 'LI', 'LBody', '"2. Score the fold"'],
      ...['P', 'Link', expect.stringMatching(/^Object \d+ 0$/), '"fernhollow.example"', 'H2', '"Sizes"'],
      ...['Table', 'TR', 'TH:', '/Scope /Column', '"Piece"', 'TH:', '/Scope /Column', '"Size"'],
      ...['TR', 'TH:', '/Scope /Row', '"Mat"', 'TD', '"2 3⁄8 in"', ''],
    ]);
  });

  test('leaves decoration out', async () => {
    // The foot of the page and the line of the table.
    expect((await contentsOf(words)).match(/\/Artifact BMC/g)).toHaveLength(2);
    expect(await elementsOf(words, 'Artifact')).toEqual([]);
  });

  test('gives a figure its words and its place', async () => {
    const { out } = read('pdfinfo', drawing, ['-struct', 'FILE']);
    expect(out).toMatch(/Figure:\n +\/Placement \/Block\n +\/BBox \[[\d. ]+\]/);
    const figures = await elementsOf(drawing, 'Figure');
    expect(figures.map((figure) => figure.lookup(PDFName.of('Alt'), PDFHexString).decodeText())).toEqual([
      'The card from the front, and its papers.',
    ]);
  });

  test('holds every piece of marked content and every link exactly once', async () => {
    for (const bytes of [words, drawing]) {
      const { inContent, inTree, inParents, annotations } = await readStructure(bytes);
      expect(inContent.length).toBeGreaterThan(0);
      expect(inTree).toEqual(inContent);
      expect(inParents).toEqual(inContent);
      expect(annotations.every(({ type }) => type === '/Link')).toBe(true);
    }
    expect((await readStructure(words)).annotations).toHaveLength(1);
  });

  test('has a list of contents that leads to its places', async () => {
    const document = await PDFDocument.load(words);
    const outline = document.catalog.lookup(PDFName.of('Outlines'), PDFDict);
    const first = outline.lookup(PDFName.of('First'), PDFDict);
    const inner = first.lookup(PDFName.of('First'), PDFDict);
    expect(outline.lookup(PDFName.of('Count'), PDFNumber).asNumber()).toBe(2);
    expect(first.lookup(PDFName.of('Title'))?.toString()).toBe(
      '<FEFF004600650072006E00200061006E00640020004400650077>',
    );
    const destination = inner.lookup(PDFName.of('Dest'), PDFArray);
    expect(destination.get(0)).toBeInstanceOf(PDFRef);
    // 90 mm from the top of A4.
    expect(destination.lookup(3, PDFNumber).asNumber()).toBeCloseTo(((297 - 90) / 25.4) * 72, 3);
  });

  test('has links with an address and words', async () => {
    const document = await PDFDocument.load(words);
    const link = document.getPage(0).node.Annots()?.lookup(0, PDFDict);
    expect(String(link?.lookup(PDFName.of('A')))).toContain('(https://fernhollow.example/dew?a=(1))');
    expect(String(link?.get(PDFName.of('Rect')))).toBe('[ 56.6929 626.4567 170.0787 643.4646 ]');
  });
});

describe('a password', () => {
  test('encrypts with AES-256 as ISO 32000-2 has it, and opens with this password only', async () => {
    const secret = await writePdf(wordsHandout(), { created, password: PASSWORD });
    const shown = read('qpdf', secret, ['--show-encryption', `--password=${PASSWORD}`, 'FILE']).out;
    expect(shown).toContain('R = 6\n');
    expect(shown).toContain(
      'stream encryption method: AESv3\nstring encryption method: AESv3\nfile encryption method: AESv3',
    );
    expect(shown).toContain('print high resolution: allowed');
    expect(read('qpdf', secret, [`--password=${PASSWORD}`, '--check', 'FILE']).status).toBe(0);
    expect(read('pdftotext', secret, ['-upw', PASSWORD, 'FILE', '-']).out).toContain('for Zoë, Łukasz');
    for (const wrong of ['', 'drü7 Fern', `${PASSWORD} `]) {
      const { status, error } = read('pdftotext', secret, ['-upw', wrong, 'FILE', '-']);
      expect(status).toBe(1);
      expect(error).toContain('Incorrect password');
    }
    expect(Buffer.from(secret).includes('Fern')).toBe(false);
  });

  test('of no letters or too many is refused', async () => {
    await expect(writePdf(wordsHandout(), { created, password: '' })).rejects.toThrow(
      'has 0 bytes of UTF-8; allowed: 1 to 127',
    );
    await expect(writePdf(wordsHandout(), { created, password: 'ü'.repeat(64) })).rejects.toThrow('has 128 bytes');
  });
});

describe('drawing', () => {
  test.each(['words', 'drawing'] as const)('%s looks as it did', (name) => {
    const now = paintPdf(name === 'words' ? words : drawing, 50);
    const stored = storedPicture(name, now);
    expect(difference(now, stored)).toBeLessThan(0.5);
    expect(largestDifference(now, stored, 25)).toBeLessThan(8);
  });

  test('on paper and on the screen is the same', () => {
    const svg = writeSvg(drawingOf({ x: 0, y: 0, ...LETTER }), { unit: 'in' });
    const [paper, screen] = [shrink(paintPdf(drawing, 200), 4), shrink(paintSvg(svg, 200), 4)];
    expect(difference(paper, screen)).toBeLessThan(1.2);
    expect(largestDifference(paper, screen, 25)).toBeLessThan(20);
  });

  test('letters of pieces stand on a light rim', async () => {
    const ground = pathItem('ground', 'paper', rectangle(0, 0, 2 * A4.width, 2 * A4.height), {
      fill: { paper: 'dark' },
    });
    const at = { x: A4.width / 2, y: A4.height / 2 };
    const letter = (role: 'label' | 'figure'): Item => ({
      ...{ kind: 'text', key: 'a', role, at, text: 'A', size: A4.width / 4, align: 'middle' },
    });
    const dark = { pattern: 'plain', ground: '#000000', inks: [], repeat: inches(1) } as const;
    const light = async (role: 'label' | 'figure') => {
      const pages = { ...onePage(block('Figure', [ground, letter(role)], { alt: 'A letter.' })), looks: { dark } };
      return paintPdf(await writePdf(pages, { created }), 20).data.filter(
        (value, byte) => byte % 4 === 0 && value > 240,
      ).length;
    };
    expect(await light('label')).toBeGreaterThan(200);
    expect(await light('figure')).toBe(0);
  });

  test('shows a photograph over its whole sheet, once in the file', async () => {
    const { pages, photos } = photoHandout();
    const bytes = await writePdf(pages, { created, photos });
    expect(read('qpdf', bytes, ['--check', 'FILE']).status).toBe(0);
    const objects = (await PDFDocument.load(bytes)).context.enumerateIndirectObjects();
    expect(objects.filter(([, object]) => String(object).includes('/Subtype /Image'))).toHaveLength(1);
    const picture = paintPdf(bytes, 20);
    const at = (x: number, y: number) => [
      ...picture.data.subarray((y * picture.width + x) * 4, (y * picture.width + x) * 4 + 3),
    ];
    // The photograph is red above and blue below; the sheet is 4 x 4 in, the two areas reach from 1 to 4 in.
    expect(at(30, 30)).toEqual([200, 0, 0]);
    expect(at(30, 70)).toEqual([0, 0, 200]);
    const without = paintPdf(await writePdf(pages, { created }), 20);
    expect([...without.data.subarray((30 * without.width + 30) * 4, (30 * without.width + 30) * 4 + 3)]).not.toEqual([
      200, 0, 0,
    ]);
  });
});

describe('bad input is refused', () => {
  const written = (item: PageBlock, looks: HandoutPages['looks'] = {}) =>
    writePdf({ ...onePage(item), looks }, { created });
  const text = [textItem('one', 'One', 20, 30, 12)];
  const area = (paper: string) => [
    pathItem('area', 'paper', { start: { x: 0, y: 0 }, steps: [] }, { fill: { paper } }),
  ];

  test('a link that is not https', async () => {
    for (const link of ['http://fernhollow.example', 'javascript:alert(1)', 'fernhollow.example'])
      await expect(written(block('P', text, { link }))).rejects.toThrow(
        `A link goes to ${JSON.stringify(link)}; allowed: an address that begins with https://.`,
      );
  });

  test('a figure without words', async () => {
    await expect(written(block('Figure', text))).rejects.toThrow(
      'A figure on page 1 has no text that says what it shows.',
    );
  });

  test('an area of an unknown paper, an ink that is no colour', async () => {
    await expect(written(block('Artifact', area('gone')))).rejects.toThrow('the paper "gone", which has no look');
    const plain = { ...LOOKS['plain'], ground: 'red' } as HandoutPages['looks'][string];
    await expect(written(block('Artifact', area('plain')), { plain })).rejects.toThrow(
      'An ink is "red"; allowed: a colour as #rrggbb.',
    );
  });

  test('a photograph or picture that is neither JPEG nor PNG, or somewhere else', async () => {
    const { pages } = photoHandout();
    const photos = new Map([['aa'.repeat(8), new Uint8Array([0x52, 0x49, 0x46, 0x46])]]);
    await expect(writePdf(pages, { created, photos })).rejects.toThrow(
      'The photograph aaaaaaaaaaaaaaaa begins with the bytes 52 49 46 46; allowed: a JPEG or PNG picture.',
    );
    const at = { x: 0, y: 0 };
    const image = (href: string) =>
      block('Artifact', [{ kind: 'image', key: 'i', role: 'art', at, width: 100, height: 100, href }]);
    await expect(written(image('https://fernhollow.example/a.png'))).rejects.toThrow(
      'allowed: JPEG or PNG as a data URL',
    );
    const png = PNG.sync.write(new PNG({ width: 2, height: 2 })).toString('base64');
    await expect(written(image(`data:image/png;base64,${png}`))).resolves.toBeInstanceOf(Uint8Array);
  });

  test('a handout without pages', async () => {
    await expect(writePdf({ ...wordsHandout(), pages: [] }, { created })).rejects.toThrow(
      'A handout without pages cannot be written.',
    );
  });
});
