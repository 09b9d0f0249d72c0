import { writeSketchText } from '@trimwell/sketch';
import { runCommand } from 'trimwell';
import { expect, test } from 'vitest';
import { sampleSketch } from '../kit/sample-sketch.js';
import { readCutSvg } from './read-svg.js';

const FILES: Readonly<Record<string, string>> = {
  'card.json': writeSketchText(sampleSketch()),
  'most.json': writeSketchText({ ...sampleSketch(), batch: { ...sampleSketch().batch, cards: 'as many as possible' } }),
  'bad.json': '{}',
};

async function trimwell(line: string) {
  const texts = new Map<string, string>();
  const bytes = new Map<string, Uint8Array>();
  const readText = async (file: string) => {
    const text = FILES[file === '-' ? 'card.json' : file];
    if (text === undefined) throw Object.assign(new Error(`ENOENT: no such file: ${file}`), { code: 'ENOENT' });
    return text;
  };
  const outcome = await runCommand(
    line.split(' '),
    readText,
    async (file, text) => {
      texts.set(file, text);
    },
    async (file, content) => {
      bytes.set(file, content);
    },
  );
  return { ...outcome, texts, bytes };
}

test('a folder beside the sketch has a file for each sheet and the read-me', async () => {
  const { code, out, error, texts, bytes } = await trimwell('cut-files card.json --cards 2 --gap 0');
  expect([error, code, bytes.size]).toEqual(['', 0, 0]);
  expect(out).toBe([...texts.keys()].map((name) => `${name}\n`).join(''));
  expect([...texts.keys()].at(-1)).toBe('card-cut-files/read-me.txt');
  for (const [name, text] of texts) if (name.endsWith('.svg')) expect(readCutSvg(text).unit).toBe('in');
  expect((await trimwell('cut-files - --cards 2 --gap 0')).out).toBe(out.replaceAll('card-cut-files/', 'cut-files/'));
});

test('a zip, DXF, pieces, millimetres, gap and margin are asked for by options', async () => {
  const { code, out, bytes, texts } = await trimwell('cut-files card.json --format dxf --out my.zip --cards 1');
  expect([code, out, texts.size]).toEqual([0, 'my.zip\n', 0]);
  expect(Buffer.from(bytes.get('my.zip') ?? []).toString('latin1')).toContain('.dxf');
  const pieces = await trimwell('cut-files card.json --by piece --unit mm --margin 5 --cards 1 --out there');
  const [name = '', text = ''] = [...pieces.texts][0] ?? [];
  expect(name).toMatch(/^there\/.*-card-base\.svg$/);
  const svg = readCutSvg(text);
  expect(svg.unit).toBe('mm');
  expect(svg.groups.cut?.paths[0]?.box).toMatchObject({ left: 5, top: 5 });
});

test('what cannot be cut is told, and ends with 1', async () => {
  const { code, error, texts } = await trimwell('cut-files card.json --cards 1 --margin 4in');
  expect(code).toBe(1);
  expect(error).toContain('not cut: larger than the sheet within its margins.');
  expect(texts.get('card-cut-files/read-me.txt')).toContain('NOT in the files');
});

test.each([
  ['cut-files card.json --format pdf', '--format is "pdf"; allowed: svg, dxf.'],
  ['cut-files card.json --by card', '--by is "card"; allowed: sheet, piece.'],
  ['cut-files card.json --gap wide', '--gap is "wide"; allowed: a length from 0 to 4 in, such as 1/8 in or 3 mm.'],
  ['cut-files card.json --margin -1', '--margin is "-1"; allowed: a length from 0 to 4 in'],
  ['cut-files card.json --cards 0', '--cards is "0"; allowed: a whole number from 1 to 500.'],
  ['cut-files card.json --unit cm', '--unit is "cm"; allowed: in, mm.'],
  ['cut-files', 'Name one sketch, got 0.'],
  ['cut-files gone.json', 'ENOENT: no such file: gone.json'],
  ['cut-files bad.json', 'bad.json: '],
])('%s is refused', async (line, message) => {
  const { code, error, texts, bytes } = await trimwell(line);
  expect(code).toBe(2);
  expect(error).toContain(message);
  expect(texts.size + bytes.size).toBe(0);
});

test('as many as possible takes the number of cards that the sheets at hand give', async () => {
  const { code, texts, error } = await trimwell('cut-files most.json --gap 0');
  if (code === 2) expect(error).toContain('name the number of cards');
  else expect([...texts.values()].at(-1)).toMatch(/for \d+ cards?\./);
});
