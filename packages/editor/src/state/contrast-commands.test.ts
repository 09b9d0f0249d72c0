import type { Sketch } from '@trimwell/sketch';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import {
  apartFrom,
  areApart,
  cutAllFrom,
  cutFromPapers,
  keepApart,
  keptApart,
  letPiecesShare,
  letShare,
  takesTurns,
} from './contrast-commands.js';
import { expectRefused, expectTransaction } from './expect-transaction.js';
import { type EditorState, openState } from './state.js';
import { applyTransaction } from './transaction.js';
import { startVariation } from './variation-commands.js';

const sketch = sampleSketch();

function taking(selection: readonly string[], from: Sketch = sketch): EditorState {
  return { ...openState(from), selection };
}

const contrastOf = (state: EditorState) => state.document.batch.contrast;

test('two pieces that may not share a paper may share it again, and the other way round', () => {
  const shared = expectTransaction(taking(['strip', 'panel']), letPiecesShare());
  expect(contrastOf(shared)).toEqual([]);
  expectRefused(shared, letPiecesShare());
  const apart = expectTransaction(shared, keepApart());
  expect(contrastOf(apart)).toEqual([['panel', 'strip']]);
  expectRefused(apart, keepApart());
});

test('it applies to two or more pieces of the card, one of which takes turns among papers', () => {
  expect(['panel', 'strip', 'greeting', 'gone'].map((id) => takesTurns(sketch, id))).toEqual([
    true,
    true,
    false,
    false,
  ]);
  expectRefused(taking(['panel']), keepApart());
  expectRefused(taking([]), keepApart(['panel', 'panel']));
  expectRefused(taking([]), keepApart(['panel', 'gone']));
  expectRefused(taking(['greeting', 'liner']), keepApart());
  const fixed = expectTransaction(taking(['greeting', 'panel']), keepApart());
  expect(contrastOf(fixed)).toEqual([
    ['panel', 'strip'],
    ['panel', 'greeting'],
  ]);
  expect([apartFrom(contrastOf(fixed), 'panel'), apartFrom(contrastOf(fixed), 'liner')]).toEqual([
    ['strip', 'greeting'],
    [],
  ]);
});

test('a group that says it all takes the place of what it says', () => {
  const three = expectTransaction(taking(['panel', 'strip', 'liner']), keepApart());
  expect(contrastOf(three)).toEqual([['panel', 'strip', 'liner']]);
  const split = expectTransaction({ ...three, selection: ['panel', 'strip'] }, letPiecesShare());
  expect(contrastOf(split)).toEqual([
    ['panel', 'liner'],
    ['strip', 'liner'],
  ]);
});

const NAMES = ['a', 'b', 'c', 'd', 'e'];
const pairs = NAMES.flatMap((one, at) => NAMES.slice(at + 1).map((other) => [one, other] as const));
const groups = fc.array(fc.uniqueArray(fc.constantFrom(...NAMES), { minLength: 2 }), { maxLength: 5 });
const chosen = fc.uniqueArray(fc.constantFrom(...NAMES), { minLength: 2 });

test('keeping apart and letting share change the chosen pairs and no others', () => {
  fc.assert(
    fc.property(groups, chosen, (contrast, ids) => {
      const kept = keptApart(contrast, ids);
      const sharing = letShare(contrast, ids);
      for (const pair of pairs) {
        const mine = pair.every((id) => ids.includes(id));
        expect(areApart(kept, pair)).toBe(mine || areApart(contrast, pair));
        expect(areApart(sharing, pair)).toBe(!mine && areApart(contrast, pair));
      }
      for (const group of [...kept, ...sharing]) expect(group.length).toBeGreaterThan(1);
      expect(kept.length).toBeLessThanOrEqual(contrast.length + 1);
    }),
  );
});

test('a contrast of a piece that only a variation brings is refused', () => {
  const piece = { ...(sketch.pieces[2] as Sketch['pieces'][number]), id: 'strip-1' };
  const brings = { id: 'v', name: 'V', note: '', edits: [{ do: 'add-piece' as const, piece }] };
  const on = applyTransaction(openState({ ...sketch, variations: [brings] }), {
    event: 'x',
    edits: [],
    on: ['v'],
    at: 0,
  });
  expectRefused({ ...on, selection: ['strip-1', 'panel'] }, keepApart());
});

test('what a variation takes away keeps its contrasts on the card', () => {
  const gone = { id: 'v', name: 'V', note: '', edits: [{ do: 'remove-piece' as const, piece: 'strip' }] };
  const on = applyTransaction(openState({ ...sketch, variations: [gone] }), {
    event: 'x',
    edits: [],
    on: ['v'],
    at: 0,
  });
  expect(on.sketch.batch.contrast).toEqual([]);
  const more = expectTransaction({ ...on, selection: ['panel', 'greeting'] }, keepApart());
  expect(contrastOf(more)).toEqual([
    ['panel', 'strip'],
    ['panel', 'greeting'],
  ]);
});

test('all selected pieces are cut from one mix, in one step', () => {
  const all = expectTransaction(taking(['panel', 'greeting', 'liner']), cutAllFrom('prints'));
  expect(all.sketch.pieces.filter(({ from }) => from === 'prints').map(({ id }) => id)).toEqual([
    'panel',
    'strip',
    'greeting',
    'liner',
  ]);
  expect(all.history.past).toHaveLength(1);
  expectRefused(taking(['panel']), cutAllFrom('prints'));
  expectRefused(taking(['panel']), cutAllFrom('gold'));
  expectRefused(taking([]), cutAllFrom('prints'));
});

test('a mix is made of chosen papers, unless there is one of the same papers', () => {
  const made = expectTransaction(taking(['greeting', 'liner']), cutFromPapers(['ivory', 'moss', 'ivory']));
  expect(made.document.mixes[1]).toEqual({ id: 'mix-1', name: 'Ivory card and Moss card', papers: ['ivory', 'moss'] });
  expect(made.document.pieces.filter(({ from }) => from === 'mix-1').map(({ id }) => id)).toEqual([
    'greeting',
    'liner',
  ]);
  const there = expectTransaction(taking(['greeting']), cutFromPapers(['dots', 'sprig']));
  expect(there.document.mixes).toBe(sketch.mixes);
  expect(there.document.pieces.find(({ id }) => id === 'greeting')?.from).toBe('prints');
  const called = expectTransaction(taking(['greeting']), cutFromPapers(['dots', 'moss'], ' Berries '));
  expect(called.document.mixes[1]?.name).toBe('Berries');
  for (const papers of [['dots'], ['dots', 'dots'], ['dots', 'gold'], []])
    expectRefused(taking(['greeting']), cutFromPapers(papers));
  expectRefused(taking([]), cutFromPapers(['dots', 'moss']));
  expectRefused(taking(['panel']), cutFromPapers(['sprig', 'dots']));
});

test('a mix made while a variation is written belongs to it; the next mix takes another id', () => {
  const writing = expectTransaction(taking(['greeting']), startVariation('Mixed'));
  const mixed = expectTransaction({ ...writing, selection: ['greeting'] }, cutFromPapers(['ivory', 'moss']));
  expect(mixed.document.mixes).toBe(sketch.mixes);
  expect(mixed.sketch.mixes.map(({ id }) => id)).toEqual(['prints', 'mix-1']);
  const off = applyTransaction(mixed, { event: 'x', edits: [], writing: null, on: [], at: 0 });
  const again = expectTransaction({ ...off, selection: ['liner'] }, cutFromPapers(['ivory', 'dots']));
  expect(again.document.mixes.map(({ id }) => id)).toEqual(['prints', 'mix-2']);
});
