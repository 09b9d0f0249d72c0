import { inches } from '@trimwell/geometry';
import { applyEdits, CARD_BASE, type Edit } from '@trimwell/sketch';
import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { AssemblyWorker, planningPort } from '../../../../../tests/kit/assembly-worker.js';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { cardWatchOf } from '../../session/card-watch-of.js';
import { Session } from '../../session/session.js';
import { select, turnOver } from '../../state/commands.js';
import { Pointing } from '../pointing.js';
import type { Watched } from './found.js';
import { mendedPiece } from './mended-piece.js';
import { WatchElement } from './watch-panel.js';

beforeAll(() => customElements.define('trimwell-watch', WatchElement));
beforeEach(() => vi.stubGlobal('Worker', AssemblyWorker));
afterEach(() => {
  document.body.replaceChildren();
  vi.unstubAllGlobals();
});

const radius = inches(1);
/** The sample has foam, so that each of its mends waits until the card has been looked at. */
const wrong: readonly Edit[] = [
  { do: 'round', piece: 'greeting', corners: { tl: radius, tr: radius, br: radius, bl: radius } },
  { do: 'place', piece: 'strip', x: inches(1), y: inches(5) },
];

async function put(session: Session) {
  const element = document.createElement('trimwell-watch') as WatchElement;
  Object.assign(element, { session, pointing: new Pointing() });
  document.body.append(element);
  await element.updateComplete;
  const acts = (): readonly HTMLElement[] => [...element.renderRoot.querySelectorAll<HTMLElement>('li .act')];
  return { element, acts };
}

const mended = (session: Session): readonly string[] => session.state.history.past.map(({ event }) => event);
const looked = (session: Session) =>
  vi.waitUntil(() => cardWatchOf(session).view?.sketch === session.state.sketch, PATIENCE);

test('two that are pressed while both wait are made one after the other, each as a step of its own', async () => {
  const session = new Session(applyEdits(sampleSketch(), wrong), planningPort());
  const { element, acts } = await put(session);
  const words = acts().map((act) => act.textContent);
  expect(words).toHaveLength(2);
  // What was known of the card at each step.
  const known = new Set<unknown>();
  session.subscribe((change) => {
    if (change.sketch) known.add(cardWatchOf(session).view);
  });
  for (const act of acts()) act.click();
  // Once more is no further time.
  acts()[0]?.click();
  await element.updateComplete;
  expect(acts().map((act) => act.textContent)).toEqual(words.map((word) => `${word}: looking first …`));
  expect(mended(session)).toEqual([]);
  await vi.waitUntil(() => mended(session).length === 2, PATIENCE);
  expect(known.size).toBe(2);
  await looked(session);
  expect(mended(session)).toEqual(['mend.radius-too-large', 'mend.off-the-card']);
  expect(acts()).toHaveLength(0);
});

test('what was pressed in one list is not given up when another is taken off the page', async () => {
  const session = new Session(applyEdits(sampleSketch(), wrong), planningPort());
  const [one, other] = [await put(session), await put(session)];
  one.acts()[0]?.click();
  other.acts()[1]?.click();
  one.element.remove();
  await vi.waitUntil(() => mended(session).length > 0, PATIENCE);
  await looked(session);
  expect(mended(session)).toEqual(['mend.off-the-card']);
  session.undo();
  await other.element.updateComplete;
  other.acts()[0]?.click();
  other.element.remove();
  const again = await put(session);
  await looked(session);
  await again.element.updateComplete;
  expect(mended(session)).toEqual([]);
  expect(again.acts()).toHaveLength(2);
});

test('whatever else is changed gives up all that waits, and it is no longer said to wait', async () => {
  const session = new Session(applyEdits(sampleSketch(), wrong), planningPort());
  const { element, acts } = await put(session);
  for (const act of acts()) act.click();
  session.dispatch({ event: 'x', edits: [{ do: 'place', piece: 'greeting', x: inches(1), y: inches(1) }], at: 1 });
  await element.updateComplete;
  for (const act of acts()) expect(act.textContent).not.toContain('looking first');
  await looked(session);
  expect(mended(session)).toEqual(['x']);
});

test('after a mend the piece is taken that it changed: the upper one of a lap', async () => {
  const round = { at: [1 / 2, 2, 1.5, 1], radius: 1 / 4 } as const;
  const upper = { at: [1 + 15 / 16, 1.75, 1.5, 1.5] } as const;
  const session = new Session(flatCard({ other: { at: [1 / 2, 4, 1, 1] }, round, upper }), planningPort());
  const { acts } = await put(session);
  expect(acts().map((act) => act.textContent)).toEqual(['Move the upper one further over']);
  acts()[0]?.click();
  expect(mended(session)).toEqual(['mend.overlap-too-small']);
  expect(session.state.selection).toEqual(['upper']);
});

test('of what is brought that is taken, on its face; of what is taken away nothing, and nothing of the card itself', () => {
  const sketch = sampleSketch();
  const [piece] = sketch.pieces;
  if (!piece) throw new Error('the sample has pieces');
  const told = (fix: readonly Edit[], about: string): Watched =>
    ({ code: 'hidden', severity: 'looks wrong', piece: about, amount: inches(1), fix }) as const;
  const added = { ...piece, id: 'new' };
  expect(mendedPiece(sketch, told([{ do: 'add-piece', piece: added }], CARD_BASE))).toBe(added);
  expect(mendedPiece(sketch, told([{ do: 'remove-piece', piece: 'strip' }], 'strip'))).toBeNull();
  expect(mendedPiece(sketch, told([{ do: 'card', card: sketch.card }], CARD_BASE))).toBeNull();
});

test('the card is turned to the liner that a mend puts in', async () => {
  const dark = flatCard({ tile: { at: [1, 1, 1, 1] } });
  const [moss] = dark.papers;
  if (!moss) throw new Error('the card has a paper');
  const base = { ...moss, id: 'night', look: { ...moss.look, ground: '#101010' } };
  const edits: readonly Edit[] = [
    { do: 'set-paper', paper: base },
    { do: 'card', card: { ...dark.card, base: 'night' } },
  ];
  const session = new Session(applyEdits(dark, edits), planningPort());
  const { element, acts } = await put(session);
  const liner = (): HTMLElement | undefined => acts().find((act) => act.textContent === 'Put a liner in');
  await looked(session);
  await element.updateComplete;
  liner()?.click();
  expect(mended(session)).toEqual(['mend.dark-inside']);
  expect([session.state.selection, session.state.face]).toEqual([['liner'], 'inside']);
});

test('a mend that is made later leaves who has gone elsewhere where they are, with what they have taken', async () => {
  const session = new Session(applyEdits(sampleSketch(), wrong), planningPort());
  const { element, acts } = await put(session);
  const field = document.body.appendChild(document.createElement('input'));
  acts()[0]?.focus();
  acts()[0]?.click();
  select('panel')(session.state, session.dispatch, 1);
  field.focus();
  await vi.waitUntil(() => mended(session).length === 1, PATIENCE);
  await element.updateComplete;
  expect(session.state.selection).toEqual(['panel']);
  expect(document.activeElement).toBe(field);
  // Who has stayed is taken to what was mended, and from one that waits to the next.
  session.undo();
  await element.updateComplete;
  select('panel')(session.state, session.dispatch, 1);
  session.dispatch({ event: 'x', edits: [{ do: 'describe', title: 'x' }], at: 1 });
  await element.updateComplete;
  acts()[0]?.focus();
  for (const act of acts()) act.click();
  await vi.waitUntil(() => mended(session).length === 3, PATIENCE);
  await element.updateComplete;
  expect(session.state.selection).toEqual(['strip']);
  expect(element.shadowRoot?.activeElement?.textContent).toBe('To watch');
  // Turning the card over is going elsewhere, too.
  session.undo(2);
  await element.updateComplete;
  select(null)(session.state, session.dispatch, 1);
  acts()[0]?.click();
  turnOver(session.state, session.dispatch, 1);
  await vi.waitUntil(() => mended(session).length === 2, PATIENCE);
  expect([session.state.selection, session.state.face]).toEqual([[], 'inside']);
});

test('what was found in an earlier sketch is not even tried, since it may no longer be possible', async () => {
  const tiles = Array.from({ length: 16 }, (_, n) => `tile-${n}`);
  const sketch = flatCard({
    ...Object.fromEntries(
      tiles.map((id, n): [string, FlatPiece] => [id, { at: [(n % 4) + 1 / 8, (n >> 2) + 1, 1, 1] }]),
    ),
    other: { at: [1 / 2, 4, 1, 1] },
    round: { at: [1 / 2, 2, 1.5, 1], radius: 1 / 4 },
    upper: { at: [1 + 15 / 16, 1.75, 1.5, 1.5] },
  });
  const away = tiles.map((piece): Edit => ({ do: 'alter-piece', piece, face: 'inside' }));
  const session = new Session(applyEdits(sketch, away), planningPort());
  const { element, acts } = await put(session);
  expect(acts().map((act) => act.textContent)).toEqual(['Move the upper one further over']);
  const [act] = acts();
  act?.focus();
  session.dispatch({ event: 'x', edits: [{ do: 'remove-piece', piece: 'upper' }], at: 1 });
  await element.updateComplete;
  expect(element.shadowRoot?.activeElement).toBe(act);
  act?.click();
  await element.updateComplete;
  expect(act?.textContent).toContain('looking first');
  await looked(session);
  await element.updateComplete;
  expect(mended(session)).toEqual(['x']);
  expect(acts()).toEqual([]);
  // The button is gone, and the focus is not lost with it.
  expect(element.shadowRoot?.activeElement?.textContent).toBe('To watch');
});
