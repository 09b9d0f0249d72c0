import { formatSize, type NestPlan, ticks } from '@trimwell/geometry';
import type { Sketch } from '@trimwell/sketch';
import type { CutFileSettings } from './cut-file-options.js';
import type { CutPage } from './cut-page.js';
import { namePart, uniqueNames } from './file-names.js';
import type { PaperCuts } from './nested-sheets.js';
import { placePart } from './place-part.js';

const LINES = 'Solid lines are cut, dashed lines are scored. True size: import it without fitting it to the mat.';

function times(copies: number): string {
  return copies === 1 ? 'cut once' : `cut ${copies} times`;
}

/** One page for each sheet layout of each paper. */
export function sheetPages(
  sketch: Sketch,
  nested: readonly { readonly cuts: PaperCuts; readonly plan: NestPlan }[],
  { unit }: CutFileSettings,
): readonly CutPage[] {
  const unique = uniqueNames();
  const title = namePart(sketch.title, 'sketch');
  return nested.flatMap(({ cuts: { paper, parts }, plan }) =>
    plan.layouts.map(({ copies, places }, index): CutPage => {
      const placed = places.flatMap(({ part, ...place }) => {
        const found = parts.get(part);
        return found ? [placePart(found.part, place)] : [];
      });
      const { width, height } = paper;
      const alike = copies === 1 ? '' : `-cut-${copies}-alike`;
      return {
        ...{ width, height, copies },
        stem: unique(`${title}-${namePart(paper.name, 'paper')}-sheet-${index + 1}${alike}`),
        title: `${sketch.title}: ${paper.name}, sheet ${index + 1} of ${plan.layouts.length}`,
        description: `A sheet of ${formatSize(paper, { unit })}, ${places.length === 1 ? '1 piece' : `${places.length} pieces`}, ${times(copies)}. ${LINES}`,
        cut: placed.flatMap(({ cut }) => cut),
        score: placed.flatMap(({ score }) => score),
      };
    }),
  );
}

/** One page for each piece of each paper: the piece with the margin around it. */
export function piecePages(
  sketch: Sketch,
  cuts: readonly PaperCuts[],
  { unit, margin }: CutFileSettings,
): readonly CutPage[] {
  const unique = uniqueNames();
  const title = namePart(sketch.title, 'sketch');
  return cuts.flatMap(({ paper, parts }) =>
    [...parts.values()].map(({ part, quantity }): CutPage => {
      const often = quantity === 1 ? '' : `-cut-${quantity}`;
      return {
        ...placePart(part, { x: margin, y: margin, turned: false }),
        width: ticks(part.width + 2 * margin),
        height: ticks(part.height + 2 * margin),
        copies: quantity,
        stem: unique(`${title}-${namePart(paper.name, 'paper')}-${namePart(part.name, 'piece')}${often}`),
        title: `${sketch.title}: ${part.name}, of ${paper.name}`,
        description: `${formatSize(part, { unit })}, ${times(quantity)}. ${LINES}`,
      };
    }),
  );
}
