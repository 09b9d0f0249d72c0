import { inches } from '@trimwell/geometry';
import { applyEdits, type Edit } from '@trimwell/sketch';
import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { AssemblyWorker, planningPort } from '../../../../../tests/kit/assembly-worker.js';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { cardWatchOf } from '../../session/card-watch-of.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
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
