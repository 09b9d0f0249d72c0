import { counted } from '../model/counted.js';
import type { GroupLooks } from './deal-group.js';
import { contrastingPairs, type DealtRoles, fixedPaper } from './mix-roles.js';
import type { BatchRecipe } from './recipe.js';

/**
 * Whether all cards differ: `yes`; or why they do not: there are `more cards than looks`; or no deal that uses the
 * papers as evenly makes them differ (`not while even`); both are proven. `not found`: neither a deal nor a proof.
 */
export type Difference = 'yes' | 'more cards than looks' | 'not while even' | 'not found';

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

/** Why pieces that should contrast share a paper: a sentence for every cause. */
export function clashReason(recipe: BatchRecipe, roles: DealtRoles, groups: readonly GroupLooks[]): readonly string[] {
  const pairs = contrastingPairs(recipe);
  const fixed = pairs.flatMap(([one, other]) => {
    const paper = fixedPaper(one);
    return paper !== null && paper === fixedPaper(other)
      ? [`${one.blank} and ${other.blank} should contrast, but both are always cut from ${paper}.`]
      : [];
  });
  const dealt = groups
    .filter(({ clashes }) => clashes > 0)
    .map(({ group, clashes }) => {
      const pieces = group.roles.map((role) => roles.parts[role]?.blank ?? '');
      const taken = pairs.flatMap(([one, other]) =>
        [[one, other] as const, [other, one] as const].flatMap(([role, piece]) => {
          const paper = fixedPaper(piece);
          return pieces.includes(role.blank) && paper !== null && role.papers.includes(paper)
            ? [`${piece.blank} takes ${paper}`]
            : [];
        }),
      );
      const papers = [...new Set(group.lists.flat())].map((paper) => roles.papers[paper] ?? '');
      const also = taken.length > 0 ? `, and ${listed([...new Set(taken)])}` : '';
      return `${listed(pieces)} should contrast, but there ${papers.length === 1 ? 'is' : 'are'} only ${counted(papers.length, 'paper')} (${listed(papers)})${also}: ${counted(clashes, 'clash', 'clashes')} on every card.`;
    });
  return [...fixed, ...dealt];
}

/** Why not all cards differ, as one sentence; none when they do. */
export function differenceReason(
  roles: DealtRoles,
  groups: readonly GroupLooks[],
  known: {
    readonly cards: number;
    readonly different: number;
    readonly looks: number;
    readonly allDifferent: Difference;
  },
): readonly string[] {
  const { cards, different, looks, allDifferent } = known;
  switch (allDifferent) {
    case 'yes':
      return [];
    case 'more cards than looks': {
      const papers = new Set(groups.flatMap(({ group }) => group.lists.flat())).size;
      const contrasting = groups.length === 1 && roles.parts.length > 1 ? 'contrasting ' : '';
      const count = roles.parts.length;
      return [
        `${counted(cards, 'card')}, but ${counted(papers, 'paper')} in ${count} ${contrasting}${count === 1 ? 'role gives' : 'roles give'} only ${counted(looks, 'look')}${different < looks ? `, of which an even deal shows ${different}` : ''}.`,
      ];
    }
    case 'not while even':
      return [`${different} of ${counted(cards, 'card')} differ: no more can while the papers are used this evenly.`];
    case 'not found':
      return [`${different} of ${counted(cards, 'card')} differ; no deal in which all do was found.`];
  }
}
