import fc from 'fast-check';
import { expect, test } from 'vitest';
import { colourEdges } from './edge-colouring.js';
import { evenQuantities, evenSquares } from './even-quantities.js';

/** What is wrong with a colouring: an edge too many or too few, or two edges of one colour at one paper. */
function wrong(
  quantities: readonly (readonly number[])[],
  dealt: readonly (readonly number[])[],
  cards: number,
): string[] {
  const found: string[] = [];
  quantities.forEach((row, role) => {
    row.forEach((quantity, paper) => {
      const edges = dealt[role]?.filter((at) => at === paper).length;
      if (edges !== quantity) found.push(`role ${role}, paper ${paper}: ${edges} edges, not ${quantity}`);
    });
  });
  for (let card = 0; card < cards; card += 1) {
    const used = dealt.map((row) => row[card]);
    if (new Set(used).size !== used.length) found.push(`card ${card}: ${used.join()}`);
  }
  return found;
}

/** Quantities made of as many matchings as there are cards: a colouring exists, and roles and papers are full. */
const colourable = fc
  .record({
    papers: fc.integer({ min: 1, max: 12 }),
    roles: fc.integer({ min: 1, max: 10 }),
    cards: fc.integer({ min: 1, max: 40 }),
  })
  .filter(({ papers, roles }) => roles <= papers)
  .chain(({ papers, roles, cards }) =>
    fc
      .array(
        fc.shuffledSubarray(
          Array.from({ length: papers }, (_, at) => at),
          { minLength: roles, maxLength: roles },
        ),
        { minLength: cards, maxLength: cards },
      )
      .map((matchings) => ({
        cards,
        quantities: Array.from({ length: roles }, (_, role) =>
          Array.from(
            { length: papers },
            (__, paper) => matchings.filter((matching) => matching[role] === paper).length,
          ),
        ),
      })),
  );

test('a bipartite multigraph takes as many colours as its largest degree (König 1916)', () => {
  fc.assert(
    fc.property(colourable, ({ quantities, cards }) => {
      expect(wrong(quantities, colourEdges(quantities, cards), cards)).toEqual([]);
    }),
    { numRuns: 200 },
  );
});

test('a role with too few edges, and a paper with too many, are refused', () => {
  expect(() => colourEdges([[1, 1]], 3)).toThrow('role 0 has 2 blanks; allowed: 3');
  expect(() =>
    colourEdges(
      [
        [2, 0],
        [1, 1],
      ],
      2,
    ),
  ).toThrow('paper 0 is used 3 times; allowed: at most 2');
});

test('quantities are as even as the papers of other roles allow', () => {
  expect(
    evenQuantities(
      [
        [0, 1, 2],
        [0, 1, 2],
      ],
      3,
      [0, 1],
      6,
    ),
  ).toEqual([
    [2, 2, 2],
    [2, 2, 2],
  ]);
  // Two roles that share two papers use them up, so that the third role has only the third paper.
  expect(
    evenQuantities(
      [
        [0, 1],
        [0, 1],
        [0, 1, 2],
      ],
      3,
      [0, 1, 2],
      4,
    ),
  ).toEqual([
    [2, 2, 0],
    [2, 2, 0],
    [0, 0, 4],
  ]);
  // A role that has only one paper takes it from the other roles.
  expect(evenQuantities([[0], [0, 1, 2]], 3, [0, 1], 6)).toEqual([
    [6, 0, 0],
    [0, 3, 3],
  ]);
});

test('the most even split: 7 into 3 parts is 3, 2, 2', () => {
  expect(evenSquares(7, 3)).toBe(9 + 4 + 4);
});
