import type { CutBlank, CutJob, CutPaper, CutPlan, Length } from '@trimwell/geometry';

/** What the planner needs of a hidden centre. */
export interface RecipeCentre {
  /** The piece that it is cut out of. */
  readonly piece: string;
  readonly width: Length;
  readonly height: Length;
}

const CENTRE = '--centre-of-';

/** The paper id of the centres that are cut out of `piece` where it is made of `paper`. */
export function centreId(paper: string, piece: string): string {
  return `${paper}${CENTRE}${piece}`;
}

/** The piece whose centre a paper id stands for; null for sheets of paper. */
export function centreOf(paperId: string): string | null {
  const at = paperId.indexOf(CENTRE);
  return at < 0 ? null : paperId.slice(at + CENTRE.length);
}

/** True for a paper id that stands for the centres of a piece, which are not sheets that anybody has to have. */
export function isCentre(paperId: string): boolean {
  return centreOf(paperId) !== null;
}

/** Real sheets that a plan needs: all that it counts but centres. */
export function realSheets({ sheets, counts }: Pick<CutPlan, 'sheets' | 'counts'>): number {
  return sheets.reduce((sum, { paper, copies }) => sum - (isCentre(paper) ? copies : 0), counts.sheets);
}

/** True when a blank of that size can be cut from that rectangle, turned unless the paper is `directional`. */
export function fitsInto(
  blank: { readonly width: Length; readonly height: Length },
  centre: { readonly width: Length; readonly height: Length },
  directional: boolean,
): boolean {
  const fits = (width: Length, height: Length): boolean => width <= centre.width && height <= centre.height;
  return fits(blank.width, blank.height) || (!directional && fits(blank.height, blank.width));
}

/**
 * `job`, a job of one paper, with the centres that some of its blanks fit into as further sheets. A centre is there only
 * once its own piece is cut, and that never goes in a circle: a blank that fits into a centre has less area than the
 * piece around it, so that area falls along every chain of "is cut from the centre of", which therefore ends at a sheet.
 * Whoever cuts in the order of falling area always has the centre that is wanted. Real sheets cost 1 and centres
 * nothing, so that the least money is the fewest real sheets. Centres stand in that order after the paper. `made` says how many centres of a piece there are.
 */
export function withCentres(job: CutJob, centres: readonly RecipeCentre[], made: (piece: string) => number): CutJob {
  const [paper] = job.papers;
  if (!paper) return job;
  const { directional } = paper;
  const none = 0 as Length;
  const extra = centres.flatMap((centre): CutPaper[] => {
    const sheets = made(centre.piece);
    const useful = job.blanks.some((blank) => fitsInto(blank, centre, directional));
    if (sheets === 0 || !useful) return [];
    const { width, height } = centre;
    const margins = { top: none, right: none, bottom: none, left: none };
    return [{ id: centreId(paper.id, centre.piece), width, height, sheets, directional, price: 0, margins }];
  });
  if (extra.length === 0) return job;
  extra.sort((a, b) => b.width * b.height - a.width * a.height);
  const open = (blank: CutBlank): readonly string[] => [
    paper.id,
    ...extra.filter((centre) => fitsInto(blank, centre, directional)).map(({ id }) => id),
  ];
  return {
    ...job,
    papers: [{ ...paper, price: 1 }, ...extra],
    blanks: job.blanks.map((blank) => ({ ...blank, papers: open(blank) })),
  };
}

/** `job` as it is without centres; the same object when it has none. */
export function withoutCentres(job: CutJob): CutJob {
  if (!job.papers.some(({ id }) => isCentre(id))) return job;
  return {
    ...job,
    papers: job.papers.filter(({ id }) => !isCentre(id)).map((paper) => ({ ...paper, price: null })),
    blanks: job.blanks.map((blank) => ({ ...blank, papers: blank.papers?.filter((id) => !isCentre(id)) ?? null })),
  };
}
