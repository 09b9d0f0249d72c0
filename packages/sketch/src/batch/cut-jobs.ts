import type { CutBlank, CutJob } from '@trimwell/geometry';
import type { BatchRecipe, RecipePart } from './recipe.js';

/** The cut job of one paper of the batch. */
export interface PaperJob {
  readonly paper: string;
  readonly job: CutJob;
}

/** The blank id of `part` when it comes from `paper`: papers of a mix share a role, so each has a blank of its own. */
export function blankId(part: RecipePart, paper: string): string {
  return part.papers.length === 1 ? part.blank : `${part.blank}--${paper}`;
}

/** The piece, or the card base, that a blank id belongs to. */
export function pieceOfBlank(blank: string): string {
  return blank.split('--', 1)[0] ?? blank;
}

/**
 * Which paper each card of a mix's role gets: papers take turns, and each role of the same papers starts one paper
 * further, so that two roles of one mix meet in different papers on a card wherever the mix has more than one.
 */
export function dealPapers(part: RecipePart, role: number, cards: number): readonly string[] {
  return Array.from({ length: cards }, (_, card) => part.papers[(card + role) % part.papers.length] ?? '');
}

/** How many parts with the same papers stand before `part` in the recipe: its turn in the deal. */
function roleOf(recipe: BatchRecipe, part: RecipePart): number {
  const key = part.papers.join();
  return recipe.parts.filter((other) => other.papers.join() === key).indexOf(part);
}

/**
 * One cut job per paper that `cards` cards need, in the order of the papers. A blank comes from exactly one paper, so
 * papers can be planned one by one without losing anything.
 */
export function cutJobs(recipe: BatchRecipe, cards: number): readonly PaperJob[] {
  const blanks = new Map<string, CutBlank[]>();
  for (const part of recipe.parts) {
    const dealt = dealPapers(part, roleOf(recipe, part), cards);
    for (const paper of new Set(part.papers)) {
      const quantity = part.perCard * dealt.filter((id) => id === paper).length;
      if (quantity === 0) continue;
      const { width, height } = part;
      const blank: CutBlank = { id: blankId(part, paper), width, height, quantity, papers: [paper], turn: true };
      blanks.set(paper, [...(blanks.get(paper) ?? []), blank]);
    }
  }
  return recipe.papers.flatMap((paper) => {
    const mine = blanks.get(paper.id);
    return mine ? [{ paper: paper.id, job: { trimmer: recipe.trimmer, papers: [paper], blanks: mine } }] : [];
  });
}
