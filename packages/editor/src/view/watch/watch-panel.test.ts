import { inches, ticks } from '@trimwell/geometry';
import { applyEdits, checkSketch, type Edit, type FindingCode, type Sketch } from '@trimwell/sketch';
import { afterEach, beforeAll, expect, test, vi } from 'vitest';
import { AssemblyWorker, planningPort } from '../../../../../tests/kit/assembly-worker.js';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { cardWatchOf } from '../../session/card-watch-of.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import { WatchElement } from './watch-panel.js';
import { findingText, unmadePieces, unmadeText } from './watch-words.js';

beforeAll(() => customElements.define('trimwell-watch', WatchElement));
afterEach(() => document.body.replaceChildren());

const deep: Edit = {
  do: 'round',
  piece: 'greeting',
  corners: { tl: inches(1), tr: inches(1), br: inches(1), bl: inches(1) },
};
/** Without foam the mends of pieces do not matter to the card as a whole. */
const flat: Edit = { do: 'alter-piece', piece: 'greeting', raise: ticks(0) };
const over: Edit = { do: 'place', piece: 'strip', x: inches(1), y: inches(5) };
const askew: Edit = { do: 'place', piece: 'liner', x: ticks(2_100), y: ticks(2_032) };

function lay(...edits: readonly Edit[]) {
  return put(applyEdits(sampleSketch(), edits));
}

async function put(sketch: Sketch) {
  const element = document.createElement('trimwell-watch') as WatchElement;
  const session = new Session(sketch, {
    onmessage: null,
    postMessage: () => {},
    terminate: () => {},
  });
  const pointing = new Pointing();
  Object.assign(element, { session, pointing });
  document.body.append(element);
  await element.updateComplete;
  const lines = (): readonly string[] =>
    [...element.renderRoot.querySelectorAll('li')].map((line) => line.textContent?.replace(/\s+/g, ' ').trim() ?? '');
  return { element, session, pointing, lines };
}

test('papers of a mix that cannot give a piece are told once, counted together', () => {
  const unmade = [
    { blank: 'panel--sprig', quantity: 3, reason: 'larger than every sheet' },
    { blank: 'panel--dots', quantity: 2, reason: 'larger than every sheet' },
    { blank: 'panel--dots', quantity: 1, reason: 'out of sheets' },
    { blank: 'strip', quantity: 4, reason: 'out of sheets' },
  ] as const;
  expect(unmadePieces(unmade).map((each) => unmadeText(each, sampleSketch()))).toEqual([
    '5 × Panel cannot be cut: it is larger than its sheet.',
    '1 × Panel cannot be cut: there are not enough sheets.',
    '4 × Strip cannot be cut: there are not enough sheets.',
  ]);
});

test('each finding stands in the list with how bad it is in words, and its mend is one step with a name', async () => {
  const { session, lines, element } = await lay(deep, over, flat);
  expect(lines()[0]).toMatch(/^Must be changed: Greeting: two corners need .* Make them smaller$/);
  expect(lines()[1]).toMatch(/^Looks wrong: Strip reaches 1⁄2 in over the edge of the card\. Move it in$/);
  element.renderRoot.querySelector<HTMLElement>('.act')?.click();
  await element.updateComplete;
  expect(session.state.history.past.map(({ event }) => event)).toEqual(['mend.radius-too-large']);
  expect(session.state.selection).toEqual(['greeting']);
  expect(lines()).toHaveLength(1);
  session.undo();
  await element.updateComplete;
  expect(lines()).toHaveLength(2);
});

test('where there is foam, a mend waits until the card has been looked at as it lies', async () => {
  vi.stubGlobal('Worker', AssemblyWorker);
  const element = document.createElement('trimwell-watch') as WatchElement;
  const session = new Session(applyEdits(sampleSketch(), [deep]), planningPort());
  Object.assign(element, { session, pointing: new Pointing() });
  document.body.append(element);
  await element.updateComplete;
  const act = (): HTMLElement | null => element.renderRoot.querySelector('.act');
  // Pressed already, it is mended as soon as that is known to be safe, and once.
  act()?.click();
  expect(session.state.history.past).toEqual([]);
  await vi.waitUntil(() => session.state.history.past.length > 0, PATIENCE);
  expect(session.state.history.past.map(({ event }) => event)).toEqual(['mend.radius-too-large']);
  session.undo();
  await vi.waitUntil(() => cardWatchOf(session).view?.sketch === session.state.sketch, PATIENCE);
  expect(session.state.history.past).toEqual([]);
  act()?.click();
  expect(session.state.history.past.map(({ event }) => event)).toEqual(['mend.radius-too-large']);
  // Pressed, and something else changed before it is known: it is not mended unasked.
  session.undo();
  session.dispatch({ event: 'x', edits: [over], at: 1 });
  await element.updateComplete;
  act()?.click();
  session.dispatch({ event: 'y', edits: [{ do: 'place', piece: 'strip', x: inches(1), y: inches(3) }], at: 2 });
  await vi.waitUntil(() => cardWatchOf(session).view?.sketch === session.state.sketch, PATIENCE);
  expect(session.state.history.past.map(({ event }) => event)).toEqual(['x', 'y']);
  vi.unstubAllGlobals();
});

test('a way to mend that turns out to harm the card is not taken, and another is not taken for it', async () => {
  vi.stubGlobal('Worker', AssemblyWorker);
  // Put on top of its cover, the flap on its foam would make the card too thick for its envelope.
  const card = flatCard({
    pillar: { at: [1 / 2, 1, 1, 1], foam: 1 / 8 },
    flap: { at: [2.25, 1, 3 / 4, 1], foam: 1 / 8 },
    cover: { at: [3 / 4, 3 / 4, 2.5, 1.5] },
  });
  const envelope = { name: 'close', width: inches(4.25 + 3 / 64), height: inches(5.5 + 3 / 64) };
  const element = document.createElement('trimwell-watch') as WatchElement;
  const session = new Session({ ...card, card: { ...card.card, envelope } }, planningPort());
  Object.assign(element, { session, pointing: new Pointing() });
  document.body.append(element);
  await element.updateComplete;
  const act = (): HTMLElement | null => element.renderRoot.querySelector('.act[aria-label$="flap"]');
  const [first] = checkSketch(session.state.sketch);
  expect(first).toMatchObject({ piece: 'flap', fix: [{ do: 'order' }] });
  const offered = act()?.textContent;
  act()?.click();
  await vi.waitUntil(() => cardWatchOf(session).view?.sketch === session.state.sketch, PATIENCE);
  await element.updateComplete;
  expect(session.state.history.past).toEqual([]);
  expect(act()?.textContent).not.toBe(offered);
  act()?.click();
  expect(session.state.sketch.pieces.map(({ id }) => id)).not.toContain('flap');
  vi.unstubAllGlobals();
});

test('the words on the button tell which of two papers is changed', () => {
  const mendOf = (pieces: Readonly<Record<string, FlatPiece>>): string | undefined => {
    const sketch = flatCard(pieces);
    const finding = checkSketch(sketch).find(({ code }) => code === 'overlap-too-small');
    return finding && findingText(finding, sketch).mend;
  };
  const strip: FlatPiece = { at: [1 / 2, 2, 1.5, 1] };
  expect(mendOf({ strip, upper: { at: [1 + 15 / 16, 1.5, 1.5, 2] } })).toBe('Make it longer underneath');
  expect(mendOf({ tall: { at: [1 / 2, 1, 1.5, 3] }, upper: { at: [1 + 15 / 16, 2, 1.5, 1] } })).toBe(
    'Make the upper one longer',
  );
  const round: FlatPiece = { ...strip, radius: 1 / 4 };
  const upper: FlatPiece = { at: [1 + 15 / 16, 1.75, 1.5, 1.5] };
  expect(mendOf({ round, upper })).toBe('Move it further under');
  expect(mendOf({ other: { at: [1 / 2, 4, 1, 1] }, round, upper })).toBe('Move the upper one further over');
});

test('a piece that goes too little under two others stands in the list twice', async () => {
  const { lines } = await put(
    flatCard({
      strip: { at: [15 / 16, 2, 2 + 3 / 8, 1] },
      left: { at: [1 / 4, 1 / 2, 3 / 4, 4] },
      right: { at: [3 + 1 / 4, 1 / 2, 3 / 4, 4] },
    }),
  );
  expect(lines()).toHaveLength(2);
  expect(lines()[0]).toContain('strip goes only 1⁄16 in under left');
  expect(lines()[1]).toContain('strip goes only 1⁄16 in under right');
});

test('a line points at its piece and takes it; nothing to watch is said', async () => {
  const { element, session, pointing } = await lay(over);
  const line = element.renderRoot.querySelector<HTMLElement>('.says');
  line?.dispatchEvent(new PointerEvent('pointerenter'));
  expect(pointing.piece).toBe('strip');
  line?.click();
  expect(session.state.selection).toEqual(['strip']);
  expect((await lay()).lines()[0]).toContain('Nothing');
});

test('while something is dragged the list stays as it was, and follows when it is let go', async () => {
  const { element, session, lines } = await lay();
  session.dispatch({ event: 'piece.move', edits: [over], gesture: 'drag', at: 1 });
  await element.updateComplete;
  expect(lines()[0]).toContain('Nothing');
  session.settle('drag');
  await element.updateComplete;
  expect(lines()[0]).toContain('Strip reaches');
});

test('every finding has words of its own, and a mend in words where it has a fix', () => {
  const sketch = applyEdits(sampleSketch(), [askew]);
  const [sample] = checkSketch(sketch);
  if (!sample) throw new Error('the liner is askew');
  const codes: readonly FindingCode[] = [
    'radius-too-large',
    'punch-too-deep',
    'print-must-turn',
    'print-on-its-side',
    'off-the-card',
    'hidden',
    'uneven-reveal',
    'mat-out-of-true',
    'corners-not-concentric',
    'short-punched-edge',
    'part-repeats',
    'overlap-too-small',
    'too-narrow',
    'off-the-ruler',
    'place-off-the-ruler',
    'punched-edge-covered',
  ];
  const words = codes.map((code) => findingText({ ...sample, code, edge: 'top' }, sketch).says);
  expect(new Set(words).size).toBe(codes.length);
  for (const text of words) expect(text).toMatch(/^.*Liner.*\.$/);
});

test('what is found about the card as a whole comes later, and is mended in one step with a name', async () => {
  vi.stubGlobal('Worker', AssemblyWorker);
  const element = document.createElement('trimwell-watch') as WatchElement;
  const { card } = sampleSketch();
  // Narrower than the card itself.
  const envelope = { name: 'own', width: inches(4), height: inches(5) };
  const sketch = applyEdits(sampleSketch(), [{ do: 'card', card: { ...card, envelope } }]);
  const session = new Session(sketch, planningPort());
  Object.assign(element, { session, pointing: new Pointing() });
  document.body.append(element);
  const line = (): string => element.renderRoot.querySelector('li')?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
  await vi.waitUntil(() => line().startsWith('Must be changed: The envelope is smaller than the card'), PATIENCE);
  await element.updateComplete;
  expect(line()).toContain('Take the next envelope that fits');
  // After a change it is told as it was, but mended only when it has been looked at again; the focus stays on the button.
  const act = element.renderRoot.querySelector<HTMLElement>('.act');
  act?.focus();
  session.dispatch({ event: 'x', edits: [{ do: 'place', piece: 'strip', x: inches(1 / 4), y: inches(3) }], at: 1 });
  await element.updateComplete;
  expect(line()).toContain('The envelope is smaller');
  expect(element.shadowRoot?.activeElement).toBe(act);
  act?.click();
  await element.updateComplete;
  expect(line()).toContain('Take the next envelope that fits: looking first');
  expect(session.state.history.past.map(({ event }) => event)).toEqual(['x']);
  await vi.waitUntil(() => session.state.history.past.length === 2, PATIENCE);
  expect(session.state.history.past.map(({ event }) => event)).toEqual(['x', 'card.envelope']);
  // US A2 takes 4 1/4 x 5 1/2 in (usual size, published by envelope makers).
  expect(session.state.sketch.card.envelope?.name).toContain('A2');
  await vi.waitUntil(() => !line().includes('envelope'), PATIENCE);
  vi.unstubAllGlobals();
});

test('of many pieces what was found stays, and its mends wait, until they have been looked at anew', async () => {
  vi.stubGlobal('Worker', AssemblyWorker);
  const sample = sampleSketch();
  const [strip] = sample.pieces.filter(({ id }) => id === 'strip');
  if (!strip) throw new Error('the sample has a strip');
  const tiles = Array.from(
    { length: 16 },
    (_, n): Edit => ({
      do: 'add-piece',
      piece: { ...strip, id: `tile-${n}`, name: `Tile ${n}`, punched: {} },
    }),
  );
  const element = document.createElement('trimwell-watch') as WatchElement;
  const session = new Session(applyEdits(sample, [...tiles, over]), planningPort());
  Object.assign(element, { session, pointing: new Pointing() });
  document.body.append(element);
  const text = (): string => element.renderRoot.querySelector('ul')?.textContent?.replace(/\s+/g, ' ') ?? '';
  await vi.waitUntil(() => text().includes('Strip reaches 1⁄2 in over the edge of the card. Move it in'), PATIENCE);
  session.dispatch({ event: 'x', edits: [{ do: 'place', piece: 'strip', x: inches(1 / 4), y: inches(3) }], at: 1 });
  await element.updateComplete;
  expect(text()).toContain('Strip reaches');
  element.renderRoot.querySelector<HTMLElement>('.act')?.click();
  await element.updateComplete;
  expect(text()).toContain('Move it in: looking first');
  await vi.waitUntil(() => !text().includes('Strip reaches'), PATIENCE);
  expect(session.state.history.past.map(({ event }) => event)).toEqual(['x']);
  vi.unstubAllGlobals();
});
