import { PDFDocument } from '@cantoo/pdf-lib';
import { writeSketchText } from '@trimwell/sketch';
import { runCommand } from 'trimwell';
import { expect, test } from 'vitest';
import { sampleSketch } from '../kit/sample-sketch.js';

const FILES: Readonly<Record<string, string>> = {
  'card.json': writeSketchText(sampleSketch()),
  'seed.json': writeSketchText({ ...sampleSketch(), title: 'Seed \u{1f331}' }),
  'secret.txt': 'fern and dew\nsecond line\n',
  'empty.txt': '\n',
  'bad.json': '{}',
};

async function trimwell(line: string) {
  const written = new Map<string, Uint8Array>();
  const readText = async (file: string) => {
    const text = FILES[file];
    if (text === undefined) throw Object.assign(new Error(`ENOENT: no such file: ${file}`), { code: 'ENOENT' });
    return text;
  };
  const outcome = await runCommand(
    line.split(' '),
    readText,
    async (file) => expect.fail(`${file} was written as text`),
    async (file, bytes) => {
      written.set(file, bytes);
    },
  );
  return { ...outcome, written };
}

async function sizeOf(bytes: Uint8Array | undefined) {
  const document = await PDFDocument.load(bytes ?? new Uint8Array());
  return { title: document.getTitle(), pages: document.getPageCount(), ...document.getPage(0).getSize() };
}

test('the handout goes beside the sketch, on Letter for a sketch in inches', async () => {
  const { code, out, error, written } = await trimwell('handout card.json --date 2026-01-02');
  expect([code, out, error]).toEqual([0, 'card.pdf\n', '']);
  const size = await sizeOf(written.get('card.pdf'));
  expect(size).toMatchObject({ title: sampleSketch().title, width: 612, height: 792 });
  const again = await trimwell('handout card.json --date 2026-01-02 --out other.pdf');
  expect(Buffer.from(again.written.get('other.pdf') ?? []).equals(Buffer.from(written.get('card.pdf') ?? []))).toBe(
    true,
  );
  const templates = await trimwell('handout card.json --date 2026-01-02 --paper a4 --templates');
  const larger = await sizeOf(templates.written.get('card.pdf'));
  expect(larger.width).toBeCloseTo(595.28, 1);
  expect(larger.pages).toBeGreaterThan(size.pages);
});

test('a password is the first line of its file', async () => {
  const { written } = await trimwell('handout card.json --date 2026-01-02 --password-file secret.txt');
  const bytes = written.get('card.pdf') ?? new Uint8Array();
  await expect(PDFDocument.load(bytes)).rejects.toThrow();
  await expect(PDFDocument.load(bytes, { password: 'fern and dew\nsecond line' })).rejects.toThrow();
  expect((await PDFDocument.load(bytes, { password: 'fern and dew' })).getPageCount()).toBeGreaterThan(1);
  const empty = await trimwell('handout card.json --password-file empty.txt');
  expect(empty.code).toBe(2);
  expect(empty.error).toContain('The first line of empty.txt has 0 bytes; allowed for a password: 1 to 127.');
});

test('letters that cannot be printed are told of', async () => {
  const { code, error } = await trimwell('handout seed.json --date 2026-01-02');
  expect(code).toBe(0);
  expect(error).toMatch(
    /^Letters that no font of the pages has are shown by their numbers: \u{1f331} as \[U\+1F331\]; on pages? [\d, ]+\.\n$/u,
  );
});

test.each([
  ['handout card.json --paper foolscap', '--paper is "foolscap"; allowed: letter, a4.'],
  ['handout card.json --language fr', '--language is "fr"; allowed: en, de.'],
  ['handout card.json --unit cm', '--unit is "cm"; allowed: in, mm.'],
  ['handout card.json --date 2026-02-30', '--date is "2026-02-30"; allowed: a day as YYYY-MM-DD.'],
  ['handout card.json --cards 0', '--cards is "0"; allowed: a whole number from 1 to 500.'],
  ['handout', 'Name one sketch, got 0.'],
  ['handout gone.json', 'ENOENT: no such file: gone.json'],
  ['handout bad.json', 'bad.json: '],
])('%s is refused', async (line, message) => {
  const { code, error, written } = await trimwell(line);
  expect(code).toBe(2);
  expect(error).toContain(message);
  expect(written.size).toBe(0);
});
