import type { BatchRecipe, RecipePart } from './recipe.js';

/** Roles that are dealt together, because each contrasts with another of them; or one role that contrasts with none. */
export interface RoleGroup {
  /** Where the roles stand among all roles that draw on a mix. */
  readonly roles: readonly number[];
  /** For each role, the papers it may come from, as places in `DealtRoles.papers`. */
  readonly lists: readonly (readonly number[])[];
  /** For each role and each paper of its list: how many pieces of fixed paper it would clash with. */
  readonly taken: readonly (readonly number[])[];
  /** For each role, the roles (places in this group) that it must not share a paper with, ascending. */
  readonly contrasts: readonly (readonly number[])[];
}

/** The roles of a recipe that draw on more than one paper. */
export interface DealtRoles {
  readonly papers: readonly string[];
  readonly parts: readonly RecipePart[];
  readonly groups: readonly RoleGroup[];
}

/** Every two blanks that must not share a paper, each pair once, in the order of the parts. */
export function contrastingPairs(recipe: BatchRecipe): readonly (readonly [RecipePart, RecipePart])[] {
  const groups = recipe.contrast.map((ids) => new Set(ids));
  if (groups.length === 0) return [];
  return recipe.parts.flatMap((one, at) =>
    recipe.parts
      .slice(at + 1)
      .filter((other) => groups.some((ids) => ids.has(one.blank) && ids.has(other.blank)))
      .map((other) => [one, other] as const),
  );
}

/** The paper of a part that is always cut from the same one, or null. */
export function fixedPaper(part: RecipePart): string | null {
  const [first, ...others] = new Set(part.papers);
  return first !== undefined && others.length === 0 ? first : null;
}

/** The roles that draw on mixes, and which of them have to be dealt together. A paper named twice in a mix counts once. */
export function dealtRoles(recipe: BatchRecipe): DealtRoles {
  const parts = recipe.parts.filter((part) => new Set(part.papers).size > 1);
  const papers = [...new Set(parts.flatMap((part) => part.papers))];
  const place = new Map(papers.map((paper, index) => [paper, index]));
  const roleOf = new Map(parts.map((part, role) => [part, role]));
  const contrasts = parts.map(() => new Set<number>());
  const fixed = parts.map((): string[] => []);
  for (const pair of contrastingPairs(recipe)) {
    for (const [one, other] of [pair, [pair[1], pair[0]] as const]) {
      const role = roleOf.get(one);
      if (role === undefined) continue;
      const opposite = roleOf.get(other);
      const paper = fixedPaper(other);
      const meet = other.papers.some((id) => one.papers.includes(id));
      if (opposite !== undefined && meet) contrasts[role]?.add(opposite);
      if (opposite === undefined && paper !== null) fixed[role]?.push(paper);
    }
  }
  const groups = connected(contrasts).map((roles): RoleGroup => {
    const lists = roles.map((role) => [...new Set(parts[role]?.papers)].map((paper) => place.get(paper) ?? 0));
    return {
      roles,
      lists,
      taken: roles.map((role, at) =>
        (lists[at] ?? []).map((paper) => (fixed[role] ?? []).filter((id) => id === papers[paper]).length),
      ),
      contrasts: roles.map((role) =>
        [...(contrasts[role] ?? [])].map((other) => roles.indexOf(other)).sort((one, other) => one - other),
      ),
    };
  });
  return { papers, parts, groups };
}

/** The connected parts of a graph, each ascending, in the order of their first vertices. */
function connected(neighbours: readonly ReadonlySet<number>[]): readonly (readonly number[])[] {
  const seen = new Set<number>();
  return neighbours.flatMap((_, start) => {
    if (seen.has(start)) return [];
    const found = [start];
    seen.add(start);
    for (const at of found) {
      for (const next of neighbours[at] ?? []) {
        if (seen.has(next)) continue;
        seen.add(next);
        found.push(next);
      }
    }
    return [found.sort((one, other) => one - other)];
  });
}

/** The common list of the roles of `group` when all draw on the same papers and no fixed piece is in the way; or null. */
export function commonList(group: RoleGroup): readonly number[] | null {
  const [list = []] = group.lists;
  const alike = group.lists.every((other) => other.length === list.length && other.every((at) => list.includes(at)));
  return alike && group.taken.every((row) => row.every((count) => count === 0)) ? list : null;
}

/** True when every two roles of `group` contrast. */
export function allContrast(group: RoleGroup): boolean {
  return group.contrasts.every((others) => others.length === group.roles.length - 1);
}
