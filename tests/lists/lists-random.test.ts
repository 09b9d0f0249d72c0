import { LIST_FORMATS, type PieceList, writePieceList } from '@trimwell/handout';
import { readPieceList, type Sketch } from '@trimwell/sketch';
import fc from 'fast-check';
import { marked, type Tokens } from 'marked';
import Papa from 'papaparse';
import { expect, test } from 'vitest';
import { quickPlan } from '../kit/quick-plan.js';
import { randomSketch } from '../kit/random-sketch.js';

function listsOf(sketch: Sketch): readonly PieceList[] {
  const plan = quickPlan(sketch);
  const { cards } = plan;
  return [
    { arrange: 'card' },
    { arrange: 'batch', cards },
    { arrange: 'paper', cards, plan },
    { arrange: 'setting', plan },
  ];
}

/** As many cells in every row as in the head, by readers that are not ours: papaparse for CSV, marked for Markdown. */
function checkTables(texts: Readonly<Record<string, string>>): void {
  const { data, errors } = Papa.parse<string[]>(texts['csv'] ?? '', { skipEmptyLines: true, delimiter: ',' });
  expect(errors).toEqual([]);
  expect(new Set(data.map((row) => row.length)).size).toBe(1);
  JSON.parse(texts['json'] ?? '');
  const tables = marked.lexer(texts['markdown'] ?? '').filter((token): token is Tokens.Table => token.type === 'table');
  expect(tables.length).toBeGreaterThan(0);
  for (const { header, rows } of tables) for (const row of rows) expect(row).toHaveLength(header.length);
}

test('200 random sketches in every list and format: whole tables, no number that is none, the same text again', () => {
  fc.assert(
    fc.property(randomSketch(12), (sketch) => {
      for (const list of listsOf(sketch)) {
        const texts = Object.fromEntries(
          LIST_FORMATS.map((format) => [format, writePieceList(sketch, list, format).text]),
        );
        checkTables(texts);
        expect(Object.values(texts).join()).not.toMatch(/\bNaN\b|undefined|Infinity|\[object/);
        expect(writePieceList(sketch, list, 'text').text).toBe(texts['text']);
      }
    }),
    { numRuns: 200, seed: 20261126 },
  );
}, 300_000);

/** What a piece list keeps of a piece; a mix becomes a paper of its name. */
function kept({ pieces, papers, mixes }: Sketch): readonly string[] {
  const named = new Map([...papers, ...mixes].map(({ id, name }) => [id, name]));
  return pieces
    .map(({ name, kind, width, height, perCard, shape, face, from }) =>
      JSON.stringify([name, kind, width, height, perCard, shape, face, named.get(from)]),
    )
    .sort();
}

test('the CSV of one card or of a batch comes back as the same pieces, papers, card and fold', () => {
  fc.assert(
    fc.property(randomSketch(40), fc.boolean(), (sketch, batch) => {
      const list: PieceList = batch ? { arrange: 'batch', cards: 7 } : { arrange: 'card' };
      const reading = readPieceList(writePieceList(sketch, list, 'csv').text);
      if (!reading.ok) throw new Error(reading.problems.map(({ message }) => message).join('\n'));
      const { card, unit } = reading.sketch;
      expect(kept(reading.sketch)).toEqual(kept(sketch));
      expect([card.width, card.height, card.fold, unit]).toEqual([
        sketch.card.width,
        sketch.card.height,
        sketch.card.fold,
        sketch.unit,
      ]);
      const baseOf = (of: Sketch) => of.papers.find(({ id }) => id === of.card.base)?.name;
      expect(baseOf(reading.sketch)).toBe(baseOf(sketch));
      for (const { x, y, width, height } of reading.sketch.pieces)
        if (width <= card.width && height <= card.height)
          expect(x >= 0 && y >= 0 && x + width <= card.width && y + height <= card.height).toBe(true);
    }),
    { numRuns: 200, seed: 20261126 },
  );
}, 120_000);
