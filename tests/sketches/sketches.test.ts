import { readdirSync, readFileSync } from 'node:fs';
import { checkPlan } from '@trimwell/geometry';
import {
  applyEdits,
  batchRecipe,
  batchYield,
  checkSketch,
  expectSketch,
  matPlace,
  planBatch,
  readSketchText,
  writeSketchText,
} from '@trimwell/sketch';
import { expect, test } from 'vitest';

const folder = new URL('../../demo/sketches/', import.meta.url);
const sketches = readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder), 'utf8')] as const);

test('the demo has three sketches: rounded and punched, metric A6, square', () => {
  expect(sketches.map(([name]) => name)).toEqual(['hedgerow-wreath.json', 'star-window.json', 'tide-line.json']);
});

test.each(sketches)('%s is a sound sketch that reads back as itself', (_name, text) => {
  const sketch = expectSketch(JSON.parse(text));
  expect(readSketchText(writeSketchText(sketch))).toEqual({ ok: true, sketch });
});

test.each(sketches)('%s has even mats, and nothing to watch', (_name, text) => {
  const sketch = expectSketch(JSON.parse(text));
  const mats = sketch.pieces.filter((piece) => piece.mats);
  expect(mats.length).toBeGreaterThan(0);
  for (const mat of mats) {
    const inner = sketch.pieces.find((piece) => piece.id === mat.mats?.piece);
    if (inner && mat.mats) expect(mat).toMatchObject(matPlace(inner, mat.mats.reveal));
  }
  expect(checkSketch(sketch)).toEqual([]);
});

test.each(sketches)('%s can be cut whole, by valid plans', (_name, text) => {
  const recipe = batchRecipe(expectSketch(JSON.parse(text)));
  const batch = typeof recipe.cards === 'number' ? planBatch(recipe, recipe.cards) : batchYield(recipe)?.plan;
  expect(batch?.complete).toBe(true);
  expect(batch?.cards).toBeGreaterThan(3);
  for (const { job, plan } of batch?.papers ?? []) expect(checkPlan(job, plan)).toEqual([]);
});

test.each(sketches)('each variation of %s can be switched on', (_name, text) => {
  const sketch = expectSketch(JSON.parse(text));
  expect(sketch.variations.length).toBeGreaterThan(0);
  for (const { edits } of sketch.variations) expect(checkSketch(applyEdits(sketch, edits))).toEqual([]);
});
