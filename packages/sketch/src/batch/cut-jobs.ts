import type { CutBlank, CutJob } from '@trimwell/geometry';
import { mixPlan } from './mix-plan.js';
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
 * One cut job per paper that `cards` cards need, in the order of the papers. What a mix's papers give is what the mix plan
 * deals. A blank comes from exactly one paper, so papers can be planned one by one without losing anything.
 */
export function cutJobs(recipe: BatchRecipe, cards: number): readonly PaperJob[] {
  const roles = new Map(mixPlan(recipe, cards).roles.map(({ piece, papers }) => [piece, papers]));
  const blanks = new Map<string, CutBlank[]>();
  for (const part of recipe.parts) {
    const dealt = roles.get(part.blank) ?? [{ paper: part.papers[0] ?? '', blanks: part.perCard * cards }];
    for (const { paper, blanks: quantity } of dealt) {
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
