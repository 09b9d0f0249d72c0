import { readEdit, type Sketch, writeSketchText } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { runCommand } from '../index.js';

const FILES: Readonly<Record<string, Sketch>> = {
  'strips.json': stripSketch('2 1/8 in'),
  'two.json': stripSketch('2 1/8 in', { moss: 2 }, { batch: { cards: 'as many as possible' } }),
  'even.json': stripSketch('2 in'),
};

function trimwell(...line: readonly string[]) {
  const readText = async (file: string) => {
    const sketch = FILES[file];
    if (!sketch) throw new Error(`no file ${file}`);
    return writeSketchText(sketch);
  };
  return runCommand(line, readText, async () => undefined);
}

test('near-misses says in words what to change and what that gives (by hand: six strips from 12 in instead of five)', async () => {
  const { code, out } = await trimwell('near-misses', 'strips.json');
  expect(code).toBe(0);
  expect(out).toBe(
    'Fern sampler: 12 cards from 9 sheets as it is\nNear misses, pieces up to 1⁄8 in smaller:\n  B Strip: 2 in high instead of 2 1⁄8 in: 1 sheet of Moss card fewer\n',
  );
  expect((await trimwell('near-misses', 'two.json')).out).toContain('12 cards instead of 10');
  expect((await trimwell('near-misses', 'even.json')).out).toContain('No piece up to 1⁄8 in smaller');
});

test('near-misses as JSON carries an edit that reads back', async () => {
  const { out } = await trimwell('near-misses', 'strips.json', '--cards', '6', '--json');
  const found = JSON.parse(out);
  expect(found).toMatchObject({ trimwellNearMisses: 1, ticksPerInch: 16256, cards: 6, sheets: 5, tolerance: 2032 });
  expect(found.misses).toMatchObject([
    { piece: 'strip', change: { width: 0, height: 2032 }, saves: [{ paper: 'moss', sheets: 1 }], proven: true },
  ]);
  expect(readEdit(found.misses[0].edit, 'in')).toMatchObject({ ok: true, edit: { do: 'resize', piece: 'strip' } });
});

test.each([
  [['--tolerance', '-1'], '--tolerance is "-1"'],
  [['--tolerance', 'wide'], '--tolerance is "wide"'],
  [['--cards', 'most'], 'limited'],
  [['--cards', '0'], '--cards is "0"'],
])('near-misses %j is refused in plain words', async (options, words) => {
  const { code, error } = await trimwell('near-misses', 'strips.json', ...options);
  expect(code).toBe(2);
  expect(error).toContain(words);
});

test('a smaller tolerance leaves out what is larger', async () => {
  const { out } = await trimwell('near-misses', 'strips.json', '--tolerance', '1/16', '--json');
  expect(JSON.parse(out)).toMatchObject({ tolerance: 1016, misses: [] });
});
