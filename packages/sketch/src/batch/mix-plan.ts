import { type Cards, differentCards, joinHalves, moreDifferent } from './card-differences.js';
import { allLooks, dealGroup, type GroupLooks, groupLooks } from './deal-group.js';
import { differentLooks } from './different-looks.js';
import { timesLooks } from './looks.js';
import { clashReason, type Difference, differenceReason } from './mix-reasons.js';
import { contrastingPairs, type DealtRoles, dealtRoles, fixedPaper } from './mix-roles.js';
import type { BatchRecipe } from './recipe.js';

/** One role that draws on a mix. */
export interface MixRole {
  /** The piece. */
  readonly piece: string;
  readonly perCard: number;
  /** In the order of the mix: how many cards get this role from each paper, and how many blanks that makes. */
  readonly papers: readonly { readonly paper: string; readonly cards: number; readonly blanks: number }[];
}

/** Two pieces that should contrast and share a paper on a card, counted from 0. */
export interface MixClash {
  readonly card: number;
  readonly pieces: readonly [string, string];
  readonly paper: string;
}

/** Which paper every card gets in every role that draws on a mix. */
export interface MixPlan {
  readonly cards: number;
  readonly roles: readonly MixRole[];
  /** `deal[card][role]` is a paper; all copies of a role on one card share it. */
  readonly deal: readonly (readonly string[])[];
  readonly clashes: readonly MixClash[];
  /** How many different cards there are, looking only at the roles. */
  readonly different: number;
  /** How many different cards the contrasts allow, or null when they are too many to count cheaply. */
  readonly looks: number | null;
  readonly allDifferent: Difference;
  /** Sentences that say why cards are alike, or why contrasts clash; empty when all is well. */
  readonly reasons: readonly string[];
}

/** How many looks of whole cards are searched at most for a deal in which all differ. */
const MOST_LOOKS = 400;
/** How many plans are remembered. */
const REMEMBERED = 64;

const remembered = new Map<string, MixPlan>();

/**
 * Deals the papers of the mixes to `cards` cards: every card has every role once; pieces that contrast share a paper as
 * seldom as possible; each role takes its papers as evenly as that allows, so that the mix's papers are cut alike
 * wherever possible; and cards differ as much as possible. Roles that all contrast are an edge colouring of the bipartite
 * multigraph of roles and papers with one colour for each card (König 1916, see `colourEdges`). A paper named twice in a
 * mix counts once. Never throws; asked again for equal roles, contrasts and cards it gives back the same plan.
 */
export function mixPlan(recipe: BatchRecipe, cards: number): MixPlan {
  const parts = recipe.parts.map(({ blank, perCard, papers }) => [blank, perCard, papers]);
  const key = JSON.stringify([cards, recipe.contrast, parts]);
  const known = remembered.get(key);
  if (known) return known;
  const plan = dealMixes(recipe, cards);
  const [oldest] = remembered.keys();
  if (remembered.size >= REMEMBERED && oldest !== undefined) remembered.delete(oldest);
  remembered.set(key, plan);
  return plan;
}

function dealMixes(recipe: BatchRecipe, cards: number): MixPlan {
  const roles = dealtRoles(recipe);
  const groups = roles.groups.map(groupLooks);
  const looks = groups.map((group) => group.looks).reduce(timesLooks, { atLeast: 1, exact: true });
  const { dealt, allDifferent } = differing(roles, groups, cards);
  const deal = inTurns(dealt).map((card) => card.map((paper) => roles.papers[paper] ?? ''));
  const clashes = clashesIn(recipe, roles, deal);
  const different = differentCards(dealt);
  return {
    cards,
    roles: roles.parts.map(({ blank, perCard, papers }, role) => ({
      piece: blank,
      perCard,
      papers: [...new Set(papers)].map((paper) => {
        const times = deal.filter((card) => card[role] === paper).length;
        return { paper, cards: times, blanks: times * perCard };
      }),
    })),
    deal,
    clashes,
    different,
    looks: looks.exact ? looks.atLeast : null,
    allDifferent,
    reasons: [
      ...(clashes.length > 0 ? clashReason(recipe, roles, groups) : []),
      ...(roles.parts.length > 0
        ? differenceReason(roles, groups, { cards, different, looks: looks.atLeast, allDifferent })
        : []),
    ],
  };
}

/** The cards by role, in the order of `roles.parts`, and what is known about their differences. */
function differing(
  roles: DealtRoles,
  groups: readonly GroupLooks[],
  cards: number,
): { readonly dealt: Cards; readonly allDifferent: Difference } {
  const total = groups.map((group) => group.looks).reduce(timesLooks, { atLeast: 1, exact: true });
  const deals = groups.map((known) => {
    const others = groups.filter((other) => other !== known).map((other) => other.looks);
    return dealGroup(known, cards, others.reduce(timesLooks, { atLeast: 1, exact: true }).atLeast);
  });
  const order = groups.flatMap(({ group }) => group.roles);
  const inOrder = (card: readonly number[]): readonly number[] =>
    roles.parts.map((_, role) => card[order.indexOf(role)] ?? 0);
  let dealt: Cards = Array.from({ length: cards }, () => []);
  deals.forEach((deal, turn) => {
    dealt = turn === 0 ? deal.cards : joinHalves(dealt, deal.cards, turn);
  });
  dealt = dealt.map(inOrder);
  const enough = total.exact ? Math.min(cards, total.atLeast) : cards;
  if (differentCards(dealt) < enough) {
    dealt = moreDifferent(dealt, { contrasts: contrastsOf(roles, groups), enough });
  }
  if (differentCards(dealt) === cards) return { dealt, allDifferent: 'yes' };
  if (total.exact && total.atLeast < cards) return { dealt, allDifferent: 'more cards than looks' };
  if (!deals.every((deal) => deal.evenest)) return { dealt, allDifferent: 'not found' };
  const found = searched(groups, cards, squaresOf(dealt));
  if (found) return { dealt: found.map(inOrder), allDifferent: 'yes' };
  return { dealt, allDifferent: found === null ? 'not while even' : 'not found' };
}

/** See `differentLooks`; undefined also when there are too many looks to search. */
function searched(groups: readonly GroupLooks[], cards: number, squares: number): Cards | null | undefined {
  let whole: Cards = [[]];
  for (const { group, clashes } of groups) {
    const looks = allLooks(group, clashes);
    if (!looks || looks.length * whole.length > MOST_LOOKS) return undefined;
    whole = whole.flatMap((card) => looks.map((look) => [...card, ...look]));
  }
  return differentLooks(whole, cards, squares);
}

function squaresOf(dealt: Cards): number {
  const roles = dealt[0]?.length ?? 0;
  let sum = 0;
  for (let role = 0; role < roles; role += 1) {
    const times = new Map<number, number>();
    for (const card of dealt) times.set(card[role] ?? 0, (times.get(card[role] ?? 0) ?? 0) + 1);
    for (const count of times.values()) sum += count * count;
  }
  return sum;
}

function contrastsOf(roles: DealtRoles, groups: readonly GroupLooks[]): readonly (readonly number[])[] {
  const contrasts = roles.parts.map((): readonly number[] => []);
  for (const { group } of groups) {
    group.roles.forEach((role, at) => {
      contrasts[role] = (group.contrasts[at] ?? []).map((other) => group.roles[other] ?? 0);
    });
  }
  return contrasts;
}

/** The same cards in an order in which the papers of the first role take turns. */
function inTurns(dealt: Cards): Cards {
  const piles = new Map<number, (readonly number[])[]>();
  for (const card of dealt) {
    const pile = piles.get(card[0] ?? 0);
    if (pile) pile.push(card);
    else piles.set(card[0] ?? 0, [card]);
  }
  const tallest = Math.max(0, ...[...piles.values()].map((pile) => pile.length));
  const rows = [...piles].sort(([one], [other]) => one - other).map(([, pile]) => pile);
  return Array.from({ length: tallest }, (_, level) =>
    rows.flatMap((pile) => (pile[level] ? [pile[level]] : [])),
  ).flat();
}

function clashesIn(recipe: BatchRecipe, roles: DealtRoles, deal: readonly (readonly string[])[]): readonly MixClash[] {
  const pairs = contrastingPairs(recipe).map((pair) =>
    pair.map((part) => ({ blank: part.blank, role: roles.parts.indexOf(part), fixed: fixedPaper(part) })),
  );
  if (pairs.length === 0) return [];
  return deal.flatMap((papers, card) =>
    pairs.flatMap(([one, other]): readonly MixClash[] => {
      if (!one || !other) return [];
      const paper = papers[one.role] ?? one.fixed;
      return paper !== null && paper === (papers[other.role] ?? other.fixed)
        ? [{ card, pieces: [one.blank, other.blank], paper }]
        : [];
    }),
  );
}
