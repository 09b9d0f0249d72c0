import { applyEdits, type Edit } from '@trimwell/sketch';
import { afterEach, beforeAll, expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
import { Session } from '../../session/session.js';
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
  return { element, session, marks };
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
