import type { Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { type FlatPiece, flatCard } from '../../../../../tests/kit/flat-card.js';
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
