import { inches, ticks } from '@trimwell/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { checkMix } from './check-mix.js';
import { cutJobs } from './cut-jobs.js';
import { mixPlan } from './mix-plan.js';
import { type BatchRecipe, sketchTrimmer } from './recipe.js';

const PAPERS = 'abcdefghijkl'.split('');

/** A recipe of roles named r0, r1, …, each from the papers whose letters its word has. */
function recipeOf(words: readonly string[], contrast: readonly (readonly number[])[] = [], perCard = 1): BatchRecipe {
  return {
    cards: 1,
    trimmer: sketchTrimmer('in', []),
    papers: PAPERS.map((id) => ({
      id,
      width: inches(12),
      height: inches(12),
      directional: false,
      margins: { top: ticks(0), right: ticks(0), bottom: ticks(0), left: ticks(0) },
      sheets: null,
      price: null,
    })),
    parts: words.map((word, at) => ({
      blank: `r${at}`,
      width: inches(2),
      height: inches(3),
      perCard,
      papers: word.split(''),
    })),
    contrast: contrast.map((group) => group.map((at) => `r${at}`)),
    centres: [],
  };
}

/** How many of the mix's papers differ in what is cut from them. */
function jobsOf(words: readonly string[], contrast: readonly (readonly number[])[], cards: number): number {
  const { roles } = mixPlan(recipeOf(words, contrast), cards);
  const jobs = PAPERS.map((paper) =>
    roles.map(({ papers }) => papers.find((entry) => entry.paper === paper)?.cards ?? 0).join(),
  );
  return new Set(jobs.filter((_, at) => words.some((word) => word.includes(PAPERS[at] ?? '')))).size;
}

function squares(deal: readonly (readonly string[])[]): number {
  const times = new Map<string, number>();
  for (const card of deal) {
    card.forEach((paper, role) => {
      times.set(`${role}${paper}`, (times.get(`${role}${paper}`) ?? 0) + 1);
    });
  }
  return [...times.values()].reduce((sum, count) => sum + count * count, 0);
}

const allPairs = (roles: number): readonly (readonly number[])[] => [Array.from({ length: roles }, (_, at) => at)];

test('two roles and three papers: every paper gives the same numbers, and six cards are the six looks', () => {
  const plan = mixPlan(recipeOf(['abc', 'abc'], [[0, 1]]), 6);
  expect(plan.roles.flatMap(({ papers }) => papers.map(({ cards }) => cards))).toEqual([2, 2, 2, 2, 2, 2]);
  expect(plan).toMatchObject({ different: 6, looks: 6, allDifferent: 'yes', clashes: [], reasons: [] });
  expect(new Set(plan.deal.map((card) => card.join('')))).toEqual(new Set(['ab', 'ac', 'ba', 'bc', 'ca', 'cb']));
});

test('more cards than looks is said with the count', () => {
  const plan = mixPlan(recipeOf(['ab', 'ab'], [[0, 1]]), 6);
  expect(plan).toMatchObject({ different: 2, looks: 2, allDifferent: 'more cards than looks' });
  expect(plan.reasons).toEqual(['6 cards, but 2 papers in 2 contrasting roles give only 2 looks.']);
});

test('a fixed paper keeps a contrasting role away from it', () => {
  const plan = mixPlan(recipeOf(['a', 'abc', 'abc'], [[0, 1]]), 6);
  expect(plan.deal.map(([paper]) => paper)).not.toContain('a');
  expect(plan).toMatchObject({ clashes: [], looks: 6, allDifferent: 'yes' });
});

test('more contrasting roles than papers: the fewest clashes, each listed, and why', () => {
  const recipe = recipeOf(['ab', 'ab', 'ab'], allPairs(3));
  const plan = mixPlan(recipe, 4);
  expect(plan.clashes).toHaveLength(4);
  expect(checkMix(recipe, plan)).toEqual([]);
  expect(plan.reasons[0]).toBe(
    'r0, r1 and r2 should contrast, but there are only 2 papers (a and b): 1 clash on every card.',
  );
  const fixed = mixPlan(recipeOf(['a', 'a'], [[0, 1]]), 2);
  expect(fixed.clashes).toEqual([0, 1].map((card) => ({ card, pieces: ['r0', 'r1'], paper: 'a' })));
  expect(fixed.reasons).toEqual(['r0 and r1 should contrast, but both are always cut from a.']);
});

test('cards left over come from the same papers in every role, so that only two jobs arise', () => {
  expect(jobsOf(['abc', 'abc'], [[0, 1]], 4)).toBe(2);
  expect(jobsOf(['abcd', 'abcd', 'abcd'], allPairs(3), 14)).toBe(2);
  expect(jobsOf(['abc', 'abc'], [], 7)).toBe(2);
  expect(jobsOf(['abcd', 'abcd', 'abcd', 'abcd'], allPairs(4), 14)).toBe(2);
});

test('the copies of a role on one card share its paper', () => {
  const plan = mixPlan(recipeOf(['ab'], [], 3), 4);
  expect(plan.roles[0]?.papers).toEqual([
    { paper: 'a', cards: 2, blanks: 6 },
    { paper: 'b', cards: 2, blanks: 6 },
  ]);
  const blanks = cutJobs(recipeOf(['a', 'ab'], [], 3), 4).flatMap(({ job }) => job.blanks);
  expect(blanks.map(({ id, quantity }) => [id, quantity])).toEqual([
    ['r0', 12],
    ['r1--a', 6],
    ['r1--b', 6],
  ]);
});

const word = (letters: number) =>
  fc.subarray(PAPERS.slice(0, letters), { minLength: 1 }).map((papers) => papers.join(''));

function anyMix(roles: number, letters: number, most: number) {
  return fc.record({
    words: fc.array(word(letters), { minLength: 1, maxLength: roles }),
    contrast: fc.array(fc.uniqueArray(fc.nat(roles - 1), { minLength: 2, maxLength: roles }), { maxLength: 2 }),
    cards: fc.integer({ min: 1, max: most }),
  });
}

const inside = (contrast: readonly (readonly number[])[], roles: number) =>
  contrast.map((group) => group.filter((at) => at < roles));

test('every plan is sound, and the deal is the same when made again', () => {
  fc.assert(
    fc.property(anyMix(6, 12, 60), ({ words, contrast, cards }) => {
      const recipe = recipeOf(words, inside(contrast, words.length));
      const plan = mixPlan(recipe, cards);
      expect(checkMix(recipe, plan)).toEqual([]);
      // Another number of copies is another plan, made anew, with the same deal.
      expect(mixPlan({ ...recipe, parts: recipe.parts.map((part) => ({ ...part, perCard: 2 })) }, cards).deal).toEqual(
        plan.deal,
      );
    }),
    { numRuns: 300 },
  );
});

test('roles of one mix: even to one, without clashes as soon as there are papers enough, all different when looks suffice', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 12 }),
      fc.integer({ min: 1, max: 10 }),
      fc.integer({ min: 1, max: 120 }),
      fc.boolean(),
      (papers, roles, cards, contrasting) => {
        const words = Array.from({ length: roles }, () => PAPERS.slice(0, papers).join(''));
        const recipe = recipeOf(words, contrasting && roles > 1 ? allPairs(roles) : []);
        const plan = mixPlan(recipe, cards);
        expect(checkMix(recipe, plan)).toEqual([]);
        for (const role of plan.roles) {
          const counts = role.papers.map((entry) => entry.cards);
          expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
        }
        if (contrasting && roles > papers) return;
        expect(plan.clashes).toEqual([]);
        if (plan.looks === null || plan.looks >= cards) expect(plan.allDifferent).toBe('yes');
        else expect([plan.allDifferent, plan.different]).toEqual(['more cards than looks', plan.looks]);
      },
    ),
    { numRuns: 300 },
  );
});

/** Every look of a card, and how many clashes it has. */
function looksOf(words: readonly string[], contrast: readonly (readonly number[])[]) {
  const looks = words.reduce<string[]>(
    (whole, letters) => whole.flatMap((look) => letters.split('').map((at) => look + at)),
    [''],
  );
  const clashing = (look: string): number => {
    let clashes = 0;
    for (let one = 0; one < words.length; one += 1) {
      for (let other = one + 1; other < words.length; other += 1) {
        const together = contrast.some((group) => group.includes(one) && group.includes(other));
        if (together && look[one] === look[other]) clashes += 1;
      }
    }
    return clashes;
  };
  return looks.map((look) => ({ look, clashes: clashing(look) }));
}

/** All multisets of `size` out of `things`. */
function* multisets<T>(things: readonly T[], size: number, from = 0): Generator<readonly T[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let at = from; at < things.length; at += 1) {
    for (const rest of multisets(things, size - 1, at)) yield [things[at] as T, ...rest];
  }
}

test('against every possible deal: clashes fewest, papers evenest, and "cannot all differ" only when they cannot', () => {
  const proofs = new Set<string>();
  fc.assert(
    fc.property(anyMix(3, 4, 5), ({ words, contrast, cards }) => {
      const groups = inside(contrast, words.length);
      const plan = mixPlan(recipeOf(words, groups), cards);
      const all = looksOf(words, groups);
      const fewest = Math.min(...all.map(({ clashes }) => clashes));
      expect(plan.clashes).toHaveLength(fewest * cards);
      const looks = all.filter(({ clashes }) => clashes === fewest).map(({ look }) => look);
      expect(plan.looks).toBe(looks.length);
      fc.pre(looks.length ** cards < 1e6);
      const mixed = words.flatMap((letters, role) => (letters.length > 1 ? [role] : []));
      let least = Number.POSITIVE_INFINITY;
      let most = 0;
      for (const deal of multisets(looks, cards)) {
        const sum = squares(deal.map((look) => mixed.map((role) => look[role] ?? '')));
        if (sum < least) most = 0;
        if (sum <= least) most = Math.max(most, new Set(deal).size);
        least = Math.min(least, sum);
      }
      expect(squares(plan.deal)).toBe(least);
      expect(plan.allDifferent === 'yes').toBe(most === cards);
      expect(plan.allDifferent === 'more cards than looks').toBe(looks.length < cards);
      expect(plan.allDifferent).not.toBe('not found');
      proofs.add(plan.allDifferent);
    }),
    { numRuns: 700, seed: 7 },
  );
  expect(proofs.has('more cards than looks')).toBe(true);
});

test('cards that only an uneven use of the papers would tell apart are proven alike', () => {
  const plan = mixPlan(recipeOf(['abcd', 'ab', 'ac'], allPairs(3)), 6);
  expect(plan).toMatchObject({ looks: 6, allDifferent: 'not while even', clashes: [] });
  expect(plan.reasons).toEqual([
    `${plan.different} of 6 cards differ: no more can while the papers are used this evenly.`,
  ]);
});
