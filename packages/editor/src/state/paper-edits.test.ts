import { inches, millimetres, ticks } from '@trimwell/geometry';
import { applyEdit, applyEdits, MOST_PAPERS, type Paper, type Piece } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { expectRefused, expectTransaction, transactionOf } from './expect-transaction.js';
import { addMix, moveInMix, nameMix, putIntoMix, removeMix, takeOutOfMix } from './mix-edits.js';
import { addPiece } from './new-piece-commands.js';
import { addPaper, changePaper, removePaper } from './paper-edits.js';
import { isUsed, sourceUses } from './paper-uses.js';
import { type Command, type EditorState, openState } from './state.js';
import { applyTransaction } from './transaction.js';
import { startVariation } from './variation-commands.js';

const start = openState(sampleSketch());

function paper(state: EditorState, id: string): Paper {
  const found = state.sketch.papers.find((one) => one.id === id);
  if (!found) throw new Error(`no paper ${id}`);
  return found;
}

const cutFrom = (state: EditorState, id: string) =>
  state.sketch.pieces.filter(({ from }) => from === id).map((piece: Piece) => piece.id);
const mixOf = (state: EditorState, id: string) => state.sketch.mixes.find((mix) => mix.id === id)?.papers;

/** The state with one variation whose edits name the paper `dots`. */
function withVariation(): EditorState {
  const [piece] = start.document.pieces;
  if (!piece) throw new Error('no piece');
  return openState(
    applyEdits(start.document, [
      {
        do: 'set-variation',
        variation: {
          id: 'dotty',
          name: 'Dotty',
          note: '',
          edits: [
            { do: 'cut-from', piece: 'strip', from: 'dots' },
            { do: 'card', card: { ...start.document.card, base: 'dots' } },
            { do: 'set-mix', mix: { id: 'prints', name: 'Prints', papers: ['dots', 'moss'] } },
          ],
        },
      },
    ]),
  );
}

test('a new paper has the most usual size of the unit, and a name and id of its own', () => {
  const once = expectTransaction(start, addPaper(), (after) => {
    expect(paper(after, 'paper-1')).toMatchObject({ name: 'New paper', width: inches(12), height: inches(12) });
  });
  expectTransaction(once, addPaper(), (after) => expect(paper(after, 'paper-2').name).toBe('New paper 2'));
  expectTransaction(openState(applyEdit(start.document, { do: 'unit', unit: 'mm' })), addPaper(), (after) => {
    expect(paper(after, 'paper-1')).toMatchObject({ width: millimetres(210), height: millimetres(297) });
  });
  expect(transactionOf(start, addPaper())?.event).toBe('paper.add');
});

test('another like a paper is the same in all but id and name; a full sketch takes no more', () => {
  const after = expectTransaction(start, addPaper('sprig'));
  expect(paper(after, 'paper-1')).toEqual({ ...paper(start, 'sprig'), id: 'paper-1', name: 'Fern sprig 2' });
  expectRefused(start, addPaper('nothing'));
  let full = start;
  while (full.sketch.papers.length < MOST_PAPERS) addPaper()(full, (t) => (full = applyTransaction(full, t)), 1);
  expectRefused(full, addPaper());
});

test('what is stated of a paper changes, the rest stays; null takes a figure away', () => {
  const after = expectTransaction(start, changePaper('moss', { name: 'Deep moss', sheets: 3, gsm: 216 }), (state) => {
    expect(paper(state, 'moss')).toEqual({ ...paper(start, 'moss'), name: 'Deep moss', sheets: 3, gsm: 216 });
  });
  const none = expectTransaction(after, changePaper('moss', { sheets: null, gsm: null }));
  expect(Object.keys(paper(none, 'moss'))).not.toContain('sheets');
  expect(Object.keys(paper(none, 'moss'))).not.toContain('gsm');
  expectRefused(after, changePaper('moss', { sheets: 3 }));
  expectRefused(start, changePaper('moss', { name: '  ' }));
  expectRefused(start, changePaper('nothing', { name: 'Fern' }));
});

test('margins that would leave nothing of the sheet are refused, and so is a sheet that its margins would eat', () => {
  const wide = { top: ticks(0), right: inches(4), bottom: ticks(0), left: inches(4) };
  const state = expectTransaction(start, changePaper('moss', { margins: wide }));
  expectRefused(state, changePaper('moss', { width: inches(8) }));
  expectRefused(start, changePaper('moss', { margins: { ...wide, left: inches(8) } }));
});

test('changes of one gesture are one step', () => {
  let state = start;
  for (const ground of ['#111111', '#222222', '#333333']) {
    const look = { ...paper(state, 'moss').look, ground };
    changePaper('moss', { look }, 'colour 1')(state, (t) => (state = applyTransaction(state, t)), 1);
  }
  expect(paper(state, 'moss').look.ground).toBe('#333333');
  expect(state.history.past).toHaveLength(1);
});

test('a paper that something is cut from goes only when something else is named, all in one step', () => {
  expect(isUsed(sourceUses(start, 'moss'))).toBe(true);
  expectRefused(start, removePaper('moss'));
  expectRefused(start, removePaper('moss', 'moss'));
  expectRefused(start, removePaper('moss', 'prints'));
  const cut = cutFrom(start, 'moss');
  const after = expectTransaction(start, removePaper('moss', 'ivory'));
  expect(after.sketch.papers.map(({ id }) => id)).not.toContain('moss');
  expect(cutFrom(after, 'ivory')).toEqual(expect.arrayContaining(cut));
  expect(after.history.past.at(-1)?.event).toBe('paper.remove');
});

test('the card base and the turns in mixes go over to the other paper; a mix never has one twice', () => {
  const after = expectTransaction(start, removePaper('ivory', 'moss'));
  expect(after.sketch.card.base).toBe('moss');
  const dotless = expectTransaction(start, removePaper('dots', 'sprig'));
  expect(mixOf(dotless, 'prints')).toEqual(['sprig']);
  expect(mixOf(expectTransaction(start, removePaper('dots', 'moss')), 'prints')).toEqual(['sprig', 'moss']);
});

test('a paper that nothing needs goes at once; the last one stays', () => {
  const more = expectTransaction(start, addPaper());
  expectTransaction(more, removePaper('paper-1'));
  const only = applyEdits(start.document, [
    ...start.document.pieces.map((piece) => ({ do: 'remove-piece', piece: piece.id }) as const),
    { do: 'remove-mix', mix: 'prints' },
    ...['moss', 'sprig', 'dots'].map((id) => ({ do: 'remove-paper', paper: id }) as const),
  ]);
  expectRefused(openState(only), removePaper('ivory'));
});

test('variations that name a paper are told of, and are cut from the other one in the same step', () => {
  const state = withVariation();
  expect(sourceUses(state, 'dots').variations.map(({ id }) => id)).toContain('dotty');
  const after = expectTransaction(state, removePaper('dots', 'moss'));
  const dotty = after.document.variations.find(({ id }) => id === 'dotty');
  expect(dotty?.edits).toEqual([
    { do: 'cut-from', piece: 'strip', from: 'moss' },
    { do: 'card', card: { ...start.document.card, base: 'moss' } },
    { do: 'set-mix', mix: { id: 'prints', name: 'Prints', papers: ['moss'] } },
  ]);
});

test('while a variation is written the change goes into it, and the card keeps its paper', () => {
  const state: EditorState = { ...withVariation(), on: ['dotty'], writing: 'dotty' };
  const shown = applyTransaction(state, { event: 'variation.write', edits: [], at: 1 });
  const after = expectTransaction(shown, changePaper('moss', { name: 'Wet moss' }));
  expect(paper(after, 'moss').name).toBe('Wet moss');
  expect(after.document.papers.find(({ id }) => id === 'moss')?.name).toBe('Moss card');
});

test('a mix is made of the patterned papers first, named, and gets and loses papers', () => {
  const made = expectTransaction(start, addMix(), (after) => expect(mixOf(after, 'mix-1')).toEqual(['sprig', 'dots']));
  expectRefused(start, addMix(['nothing']));
  expectRefused(start, addMix([]));
  const named = expectTransaction(made, nameMix('mix-1', ' Greens '));
  expect(named.sketch.mixes.find(({ id }) => id === 'mix-1')?.name).toBe('Greens');
  expectRefused(named, nameMix('mix-1', ' '));
  const three = expectTransaction(named, putIntoMix('mix-1', 'moss'));
  expect(mixOf(three, 'mix-1')).toEqual(['sprig', 'dots', 'moss']);
  expectRefused(three, putIntoMix('mix-1', 'moss'));
  const moved = expectTransaction(three, moveInMix('mix-1', 'moss', -2));
  expect(mixOf(moved, 'mix-1')).toEqual(['moss', 'sprig', 'dots']);
  expectRefused(moved, moveInMix('mix-1', 'moss', -1));
  const one = expectTransaction(
    expectTransaction(moved, takeOutOfMix('mix-1', 'sprig')),
    takeOutOfMix('mix-1', 'dots'),
  );
  expectRefused(one, takeOutOfMix('mix-1', 'moss'));
});

test('a mix that pieces are cut from goes only when a paper or another mix is named', () => {
  const cut = cutFrom(start, 'prints');
  expect(cut.length).toBeGreaterThan(0);
  expectRefused(start, removeMix('prints'));
  expectRefused(start, removeMix('prints', 'prints'));
  const after = expectTransaction(start, removeMix('prints', 'moss'));
  expect(after.sketch.mixes).toEqual([]);
  expect(cutFrom(after, 'moss')).toEqual(expect.arrayContaining(cut));
  expect(transactionOf(expectTransaction(start, addMix()), removeMix('mix-1'))?.event).toBe('mix.remove');
});

/** The state with a variation put on and not written any more, in which `commands` were done; */
function wornWith(...commands: readonly ((state: EditorState) => Command)[]): EditorState {
  const done = (state: EditorState, command: Command) => expectTransaction(state, command);
  const written = commands.reduce((state, make) => done(state, make(state)), done(start, startVariation('Fresh')));
  const id = written.writing;
  return {
    ...applyTransaction(written, { event: 'variation.close', edits: [], writing: null, at: 1 }),
    on: [id ?? ''],
  };
}

const lastPiece = (state: EditorState) => state.sketch.pieces.at(-1)?.from;

test('a paper that a variation brought is taken away while it is put on', () => {
  const worn = wornWith(
    () => addPaper(),
    (state) => addPiece(state.sketch.papers.at(-1)?.id ?? ''),
  );
  const id = worn.sketch.papers.at(-1)?.id ?? '';
  expect(worn.document.papers.map((one) => one.id)).not.toContain(id);
  const after = expectTransaction(worn, removePaper(id, 'moss'));
  expect(after.sketch.papers.map((one) => one.id)).not.toContain(id);
  expect(lastPiece(after)).toBe('moss');
  expect(after.document.pieces).toEqual(start.document.pieces);
  expect(JSON.stringify(after.document)).not.toContain(`"${id}"`);
});

test('a mix that a variation brought is taken away while it is put on', () => {
  const worn = wornWith(
    () => addMix(['moss', 'dots']),
    (state) => addPiece(state.sketch.mixes.at(-1)?.id ?? ''),
  );
  const id = worn.sketch.mixes.at(-1)?.id ?? '';
  const after = expectTransaction(worn, removeMix(id, 'moss'));
  expect(after.sketch.mixes.map((one) => one.id)).not.toContain(id);
  expect(lastPiece(after)).toBe('moss');
});

test('a mix of the card goes from the card, though a variation that is put on cuts the piece from something else', () => {
  const [cut] = cutFrom(start, 'prints');
  const piece = cut ?? '';
  const other = wornWith(() => (_state, dispatch, at = 0) => {
    dispatch?.({ event: 'piece.paper', edits: [{ do: 'cut-from', piece, from: 'dots' }], at });
    return true;
  });
  const after = expectTransaction(other, removeMix('prints', 'moss'));
  expect(after.document.mixes).toEqual([]);
  expect(after.document.pieces.find(({ id }) => id === piece)?.from).toBe('moss');
  expect(cutFrom(after, 'dots')).toContain(piece);
});
