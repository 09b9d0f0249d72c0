import { inches } from '@trimwell/geometry';
import { applyEdits, batchRecipe, planBatch, type Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
import { assemblySight } from '../../session/assembly-sight.js';
import { Session } from '../../session/session.js';
import { type KnownCard, type Watched, watchedOf } from './found.js';

const unknown: KnownCard = { view: null, failure: null, post: null };

function open(sketch: Sketch): Session {
  return new Session(sketch, { onmessage: null, postMessage: () => {}, terminate: () => {} });
}

const codes = (found: readonly Watched[]): readonly string[] => found.map(({ code, piece }) => `${code} ${piece}`);

/** More pieces than are checked at once, each by itself. */
const many = Object.fromEntries(
  Array.from({ length: 20 }, (_, n): [string, FlatPiece] => [
    `tile-${n}`,
    { at: [1 / 4 + (n % 5) * (3 / 4), 1 / 4 + Math.floor(n / 5), 1 / 2, 1 / 2] },
  ]),
);

test('of many pieces what was found stays for the same sketch only', () => {
  const session = open(flatCard({ ...many, 'tile-0': { at: [4, 1, 1, 1] } }));
  expect(codes(watchedOf(session, unknown))).toEqual(['off-the-card tile-0']);
  session.open({ ...flatCard(many), id: 'another' });
  expect(codes(watchedOf(session, unknown))).toEqual([]);
});

/** What is known of a card that has been looked at as it lies. */
function looked(sketch: Sketch): KnownCard {
  const batch = planBatch(batchRecipe(sketch), 4);
  return { ...unknown, view: { sketch, sight: assemblySight({ sketch, batch, post: null }) } };
}

test('when a size off the ruler is mended, its cuts are not told for as long as the card has not been looked at', () => {
  const session = open(flatCard({ tile: { at: [1, 1, 1 + 1 / 40, 1] } }));
  const card = looked(session.state.sketch);
  expect(card.view?.sight.findings.map(({ code }) => code)).toContain('cut-off-the-ruler');
  const found = watchedOf(session, card);
  expect(codes(found)).toEqual(['off-the-ruler tile']);
  session.dispatch({ event: 'x', edits: found[0]?.fix ?? [], at: 1 });
  expect(codes(watchedOf(session, card))).toEqual([]);
});

test('what is locked in its place is told of without a mend that would move it, also by what it mats', () => {
  const sketch = flatCard({
    under: { at: [1, 1, 1 / 2, 1 / 2] },
    over: { at: [1, 1, 1, 1] },
    out: { at: [4, 3, 1, 1] },
    behind: { at: [3, 3, 1, 1] },
    round: { at: [2.5, 1, 1, 1], radius: 1 },
  });
  const locked = (piece: string) => ({ do: 'alter-piece', piece, locked: true }) as const;
  const mends = (edits: Parameters<typeof applyEdits>[1]): readonly string[] =>
    watchedOf(open(applyEdits(sketch, edits)), unknown).flatMap(({ code, fix }) => (fix.length > 0 ? [code] : []));
  expect(mends([])).toEqual(['radius-too-large', 'hidden', 'off-the-card']);
  // Its corners may be rounded all the same.
  expect(mends([locked('round'), locked('out')])).toEqual(['radius-too-large', 'hidden']);
  expect(mends([locked('under')])).toEqual(['radius-too-large', 'off-the-card']);
  const mats = { piece: 'out', reveal: inches(1 / 8) };
  expect(mends([{ do: 'mat', piece: 'behind', mats }])).toContain('off-the-card');
  expect(mends([{ do: 'mat', piece: 'behind', mats }, locked('behind')])).not.toContain('off-the-card');
});
