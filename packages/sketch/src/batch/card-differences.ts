/** Cards as they are dealt: `cards[card][role]` is a paper. */
export type Cards = readonly (readonly number[])[];

/** How many evaluated exchanges one improvement may take. */
const MOST_EXCHANGES = 8_000;

function keyOf(card: readonly number[]): string {
  return card.join();
}

/** A short key for cards like `cards`: a number where the papers of all roles fit into one, else a text. */
function keysFor(cards: Cards): (card: readonly number[]) => number | string {
  const roles = cards[0]?.length ?? 0;
  const base = cards.reduce((most, card) => card.reduce((high, paper) => Math.max(high, paper + 1), most), 1);
  if (base ** roles > Number.MAX_SAFE_INTEGER) return keyOf;
  return (card) => card.reduce((key, paper) => key * base + paper, 0);
}

function tally<Key>(keys: readonly Key[]): Map<Key, number> {
  const times = new Map<Key, number>();
  for (const key of keys) times.set(key, (times.get(key) ?? 0) + 1);
  return times;
}

/** How many different cards there are. */
export function differentCards(cards: Cards): number {
  return new Set(cards.map(keyOf)).size;
}

/** How often the commonest look comes. */
export function mostAlike(cards: Cards): number {
  return Math.max(0, ...tally(cards.map(keyOf)).values());
}

/**
 * Joins two independent halves of the same cards so that as many different cards as possible arise: the halves that
 * come most often first, each with the partners that have most copies left (Gale, A theorem on flows in networks, and
 * Ryser, Combinatorial properties of matrices of zeros and ones, both 1957). Ties go round, beginning at `turn`.
 */
export function joinHalves(left: Cards, right: Cards, turn: number): Cards {
  const copies = (half: Cards) => {
    const groups = new Map<string, { readonly look: readonly number[]; left: number }>();
    for (const look of half) {
      const known = groups.get(keyOf(look));
      if (known) known.left += 1;
      else groups.set(keyOf(look), { look, left: 1 });
    }
    return [...groups.values()];
  };
  const rows = copies(left).sort((one, other) => other.left - one.left);
  const columns = copies(right);
  return rows.flatMap((row, index) => {
    const cards: (readonly number[])[] = [];
    while (row.left > 0) {
      const start = index + turn;
      const order = columns
        .map((_, at) => columns[(at + start) % columns.length])
        .filter((column) => column !== undefined && column.left > 0)
        .sort((one, other) => (other?.left ?? 0) - (one?.left ?? 0))
        .slice(0, row.left);
      if (order.length === 0) break;
      for (const column of order) {
        if (!column) continue;
        column.left -= 1;
        row.left -= 1;
        cards.push([...row.look, ...column.look]);
      }
    }
    return cards;
  });
}

/** How `moreDifferent` may change cards, and when it has done enough. */
export interface Exchanges {
  /** For each role, the roles that must not share a paper with it. */
  readonly contrasts: readonly (readonly number[])[];
  /** The most different cards that there can be. */
  readonly enough: number;
  /** With the papers of each role, a card may change to another paper where quantities stay as even as they were. */
  readonly lists?: readonly (readonly number[])[];
}

/**
 * Exchanges papers between cards as long as that gives more different cards. Two cards exchange a set of roles that is
 * closed under contrast (a Kempe chain of the two cards): what contrasted before still contrasts, and no paper is used
 * more or less often.
 */
export function moreDifferent(dealt: Cards, { contrasts, enough, lists }: Exchanges): Cards {
  const cards = dealt.map((card) => [...card]);
  const key = keysFor(lists ? [...cards, lists.map((list) => Math.max(...list))] : cards);
  const times = tally(cards.map(key));
  let different = times.size;
  let left = MOST_EXCHANGES;
  for (let again = true; again && left > 0; ) {
    again = false;
    for (let at = 0; at < cards.length && left > 0 && different < enough; at += 1) {
      if ((times.get(key(cards[at] ?? [])) ?? 0) < 2) continue;
      if (exchange(at) || shift(at)) again = true;
    }
  }
  return cards;

  function exchange(at: number): boolean {
    const one = cards[at] ?? [];
    for (let gap = 1; gap < cards.length && left > 0; gap += 1) {
      const partner = (at + gap) % cards.length;
      const other = cards[partner] ?? [];
      const chains = kempeChains(one, other, contrasts);
      for (const chain of chains.length > 1 ? chains : []) {
        left -= 1;
        const [changedOne, changedOther] = exchanged(one, other, chain);
        if (!improve([one, other], [changedOne, changedOther])) continue;
        cards[at] = changedOne;
        cards[partner] = changedOther;
        return true;
      }
    }
    return false;
  }

  function shift(at: number): boolean {
    const one = cards[at] ?? [];
    for (let role = 0; lists && role < one.length; role += 1) {
      const used = tally(cards.map((card) => card[role]));
      left -= 1;
      for (const paper of lists[role] ?? []) {
        if (used.get(one[role]) !== (used.get(paper) ?? 0) + 1) continue;
        if (contrasts[role]?.some((other) => one[other] === paper)) continue;
        const changed = one.map((old, place) => (place === role ? paper : old));
        if (!improve([one], [changed])) continue;
        cards[at] = changed;
        return true;
      }
    }
    return false;
  }

  /** Puts `after` in the place of `before` if that gives more different cards. */
  function improve(before: Cards, after: Cards): boolean {
    const was = different;
    for (const card of before) add(key(card), -1);
    for (const card of after) add(key(card), 1);
    if (different > was) return true;
    for (const card of after) add(key(card), -1);
    for (const card of before) add(key(card), 1);
    return false;
  }

  function add(which: number | string, by: number): void {
    const had = times.get(which) ?? 0;
    times.set(which, had + by);
    different += Number(had + by > 0) - Number(had > 0);
  }
}

/** Exchanges many chains of many cards in a fixed order that follows no pattern, so that cards that were dealt in runs differ. */
export function scattered(dealt: Cards, contrasts: readonly (readonly number[])[]): Cards {
  const cards = dealt.map((card) => [...card]);
  let state = 1;
  // A linear congruence (multiplier and increment of the numerical recipes' "quick and dirty" generator).
  const next = (below: number): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 4_294_967_296) * below);
  };
  for (let turn = 0; turn < cards.length * 3; turn += 1) {
    const at = turn % cards.length;
    const partner = next(cards.length);
    const one = cards[at] ?? [];
    const other = cards[partner] ?? [];
    const chains = kempeChains(one, other, contrasts);
    const chain = chains[next(chains.length)];
    if (at === partner || !chain) continue;
    const [changedOne, changedOther] = exchanged(one, other, chain);
    cards[at] = changedOne;
    cards[partner] = changedOther;
  }
  return cards;
}

function exchanged(
  one: readonly number[],
  other: readonly number[],
  chain: ReadonlySet<number>,
): readonly [number[], number[]] {
  return [
    one.map((paper, role) => (chain.has(role) ? (other[role] ?? paper) : paper)),
    other.map((paper, role) => (chain.has(role) ? (one[role] ?? paper) : paper)),
  ];
}

/** The smallest sets of roles that two cards can exchange one by one without new clashes. Roles alike on both are left out. */
function kempeChains(
  one: readonly number[],
  other: readonly number[],
  contrasts: readonly (readonly number[])[],
): readonly ReadonlySet<number>[] {
  const seen = new Set<number>();
  return one.flatMap((paper, start) => {
    if (paper === other[start] || seen.has(start)) return [];
    const chain = new Set([start]);
    for (const role of chain) {
      seen.add(role);
      for (const next of contrasts[role] ?? []) {
        if (one[next] === other[role] || other[next] === one[role]) chain.add(next);
      }
    }
    return [chain];
  });
}
