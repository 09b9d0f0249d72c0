import type { CutBlank, CutJob } from '@trimwell/geometry';
import { blankId, pieceOfBlank } from './blank-id.js';
import { withCentres } from './centre-papers.js';
import type { MixRole } from './mix-plan.js';
import { type BatchRecipe, pieceOfPart } from './recipe.js';

/** The cut job of one paper of the batch. */
export interface PaperJob {
  readonly paper: string;
  readonly job: CutJob;
}

/** True when some piece takes turns among several papers, so that they have to be dealt first. */
export function mixesPapers({ parts }: BatchRecipe): boolean {
  return parts.some(({ papers }) => new Set(papers).size > 1);
}

/**
 * One cut job per paper that `cards` cards need, in the order of the papers, where `roles` says what the mixes give;
 * empty for a recipe without mixes. A blank comes from exactly one paper, so papers can be planned one by one without
 * losing anything. A paper has no price here: with one to a job the least money is the fewest sheets, and sheets are what
 * is counted. Where the recipe has hidden centres they are further sheets of their paper, which cost nothing (see
 * `withCentres`); each card gives one of each, since only of the copy of a piece that lies on the face it is known what
 * covers it.
 */
export function dealtJobs(recipe: BatchRecipe, cards: number, roles: readonly MixRole[]): readonly PaperJob[] {
  const dealt = new Map(roles.map(({ piece, papers }) => [piece, papers]));
  const blanks = new Map<string, CutBlank[]>();
  for (const part of recipe.parts) {
    const given = dealt.get(part.blank) ?? [{ paper: part.papers[0] ?? '', blanks: part.perCard * cards }];
    for (const { paper, blanks: quantity } of given) {
      if (quantity === 0) continue;
      const { width, height } = part;
      const blank: CutBlank = { id: blankId(part, paper), width, height, quantity, papers: [paper], turn: true };
      blanks.set(paper, [...(blanks.get(paper) ?? []), blank]);
    }
  }
  return recipe.papers.flatMap((paper) => {
    const mine = blanks.get(paper.id);
    if (!mine) return [];
    const job: CutJob = { trimmer: recipe.trimmer, papers: [{ ...paper, price: null }], blanks: mine };
    const made = (piece: string): number => {
      const blank = mine.find(({ id }) => pieceOfBlank(id) === piece);
      const part = pieceOfPart(recipe.parts, piece);
      return blank && part ? blank.quantity / part.perCard : 0;
    };
    return [{ paper: paper.id, job: withCentres(job, recipe.centres, made) }];
  });
}
