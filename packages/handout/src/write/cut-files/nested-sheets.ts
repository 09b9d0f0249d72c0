import { type Margins, type NestPlan, nestParts, ticks } from '@trimwell/geometry';
import { batchRecipe, cutJobs, type Paper, type Sketch } from '@trimwell/sketch';
import type { CutFileSettings } from './cut-file-options.js';
import { type CutPart, cutPart } from './cut-part.js';

/** One paper of the batch: its blanks as parts, and how they are nested. */
export interface PaperCuts {
  readonly paper: Paper;
  /** By blank id: the part, and how many are cut for all cards. */
  readonly parts: ReadonlyMap<string, { readonly part: CutPart; readonly quantity: number }>;
}

/** What each of the wanted papers has to give for so many cards, in the order of the papers; papers of nothing are left out. */
export function paperCuts(sketch: Sketch, { cards, papers }: CutFileSettings): readonly PaperCuts[] {
  // Hidden centres are cut out with a knife, one by one; a machine's sheets do without them.
  const recipe = { ...batchRecipe(sketch), centres: [] };
  return cutJobs(recipe, cards).flatMap(({ paper: id, job }): PaperCuts[] => {
    const paper = sketch.papers.find((each) => each.id === id);
    if (!paper || !papers.includes(id)) return [];
    const parts = new Map(
      job.blanks.flatMap((blank) => {
        const part = cutPart(sketch, blank.id);
        return part ? [[blank.id, { part, quantity: blank.quantity }] as const] : [];
      }),
    );
    return [{ paper, parts }];
  });
}

/** The wider of the paper's own margins and the one asked for, on each side. */
function marginsOf({ margins }: Paper, { margin }: CutFileSettings): Margins {
  const { top, right, bottom, left } = margins;
  const wider = (own: number) => ticks(Math.max(own, margin));
  return { top: wider(top), right: wider(right), bottom: wider(bottom), left: wider(left) };
}

/** Lays out the finished pieces of one paper by their boxes; where the margins leave nothing of a sheet, nothing is made. */
export function nestPaper({ paper, parts }: PaperCuts, settings: CutFileSettings): NestPlan {
  const margins = marginsOf(paper, settings);
  const { width, height, sheets, directional } = paper;
  if (width - margins.left - margins.right <= 0 || height - margins.top - margins.bottom <= 0) {
    return {
      ...{ complete: false, layouts: [], sheets: 0, work: 0 },
      unmade: [...parts].map(([part, { quantity }]) => ({
        ...{ part, quantity, reason: 'larger than the sheet within its margins' as const },
      })),
      proof: { lowerBound: 0, fewestSheets: false, by: 'not everything is made' },
    };
  }
  return nestParts(
    {
      sheet: { width, height, sheets: sheets ?? null, directional, margins },
      gap: settings.gap,
      parts: [...parts].map(([id, { part, quantity }]) => ({
        ...{ id, quantity, turn: true, width: part.width, height: part.height },
      })),
    },
    settings.work === undefined ? {} : { work: settings.work },
  );
}
