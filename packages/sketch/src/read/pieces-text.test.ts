import { ticks } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { applyEdits } from '../edit/apply-edit.js';
import { copiedPieces, readPiecesText, writePiecesText } from './pieces-text.js';

const sketch = sampleSketch();

function copied(ids: readonly string[], of = sketch) {
  const found = copiedPieces(of, ids);
  if (!found) throw new Error('nothing copied');
  return found;
}

function problems(text: string) {
  const reading = readPiecesText(text);
  return reading.ok ? [] : reading.problems.map(({ code, path }) => `${code} ${path}`.trim());
}

test('pieces go with what they are cut from and punched with, and nothing else; they read back to the tick', () => {
  const strip = copied(['strip']);
  expect(strip.mixes.map(({ id }) => id)).toEqual(['prints']);
  expect(strip.papers.map(({ id }) => id)).toEqual(sketch.mixes[0]?.papers);
  expect(strip.punches.map(({ id }) => id)).toEqual(['scallops']);
  const odd = applyEdits(sketch, [{ do: 'place', piece: 'strip', x: ticks(12_345), y: ticks(-77) }]);
  for (const unit of ['in', 'mm'] as const) {
    const one = copied(['strip', 'greeting'], applyEdits(odd, [{ do: 'unit', unit }]));
    expect(readPiecesText(writePiecesText(one))).toEqual({ ok: true, copied: one });
  }
  expect(writePiecesText(strip)).toContain('"width": "3 3/4 in"');
});

test('photographs of sheets are not named in the text', () => {
  const papers = sketch.papers.map((paper) => ({ ...paper, look: { ...paper.look, photo: 'ab'.repeat(32) } }));
  expect(writePiecesText(copied(['strip'], { ...sketch, papers }))).toBe(writePiecesText(copied(['strip'])));
});

test('a mat is copied with its piece or as a piece of its own, neither locked nor hidden', () => {
  const locked = applyEdits(sketch, [{ do: 'alter-piece', piece: 'panel', locked: true, hidden: true }]);
  expect(copied(['panel-mat']).pieces[0]?.mats).toBeUndefined();
  const both = copied(['panel', 'panel-mat'], locked).pieces;
  expect(both.map(({ id, mats }) => [id, mats?.piece])).toEqual([
    ['panel-mat', 'panel'],
    ['panel', undefined],
  ]);
  expect(both.every((piece) => !('locked' in piece) && !('hidden' in piece))).toBe(true);
  expect(copiedPieces(sketch, ['lace'])).toBeNull();
});

test('what is no pieces is refused as such, what is wrong inside by its path', () => {
  for (const text of ['', 'with love', '[1, 2]', 'null', JSON.stringify({ trimwell: 1 })])
    expect(problems(text)).toEqual(['not-pieces']);
  const document = JSON.parse(writePiecesText(copied(['strip'])));
  const changed = (change: (document: { pieces: Record<string, unknown>[] } & Record<string, unknown>) => void) => {
    const other = structuredClone(document);
    change(other);
    return problems(JSON.stringify(other));
  };
  expect(changed((it) => Object.assign(it, { trimwellCopy: 2 }))).toEqual(['unknown-version trimwellCopy']);
  expect(changed((it) => Object.assign(it.pieces[0] ?? {}, { width: 'wide' }))).toEqual(['custom pieces[0].width']);
  expect(changed((it) => Object.assign(it.pieces[0] ?? {}, { from: 'gold' }))).toEqual([
    'missing-reference pieces[0].from',
  ]);
  expect(changed((it) => Object.assign(it, { pieces: [] }))).toEqual(['too-small pieces']);
  expect(changed((it) => Object.assign(it, { more: 1 }))).toEqual(['unknown-key more']);
  expect(problems(`{"trimwellCopy": 1, "__proto__": {"a": 1}}`)).toEqual(['forbidden-key __proto__']);
  expect(problems(`{"trimwellCopy": 1, "notes": "${'x'.repeat(1_000_001)}"}`)).toEqual(['too-large']);
});
