import { applyEdits, checkSketch, type Edit } from '@trimwell/sketch';
import { afterEach, beforeAll, expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
import { Session } from '../../session/session.js';
import { select } from '../../state/commands.js';
import { Pointing } from '../pointing.js';
import { fitCard } from './face-view.js';
import { WatchMarksElement } from './watch-marks.js';

beforeAll(() => customElements.define('trimwell-watch-marks', WatchMarksElement));
afterEach(() => document.body.replaceChildren());

const STAGE = { width: 300, height: 360 };

async function put(pieces: Readonly<Record<string, FlatPiece>>, edits: readonly Edit[] = []) {
  const sketch = applyEdits(flatCard(pieces), edits);
  const session = new Session(sketch, { onmessage: null, postMessage: () => {}, terminate: () => {} });
  const element = document.createElement('trimwell-watch-marks') as WatchMarksElement;
  Object.assign(element, { session, pointing: new Pointing(), view: fitCard(sketch.card, STAGE), stage: STAGE });
  document.body.append(element);
  await element.updateComplete;
  const marks = (): readonly HTMLElement[] => [...element.renderRoot.querySelectorAll<HTMLElement>('.mark')];
  const slip = (): HTMLElement | null => element.renderRoot.querySelector<HTMLElement>('.slip');
  /** Opens the slip at a piece, as by a key: the focus is on its mark before, and in the slip then. */
  const open = async (piece: string): Promise<void> => {
    const mark = marks().find(({ dataset }) => dataset['piece'] === piece);
    mark?.focus();
    mark?.click();
    await element.updateComplete;
    await element.updateComplete;
  };
  return { element, session, marks, slip, open };
}

test('marks of pieces that lie on each other stay on the stage, each beside the others', async () => {
  // All of them reach over the edge of the card, at one place.
  const pieces = Object.fromEntries(
    Array.from({ length: 14 }, (_, n): [string, FlatPiece] => [`tile-${n}`, { at: [3.5, 2, 1, 1] }]),
  );
  const { marks } = await put(pieces);
  expect(marks()).toHaveLength(14);
  const places = marks().map(({ style }) => [Number.parseFloat(style.left), Number.parseFloat(style.top)] as const);
  for (const [index, [x, y]] of places.entries()) {
    expect(x).toBeGreaterThanOrEqual(13);
    expect(x).toBeLessThanOrEqual(STAGE.width - 13);
    expect(y).toBeGreaterThanOrEqual(13);
    for (const [left, top] of places.slice(0, index))
      expect(Math.max(Math.abs(x - left), Math.abs(y - top))).toBeGreaterThan(25.8);
  }
  const rows = new Set(places.map(([, y]) => y));
  expect(rows.size).toBeGreaterThan(1);
});

const out: Readonly<Record<string, FlatPiece>> = { one: { at: [4, 1, 1, 1] }, two: { at: [4, 3, 1, 1] } };

test('a slip is closed when the focus goes on, and not when it goes between the slip and its mark', async () => {
  const { element, marks, slip, open } = await put(out);
  const field = document.body.appendChild(document.createElement('input'));
  await open('one');
  expect(slip()?.contains(element.shadowRoot?.activeElement ?? null)).toBe(true);
  marks()[0]?.focus();
  await element.updateComplete;
  expect(slip()).not.toBeNull();
  field.focus();
  await element.updateComplete;
  expect(slip()).toBeNull();
  expect(document.activeElement).toBe(field);
  await open('one');
  marks()[1]?.focus();
  await element.updateComplete;
  expect(slip()).toBeNull();
  expect(element.shadowRoot?.activeElement).toBe(marks()[1]);
});

test('a slip is closed when another piece is taken, and whoever was in it goes on at its piece', async () => {
  const { element, session, slip, open } = await put(out);
  const gone: unknown[] = [];
  element.addEventListener('mended', (event) => gone.push((event as CustomEvent).detail));
  await open('one');
  select('two')(session.state, session.dispatch, 1);
  await element.updateComplete;
  await element.updateComplete;
  expect(slip()).toBeNull();
  expect(gone).toEqual([{ piece: 'one' }]);
});

test('a slip does not come back by undo when what it told of was mended elsewhere', async () => {
  const { element, session, marks, slip, open } = await put(out);
  await open('one');
  const [fix] = checkSketch(session.state.sketch).map((finding) => finding.fix);
  session.dispatch({ event: 'mend.off-the-card', edits: fix ?? [], selection: ['one'], at: 1 });
  await element.updateComplete;
  expect(marks()).toHaveLength(1);
  session.undo();
  await element.updateComplete;
  expect(marks()).toHaveLength(2);
  expect(session.state.selection).toEqual(['one']);
  expect(slip()).toBeNull();
});
