import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inches } from '@trimwell/geometry';
import type { Edit } from '@trimwell/sketch';
import { describe, expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { redo, undo } from '../state/history.js';
import { type EditorState, openState } from '../state/state.js';
import { applyTransaction } from '../state/transaction.js';
import { hasStepName, historySteps, redoLabel, stepName, undoLabel } from './step-names.js';

const NO_STEP: ReadonlySet<string> = new Set([
  'piece.select',
  'card.turn',
  'variation.on',
  'variation.off',
  'variation.write',
  'variation.written',
]);

function nameOf(id: string): string {
  return sampleSketch().pieces.find((piece) => piece.id === id)?.name ?? '';
}

function after(state: EditorState, event: string, edits: readonly Edit[], selection?: readonly string[]): EditorState {
  return applyTransaction(state, { event, edits, at: 0, ...(selection ? { selection } : {}) });
}

const START = openState(sampleSketch());
const moved = (piece: string, x: number): Edit => ({ do: 'place', piece, x: inches(x), y: inches(1) });

describe('steps', () => {
  test('are named after what was selected and changed', () => {
    const picked = after(START, 'piece.select', [], ['strip']);
    expect(undoLabel(after(picked, 'piece.move', [moved('strip', 1)]))).toBe(`Undo: Move ${nameOf('strip')}`);
  });

  test('without a selection, after what changed; several are counted', () => {
    const both = after(START, 'piece.move', [moved('strip', 0.5), moved('panel', 0.5)], []);
    expect(undoLabel(both)).toMatch(/^Undo: Move \d+ pieces$/);
    const gone = after(START, 'piece.remove', [{ do: 'remove-piece', piece: 'strip' }], []);
    expect(undoLabel(gone)).toBe(`Undo: Take ${nameOf('strip')} away`);
  });

  test('of the order of gluing change no piece, and are named after the selected one', () => {
    const picked = after(START, 'piece.select', [], ['strip']);
    const first = after(picked, 'order.bottom', [{ do: 'order', piece: 'strip', to: 0 }]);
    expect(undoLabel(first)).toBe(`Undo: Glue ${nameOf('strip')} first`);
  });

  test('of the order of gluing that were not made on the selected piece are named after the one that they moved', () => {
    const picked = after(START, 'piece.select', [], ['panel']);
    const [lowest, next] = START.sketch.pieces;
    if (!lowest || !next) throw new Error('the sample has pieces');
    // Between two neighbours it makes no difference which of them is moved, but for who did it.
    for (const [piece, to] of [
      [lowest, 1],
      [next, 0],
    ] as const) {
      const mended = after(picked, 'mend.hidden', [{ do: 'order', piece: piece.id, to }], [piece.id]);
      expect(undoLabel(mended)).toBe(`Undo: Mend ${piece.name}`);
      expect(redoLabel(undo(mended))).toBe(`Redo: Mend ${piece.name}`);
      expect(undoLabel(redo(undo(mended)))).toBe(`Undo: Mend ${piece.name}`);
    }
  });

  test('of papers are named after the paper as it is called afterwards', () => {
    const [paper] = sampleSketch().papers;
    if (!paper) throw new Error('no paper');
    const named = after(START, 'paper.change', [{ do: 'set-paper', paper: { ...paper, name: 'Moss $& felt' } }]);
    expect(undoLabel(named)).toBe('Undo: Change Moss $& felt');
  });

  test('that are undone keep their names; nothing to undo has none', () => {
    const done = after(START, 'sketch.unit', [{ do: 'unit', unit: 'mm' }]);
    const back = undo(done);
    expect([undoLabel(back), redoLabel(back)]).toEqual([null, 'Redo: Change the unit']);
    expect([undoLabel(redo(back)), redoLabel(redo(back))]).toEqual(['Undo: Change the unit', null]);
  });

  test('stand in their order, done and undone', () => {
    const one = after(START, 'sketch.rename', [{ do: 'describe', title: 'A' }]);
    const two = after(one, 'piece.move', [moved('strip', 0.5)], ['strip']);
    const three = after(two, 'mend.off-the-card', [moved('panel', 0.5)], ['panel']);
    const { done, undone } = historySteps(undo(undo(three)));
    expect(done.map(stepName)).toEqual(['Change the title']);
    expect(undone.map(stepName)).toEqual([`Move ${nameOf('strip')}`, `Mend ${nameOf('panel')}`]);
  });

  test('of an event without a name are named after its words', () => {
    const step = { event: 'card.fold-over', before: START.sketch, after: START.sketch, selection: [], ordered: [] };
    expect(stepName(step)).toBe('Fold over');
  });
});

test('every event that the editor dispatches has a name', () => {
  const root = join(import.meta.dirname, '..');
  const sources = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter(
    (path) => path.endsWith('.ts') && !path.endsWith('.test.ts') && !path.includes('step-names'),
  );
  const kinds = 'piece|arrange|order|near-miss|paper|mix|punch|variation|contrast|batch|card|sketch';
  const events = sources.flatMap((path) =>
    [...readFileSync(join(root, path), 'utf8').matchAll(new RegExp(`'((?:${kinds})\\.[a-z-]+)'`, 'g'))].map(
      ([, event]) => event ?? '',
    ),
  );
  expect(events).toContain('piece.move');
  const nameless = [...new Set(events)].filter((event) => !NO_STEP.has(event) && !hasStepName(event));
  expect(nameless).toEqual([]);
});
