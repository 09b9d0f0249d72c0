import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Cards, differentCards, joinHalves, moreDifferent, mostAlike, scattered } from './card-differences.js';
import { differentLooks } from './different-looks.js';

const half = (...times: readonly number[]): Cards => times.flatMap((count, paper) => Array(count).fill([paper]));

test('two halves whose parts come in uneven numbers are joined without two cards alike', () => {
  const joined = joinHalves(half(3, 2, 1), half(1, 2, 3), 0);
  expect([joined.length, differentCards(joined), mostAlike(joined)]).toEqual([6, 6, 1]);
});

test('every half is used as often as it comes', () => {
  fc.assert(
    fc.property(fc.array(fc.nat(4), { minLength: 1, maxLength: 20 }), fc.nat(6), fc.nat(9), (papers, more, turn) => {
      const left = papers.map((paper) => [paper]);
      const right = papers.map((paper) => [(paper + more) % 5]);
      const joined = joinHalves(left, right, turn);
      const sorted = (cards: Cards, role: number) => cards.map((card) => card[role]).sort();
      expect(sorted(joined, 0)).toEqual(sorted(left, 0));
      expect(sorted(joined, 1)).toEqual(sorted(right, 0));
    }),
  );
});

const COUNTS = (cards: Cards) => [0, 1, 2].map((role) => cards.map((card) => card[role]).sort());

test('exchanges keep the quantities and the contrasts, and never lose a different card', () => {
  // Roles 0 and 1 contrast; role 2 is free.
  const contrasts = [[1], [0], []];
  const card = fc.tuple(fc.nat(3), fc.nat(3), fc.nat(3)).filter(([one, other]) => one !== other);
  fc.assert(
    fc.property(fc.array(card, { minLength: 2, maxLength: 30 }), (cards) => {
      for (const after of [scattered(cards, contrasts), moreDifferent(cards, { contrasts, enough: cards.length })]) {
        expect(COUNTS(after)).toEqual(COUNTS(cards));
        expect(after.filter(([one, other]) => one === other)).toEqual([]);
      }
      const better = moreDifferent(cards, { contrasts, enough: cards.length });
      expect(differentCards(better)).toBeGreaterThanOrEqual(differentCards(cards));
    }),
  );
});

test('cards that are alike are told apart by exchanging a role that contrasts with none', () => {
  const cards = [
    [0, 1, 0],
    [0, 1, 0],
    [1, 0, 1],
    [1, 0, 1],
  ];
  expect(differentCards(moreDifferent(cards, { contrasts: [[1], [0], []], enough: 4 }))).toBe(4);
});

test('different looks with given evenness: found when there are any, and proven when there are none', () => {
  // Three looks of two roles; two cards. Even is 1 + 1 in each role, squares 4: only the first and the third look do.
  const looks = [
    [0, 1],
    [0, 0],
    [1, 0],
  ];
  expect(differentLooks(looks, 2, 4)).toEqual([looks[0], looks[2]]);
  expect(differentLooks(looks, 2, 3)).toBeNull();
  expect(differentLooks(looks, 4, 99)).toBeNull();
});

test('a search that is too long gives up rather than claim that there is nothing', () => {
  // Nine papers, each twice, fix the second role at 10 and 8, so that 9 and 9 is out of reach, but that shows only late.
  const looks = Array.from({ length: 36 }, (_, at) => [at % 9, (at % 9) % 2, Math.floor(at / 9)]);
  expect(differentLooks(looks, 18, 9 * 2 ** 2 + 2 * 9 ** 2 + 2 * 5 ** 2 + 2 * 4 ** 2)).toBeUndefined();
});
