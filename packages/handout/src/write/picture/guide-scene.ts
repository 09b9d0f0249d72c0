import { eachLeaf, formatSize, type SheetLayout } from '@trimwell/geometry';
import { type BatchPlan, CARD_BASE, centreOf, type PaperPlan, pieceOfBlank, type Sketch } from '@trimwell/sketch';
import { labelPieces } from '../../draw/labels.js';
import { drawSheet } from '../../draw/sheet.js';
import type { Drawing } from '../../drawing/drawing.js';
import { tied } from '../../page/wrap.js';
import { BLADE_CAUTION } from '../cautions.js';
import type { CaptionLine } from './caption.js';

/** One sheet layout of a batch, with the plan that it stands in. */
export interface GuideSheet {
  readonly of: PaperPlan;
  readonly layout: SheetLayout;
}

/** The sheet layouts of a batch in the order of its papers: what `sheet` of a guide counts, from 1. */
export function guideSheets(batch: BatchPlan): readonly GuideSheet[] {
  return batch.papers.flatMap((of) => of.plan.sheets.map((layout) => ({ of, layout })));
}

/** Sheet number `sheet` of a batch, counted from 1. @throws RangeError when there is none */
export function guideSheet(batch: BatchPlan, sheet: number): GuideSheet {
  const sheets = guideSheets(batch);
  const found = sheets[sheet - 1];
  if (!found) throw new RangeError(`sheet is ${sheet}; allowed: a whole number from 1 to ${sheets.length}.`);
  return found;
}

/** What is said beside a guide: which sheet it is, what its letters stand for, and the care that a blade needs. */
export function guideWords(sketch: Sketch, { of, layout }: GuideSheet): readonly CaptionLine[] {
  const labels = labelPieces(sketch);
  const names = new Map(sketch.pieces.map(({ id, name }) => [id, name]));
  const pieces = new Set<string>();
  eachLeaf(layout.tree, layout.usable, of.job.trimmer.kerf, (leaf) => {
    if (leaf.is === 'blank') pieces.add(pieceOfBlank(leaf.blank));
  });
  const legend = [...labels]
    .filter(([id]) => pieces.has(id))
    .map(([id, label]) => tied(`${label} ${id === CARD_BASE ? 'Card base' : (names.get(id) ?? id)}`));
  const size = formatSize(layout, { unit: sketch.unit });
  const alike = layout.copies === 1 ? '' : `; cut ${layout.copies} alike`;
  return [
    { text: `${size}${alike}. Sizes in ${sketch.unit === 'in' ? 'inches' : 'millimetres'}.` },
    { text: `${legend.join(', ')}.`, short: 'Letters as in the piece list.' },
    { text: BLADE_CAUTION },
  ];
}

/** A guide with figures of `size` ticks; `name` is what its sheet is called. */
export function guideDrawing(sketch: Sketch, { of, layout }: GuideSheet, size: number): Drawing {
  const paper = sketch.papers.find(({ id }) => id === of.paper);
  if (!paper) throw new RangeError(`The plan's paper ${JSON.stringify(of.paper)} is none of this sketch.`);
  return drawSheet(
    layout,
    { ...paper, name: sheetName(sketch, { of, layout }) },
    { style: { unit: sketch.unit }, labels: labelPieces(sketch), size, kerf: of.job.trimmer.kerf },
  );
}

/** The paper of a sheet, or the piece whose centre it is. */
export function sheetName(sketch: Sketch, { of, layout }: GuideSheet): string {
  const paper = sketch.papers.find(({ id }) => id === of.paper)?.name ?? of.paper;
  const centre = centreOf(layout.paper);
  if (centre === null) return paper;
  const piece = sketch.pieces.find(({ id }) => id === centre);
  return `${paper}, the centre of ${labelPieces(sketch).get(centre) ?? '?'} ${piece?.name ?? centre}`;
}
