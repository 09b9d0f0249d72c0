import { type Cards, differentCards, moreDifferent, mostAlike, scattered } from './card-differences.js';
import { colourEdges } from './edge-colouring.js';
import { evenQuantities, evenSquares } from './even-quantities.js';
import { countLooks, eachLook, fewestClashes, type Look, type LookCount } from './looks.js';
import { allContrast, commonList, type RoleGroup } from './mix-roles.js';

/** How many looks of one group are gone through card by card at most. */
const MOST_LOOKS = 400;
/** How many steps the look for one card's look takes at most. */
const STEPS_PER_CARD = 2_000;

/** What can be said of a group of roles before any card is dealt. */
export interface GroupLooks {
  /** The group; papers that a fixed piece takes are left out where a card without any clash is possible. */
  readonly group: RoleGroup;
  /** The fewest clashes on a card, and a look that has them. */
  readonly clashes: number;
  readonly look: Look;
  readonly looks: LookCount;
}

/** What a group of roles allows. */
export function groupLooks(given: RoleGroup): GroupLooks {
  const { clashes, look } = fewestClashes(given);
  const group = clashes > 0 ? given : withoutTaken(given);
  return { group, clashes, look, looks: countLooks(group, clashes) };
}

function withoutTaken(group: RoleGroup): RoleGroup {
  const lists = group.lists.map((list, role) => list.filter((_, at) => group.taken[role]?.[at] === 0));
  return { ...group, lists, taken: lists.map((list) => list.map(() => 0)) };
}

/** The cards of one group of roles, and whether no deal with the same contrasts uses the papers more evenly. */
export interface GroupDeal {
  readonly cards: Cards;
  readonly evenest: boolean;
}

/**
 * Deals the roles of one group to `cards` cards: the fewest clashes, then papers as even as possible, then as many
 * different looks as can be found, then few different papers' jobs. A look may come up to `mostAlikeAllowed` times
 * without harm, because the other groups tell such cards apart.
 */
export function dealGroup(known: GroupLooks, cards: number, mostAlikeAllowed: number): GroupDeal {
  const common = commonList(known.group);
  if (common) return { cards: dealCommon(known, common, cards, mostAlikeAllowed), evenest: true };
  const { group, clashes, look } = known;
  if (clashes === 0 && allContrast(group)) {
    const papers = Math.max(...group.lists.flat()) + 1;
    const dealt = byCard(colourEdges(evenQuantities(group.lists, papers, look, cards), cards), cards);
    const { contrasts, lists } = group;
    const mixed = scattered(dealt, contrasts);
    return { cards: moreDifferent(mixed, { contrasts, enough: mostDifferent(known, cards), lists }), evenest: true };
  }
  return dealOneByOne(known, cards);
}

/** The most different cards that there can be, as far as known. */
function mostDifferent({ looks }: GroupLooks, cards: number): number {
  return looks.exact ? Math.min(cards, looks.atLeast) : cards;
}

function byCard(dealt: readonly (readonly number[])[], cards: number): Cards {
  return Array.from({ length: cards }, (_, card) => dealt.map((row) => row[card] ?? 0));
}

/**
 * All roles draw on the same papers. A look and those that arise from it by going on by one, two, … papers use every
 * paper once in every role, and two such rounds have either all looks in common or none: whole rounds are even and all
 * different. Cards left over come from a round that is cut short, or, so that fewer papers differ in what is cut from
 * them, from an edge colouring in which the same papers come once more in every role.
 */
function dealCommon(known: GroupLooks, common: readonly number[], cards: number, mostAlikeAllowed: number): Cards {
  const { group, clashes } = known;
  const size = common.length;
  const rounds = Math.floor(cards / size);
  const over = cards - rounds * size;
  const starts = firstLooks(known, common, rounds + 1);
  const round = (index: number, length = size): Cards =>
    Array.from({ length }, (_, by) =>
      (starts[index % starts.length] ?? known.look).map(
        (paper) => common[(common.indexOf(paper) + by) % size] ?? paper,
      ),
    );
  const last = (rounds + 1) % starts.length;
  const whole = (count: number): Cards => Array.from({ length: count }, (_, index) => round(index + 1)).flat();
  const plain = (): Cards => [...whole(rounds), ...round(last, over)];
  if (over === 0 || clashes > 0 || !allContrast(group) || group.roles.length === 1) return plain();
  const enough = mostDifferent(known, cards);
  const good = (deal: Cards): boolean => differentCards(deal) >= enough || mostAlike(deal) <= mostAlikeAllowed;
  const plainDeal = plain();
  let best = plainDeal;
  for (const { coloured, quantities } of alignedQuantities(group.roles.length, common, rounds, over)) {
    const dealt = byCard(colourEdges(quantities, coloured * size + over), coloured * size + over);
    const first = [...whole(rounds - coloured), ...dealt];
    const deal = good(first) ? first : moreDifferent(first, { contrasts: group.contrasts, enough });
    if (good(deal)) return deal;
    if (differentCards(deal) > differentCards(best)) best = deal;
  }
  return best;
}

/** Looks that begin with the first paper: one for each round of looks, as many as there are or as are wanted. */
function firstLooks({ group, clashes }: GroupLooks, common: readonly number[], wanted: number): readonly Look[] {
  const starts: Look[] = [];
  const fixed = { ...group, lists: group.lists.map((_, role) => (role === 0 ? common.slice(0, 1) : common)) };
  eachLook({ ...fixed, taken: fixed.lists.map((list) => list.map(() => 0)) }, clashes, (look) => {
    starts.push([...look]);
    return starts.length < wanted;
  });
  return starts;
}

/**
 * Quantities for roles that all contrast, with the cards left over on as few different sets of papers as possible: the
 * same set for all roles, with as many whole rounds as that needs; else one set for each block of roles that fit on it.
 */
function alignedQuantities(
  roles: number,
  common: readonly number[],
  rounds: number,
  over: number,
): readonly { readonly coloured: number; readonly quantities: readonly (readonly number[])[] }[] {
  const papers = Math.max(...common) + 1;
  const rows = (coloured: number, block: number) =>
    Array.from({ length: roles }, (_, role) => {
      const row = new Array<number>(papers).fill(0);
      const first = Math.floor(role / block) * over;
      common.forEach((paper, at) => {
        row[paper] = coloured + Number(at >= first && at < first + over);
      });
      return row;
    });
  const spare = common.length - roles;
  const coloured = over >= roles ? 0 : spare > 0 ? Math.ceil((roles - over) / spare) : Number.POSITIVE_INFINITY;
  const blocks = Math.ceil(roles / Math.min(over, roles));
  return [
    ...(coloured <= rounds ? [{ coloured, quantities: rows(coloured, roles) }] : []),
    ...(blocks > 1 && blocks * over <= common.length ? [{ coloured: 0, quantities: rows(0, over) }] : []),
  ];
}

/** Any other group: every card takes a look with the fewest clashes, the papers used least so far first. */
function dealOneByOne(known: GroupLooks, cards: number): GroupDeal {
  const { group, clashes, look } = known;
  const used = group.lists.map(() => new Map<number, number>());
  const usedOf = (role: number, paper: number): number => used[role]?.get(paper) ?? 0;
  const count = (dealt: Look, by: number): void => {
    dealt.forEach((paper, role) => {
      used[role]?.set(paper, usedOf(role, paper) + by);
    });
  };
  const deal = Array.from({ length: cards }, () => {
    const orders = group.lists.map((list, role) =>
      list.map((_, at) => at).sort((one, other) => usedOf(role, list[one] ?? 0) - usedOf(role, list[other] ?? 0)),
    );
    const sorted: RoleGroup = {
      ...group,
      lists: orders.map((order, role) => order.map((at) => group.lists[role]?.[at] ?? 0)),
      taken: orders.map((order, role) => order.map((at) => group.taken[role]?.[at] ?? 0)),
    };
    let found = look;
    eachLook(
      sorted,
      clashes,
      (next) => {
        found = [...next];
        return false;
      },
      { steps: STEPS_PER_CARD },
    );
    count(found, 1);
    return found;
  });
  const looks = allLooks(group, clashes) ?? [];
  const price = (paper: number, role: number): number => usedOf(role, paper);
  for (let again = looks.length > 0; again; ) {
    again = false;
    deal.forEach((before, card) => {
      count(before, -1);
      const cost = (after: Look): number => after.reduce((sum, paper, role) => sum + price(paper, role), 0);
      const best = looks.reduce((least, after) => (cost(after) < cost(least) ? after : least), before);
      count(best, 1);
      if (best === before) return;
      deal[card] = best;
      again = true;
    });
  }
  const squares = used.reduce((sum, row) => sum + [...row.values()].reduce((part, times) => part + times ** 2, 0), 0);
  const least = group.lists.reduce((sum, list) => sum + evenSquares(cards, list.length), 0);
  const exchanges = { contrasts: group.contrasts, enough: mostDifferent(known, cards) };
  const mixed = mostAlike(deal) > 1 ? scattered(deal, group.contrasts) : deal;
  const dealt = moreDifferent(mixed, clashes === 0 ? { ...exchanges, lists: group.lists } : exchanges);
  return { cards: dealt, evenest: squares === least };
}

/** All looks of `group` with `clashes` clashes, or null when there are too many. */
export function allLooks(group: RoleGroup, clashes: number): readonly Look[] | null {
  const looks: Look[] = [];
  const ended = eachLook(group, clashes, (look) => {
    looks.push([...look]);
    return looks.length <= MOST_LOOKS;
  });
  return ended && looks.length <= MOST_LOOKS ? looks : null;
}
