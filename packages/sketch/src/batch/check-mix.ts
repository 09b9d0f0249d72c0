import type { MixPlan } from './mix-plan.js';
import type { BatchRecipe } from './recipe.js';

/**
 * Everything that is wrong with `plan` as a mix plan of `recipe`, as sentences; empty for a sound one. Looks at the recipe
 * and at the plan only, not at how it was made: every card has every role once, from a paper of its mix; the counts are
 * those of the deal; every clash is listed and none invented; the cards differ as often as said.
 */
export function checkMix(recipe: BatchRecipe, plan: MixPlan): readonly string[] {
  const found: string[] = [];
  const mixed = recipe.parts.filter(({ papers }) => papers.some((paper) => paper !== papers[0]));
  const pieces = plan.roles.map(({ piece }) => piece);
  if (pieces.join() !== mixed.map(({ blank }) => blank).join()) {
    found.push(`the roles are ${pieces.join(', ')}, not ${mixed.map(({ blank }) => blank).join(', ')}`);
  }
  if (plan.deal.length !== plan.cards) found.push(`${plan.deal.length} cards are dealt, not ${plan.cards}`);
  plan.deal.forEach((papers, card) => {
    if (papers.length !== mixed.length) found.push(`card ${card} has ${papers.length} roles, not ${mixed.length}`);
    papers.forEach((paper, role) => {
      if (!mixed[role]?.papers.includes(paper)) found.push(`card ${card} has ${pieces[role]} from ${paper}`);
    });
  });
  plan.roles.forEach(({ piece, perCard, papers }, role) => {
    if (perCard !== mixed[role]?.perCard) found.push(`${piece} comes ${perCard} times on a card`);
    for (const paper of new Set(mixed[role]?.papers)) {
      const cards = plan.deal.filter((card) => card[role] === paper).length;
      const said = papers.filter((entry) => entry.paper === paper);
      if (said.length !== 1 || said[0]?.cards !== cards || said[0].blanks !== cards * perCard) {
        found.push(`${piece} comes from ${paper} on ${cards} cards, which is not what the counts say`);
      }
    }
  });
  const paperOn = (card: readonly string[], piece: string): string | undefined => {
    const role = pieces.indexOf(piece);
    return role >= 0 ? card[role] : recipe.parts.find(({ blank }) => blank === piece)?.papers[0];
  };
  const place = new Map(recipe.parts.map(({ blank }, index) => [blank, index]));
  const clashes = new Set<string>();
  plan.deal.forEach((papers, card) => {
    for (const group of recipe.contrast) {
      for (const one of group) {
        for (const other of group) {
          const paper = paperOn(papers, one);
          const before = (place.get(one) ?? 0) < (place.get(other) ?? 0);
          if (before && paper !== undefined && paper === paperOn(papers, other)) {
            clashes.add([card, one, other, paper].join(' '));
          }
        }
      }
    }
  });
  const listed = new Set(plan.clashes.map(({ card, pieces: pair, paper }) => [card, ...pair, paper].join(' ')));
  for (const clash of clashes) if (!listed.has(clash)) found.push(`the clash ${clash} is not listed`);
  for (const clash of listed) if (!clashes.has(clash)) found.push(`there is no clash ${clash}`);
  const different = new Set(plan.deal.map((card) => card.join(' '))).size;
  if (different !== plan.different) found.push(`${different} cards differ, not ${plan.different}`);
  if ((plan.allDifferent === 'yes') !== (different === plan.cards))
    found.push(`it says ${plan.allDifferent} of all cards differing`);
  return found;
}
