import { allContrast, commonList, type RoleGroup } from './mix-roles.js';

/** One look of a group of roles: the paper of each role. */
export type Look = readonly number[];

/** How many steps a look through all looks of one group takes at most. */
const MOST_STEPS = 40_000;

/** A count that is exact, or only a lower bound because counting on would not be cheap. */
export interface LookCount {
  readonly atLeast: number;
  readonly exact: boolean;
}

/** How many pairs clash when `role` takes `paper` after the roles before it took theirs, fixed pieces included. */
function clashesOf(group: RoleGroup, look: readonly number[], role: number, at: number): number {
  const paper = group.lists[role]?.[at];
  let clashes = group.taken[role]?.[at] ?? 0;
  for (const other of group.contrasts[role] ?? []) {
    if (other >= role) break;
    if (look[other] === paper) clashes += 1;
  }
  return clashes;
}

/**
 * Goes through the looks of `group` with at most `most` clashes, in the order of the lists, until `visit` says false.
 * With `upToNames` papers are taken in the order of the list only, so that of all looks that differ by nothing but the
 * names of the papers one is visited. False when it gave up after `steps` steps.
 */
export function eachLook(
  group: RoleGroup,
  most: number,
  visit: (look: readonly number[], clashes: number) => boolean,
  { upToNames = false, steps = MOST_STEPS }: { readonly upToNames?: boolean; readonly steps?: number } = {},
): boolean {
  const look: number[] = [];
  const common = commonList(group) ?? [];
  let left = steps;
  let wanted = true;
  const descend = (role: number, clashes: number, used: number): void => {
    if (role === group.roles.length) {
      wanted = visit(look, clashes);
      return;
    }
    const list = upToNames ? common : (group.lists[role] ?? []);
    const width = upToNames ? Math.min(used + 1, list.length) : list.length;
    for (let index = 0; index < width && wanted && left > 0; index += 1) {
      const at = upToNames ? (group.lists[role]?.indexOf(list[index] ?? 0) ?? 0) : index;
      left -= 1;
      const sum = clashes + clashesOf(group, look, role, at);
      if (sum > most) continue;
      look[role] = list[index] ?? 0;
      descend(role + 1, sum, index === used ? used + 1 : used);
      look.length = role;
    }
  };
  descend(0, 0, 0);
  return left > 0;
}

/**
 * The fewest clashes that a card can have in `group`, and a look that has them. Exact when all roles contrast with each
 * other (a flow), or when the look through all looks came to its end.
 */
export function fewestClashes(group: RoleGroup): {
  readonly clashes: number;
  readonly look: Look;
  readonly proven: boolean;
} {
  if (allContrast(group)) {
    const look = leastClashingLook(group);
    return { clashes: lookClashes(group, look), look, proven: true };
  }
  const greedy: number[] = [];
  group.lists.forEach((list, role) => {
    const costs = list.map((_, at) => clashesOf(group, greedy, role, at));
    greedy.push(list[costs.indexOf(Math.min(...costs))] ?? 0);
  });
  let best: { clashes: number; look: Look } = { clashes: lookClashes(group, greedy), look: greedy };
  const upToNames = commonList(group) !== null;
  for (let most = 0; most < best.clashes; most += 1) {
    const ended = eachLook(
      group,
      most,
      (look, clashes) => {
        best = { clashes, look: [...look] };
        return false;
      },
      { upToNames },
    );
    if (!ended && best.clashes > most) return { ...best, proven: false };
  }
  return { ...best, proven: true };
}

/** How many clashes `look` has, those with fixed pieces included. */
export function lookClashes(group: RoleGroup, look: Look): number {
  return look.reduce(
    (sum, paper, role) => sum + clashesOf(group, look, role, group.lists[role]?.indexOf(paper) ?? 0),
    0,
  );
}

/**
 * A look with the fewest clashes for roles that all contrast: the n-th role on one paper clashes n - 1 times, a convex
 * cost, so that shortest augmenting paths, one for each role, give the least (Ahuja, Magnanti and Orlin, Network Flows,
 * 1993, chapter 14).
 */
function leastClashingLook(group: RoleGroup): Look {
  const papers = [...new Set(group.lists.flat())].sort((one, other) => one - other);
  const look: number[] = [];
  group.lists.forEach((_, newcomer) => {
    const cost = new Map<number, number>();
    const giver = new Map<number, { readonly role: number; readonly from: number | null }>();
    const takenBy = (role: number, paper: number): number => {
      const at = group.lists[role]?.indexOf(paper) ?? -1;
      return at < 0 ? Number.POSITIVE_INFINITY : (group.taken[role]?.[at] ?? 0);
    };
    const reach = (role: number, from: number | null, base: number): boolean => {
      let lower = false;
      for (const paper of group.lists[role] ?? []) {
        const sum = base + takenBy(role, paper);
        if (sum >= (cost.get(paper) ?? Number.POSITIVE_INFINITY)) continue;
        cost.set(paper, sum);
        giver.set(paper, { role, from });
        lower = true;
      }
      return lower;
    };
    reach(newcomer, null, 0);
    for (let again = true; again; ) {
      again = false;
      look.forEach((paper, role) => {
        const base = cost.get(paper);
        if (base !== undefined && reach(role, paper, base - takenBy(role, paper))) again = true;
      });
    }
    let end = papers[0] ?? 0;
    let least = Number.POSITIVE_INFINITY;
    for (const paper of papers) {
      const sum = (cost.get(paper) ?? Number.POSITIVE_INFINITY) + look.filter((other) => other === paper).length;
      if (sum < least) {
        least = sum;
        end = paper;
      }
    }
    for (let at: number | null = end; at !== null; ) {
      const step: { readonly role: number; readonly from: number | null } | undefined = giver.get(at);
      if (!step) break;
      look[step.role] = at;
      at = step.from;
    }
  });
  return look;
}

/** n (n - 1) (n - 2) … with `factors` factors: the ways to give that many things different papers out of n. */
function fallingFactorial(n: number, factors: number): number {
  let product = 1;
  for (let at = 0; at < factors; at += 1) product *= n - at;
  return product;
}

function counted(value: number, exact: boolean): LookCount {
  const safe = value <= Number.MAX_SAFE_INTEGER;
  return { atLeast: safe ? value : Number.MAX_SAFE_INTEGER, exact: exact && safe };
}

/** How many looks of `group` have `clashes` clashes, the fewest possible. */
export function countLooks(group: RoleGroup, clashes: number): LookCount {
  const common = commonList(group);
  if (common && clashes === 0 && allContrast(group)) {
    return counted(fallingFactorial(common.length, group.roles.length), true);
  }
  let count = 0;
  const upToNames = common !== null;
  const exact = eachLook(
    group,
    clashes,
    (look) => {
      count += common ? fallingFactorial(common.length, new Set(look).size) : 1;
      return true;
    },
    { upToNames },
  );
  return counted(count, exact);
}

/** The count for two groups that have nothing to do with each other. */
export function timesLooks(one: LookCount, other: LookCount): LookCount {
  return counted(one.atLeast * other.atLeast, one.exact && other.exact);
}
