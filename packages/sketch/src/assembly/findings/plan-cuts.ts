import { eachLeaf, type Length, planSteps, type Rect } from '@trimwell/geometry';
import type { PaperPlan } from '../../batch/batch-plan.js';
import { pieceOfBlank } from '../../batch/blank-id.js';
import { suspectsIn } from '../../check/findings.js';
import { rulerStep } from '../../model/ruler-steps.js';
import type { CardCheck, CardSuspect } from '../card-finding.js';

/** Blanks that no sheet gives, piece by piece; why stands in the plan. */
export const cannotBeCut: CardCheck = ({ options }) => {
  const missing = new Map<string, number>();
  for (const { plan } of options.batch?.papers ?? [])
    for (const { blank, quantity } of plan.unmade) {
      const piece = pieceOfBlank(blank);
      missing.set(piece, (missing.get(piece) ?? 0) + quantity);
    }
  return [...missing].map(
    ([piece, amount]): CardSuspect => ({
      code: 'cannot-be-cut',
      severity: 'stops the build',
      piece,
      place: null,
      amount,
      fixes: [],
    }),
  );
};

/** The first blank that is cut from a part of a sheet and has a side off the ruler; else the first of the part. */
function pieceIn({ plan, job }: PaperPlan, sheet: number, part: Rect, step: Length): string | null {
  const layout = plan.sheets[sheet];
  if (!layout) return null;
  const found: { readonly piece: string; readonly off: boolean }[] = [];
  eachLeaf(layout.tree, layout.usable, job.trimmer.kerf, (leaf, box) => {
    const within =
      box.x >= part.x &&
      box.y >= part.y &&
      box.x + box.width <= part.x + part.width &&
      box.y + box.height <= part.y + part.height;
    if (leaf.is !== 'blank' || !within) return;
    found.push({ piece: pieceOfBlank(leaf.blank), off: box.width % step !== 0 || box.height % step !== 0 });
  });
  return (found.find(({ off }) => off) ?? found[0])?.piece ?? null;
}

/**
 * A setting of the plan's guide that lies on no mark of the ruler, 1/16 in or 1 mm: told once for each paper and piece, with what it is
 * off. Mended as the size of that piece is, where that is off the ruler too.
 */
export const cutOffTheRuler: CardCheck = ({ sketch, options }) => {
  const step = rulerStep(sketch.unit);
  const told = new Set<string>();
  return (options.batch?.papers ?? []).flatMap((paper) =>
    planSteps(paper.plan, paper.job.trimmer.kerf).flatMap(({ setting, sheet, part }): readonly CardSuspect[] => {
      const off = setting % step;
      const piece = off === 0 ? null : pieceIn(paper, sheet, part, step);
      if (piece === null || told.has(`${paper.paper} ${piece}`)) return [];
      told.add(`${paper.paper} ${piece}`);
      const size = suspectsIn(sketch).find((each) => each.code === 'off-the-ruler' && each.piece === piece);
      return [
        {
          code: 'cut-off-the-ruler',
          severity: 'worth knowing',
          piece,
          paper: paper.paper,
          place: null,
          amount: Math.min(off, step - off),
          fixes: size?.fixes ?? [],
        },
      ];
    }),
  );
};
