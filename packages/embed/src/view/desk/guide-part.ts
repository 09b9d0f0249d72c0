import type { LengthStyle } from '@trimwell/geometry';
import { BLADE_CAUTION, drawSheet, KNIFE_CAUTION, labelPieces, type Photos } from '@trimwell/handout';
import { type BatchPlan, centreOf, isCentre, type PaperPlan, type Sketch } from '@trimwell/sketch';
import { fineNode } from '../fine-picture.js';
import { type Part, part } from '../part.js';
import { sheetCaption } from './desk-words.js';

/** Letters on a guide as a share of its longer side: read with ease in a narrow column. */
const LETTERS = 1 / 19;

/** The least share of that size that a letter may have on its part; a smaller one stands outside. */
const LEAST = 0.55;

const drawn = new WeakMap<object, Map<string, SVGElement>>();

/** A picture of a layout of a plan; the same one for the same plan, style and photographs. */
function picture(
  sketch: Sketch,
  { paper: id, job, plan }: PaperPlan,
  index: number,
  style: LengthStyle,
  photos: Photos,
): SVGElement | null {
  const paper = sketch.papers.find((each) => each.id === id);
  const layout = plan.sheets[index];
  if (!paper || !layout) return null;
  const known = drawn.get(layout) ?? new Map<string, SVGElement>();
  drawn.set(layout, known);
  const key = JSON.stringify([style, paper.look, photos.size, sketch.pieces.length]);
  const there = known.get(key);
  if (there) return there;
  const size = Math.max(layout.width, layout.height) * LETTERS;
  const drawing = drawSheet(layout, paper, {
    style,
    labels: labelPieces(sketch),
    size,
    kerf: job.trimmer.kerf,
    least: LEAST,
  });
  const node = fineNode(drawing, photos);
  known.set(key, node);
  return node;
}

/** The cutting guide: the first `most` layouts, each with its picture and what it is, and the cautions. */
export function guideSheets(
  sketch: Sketch,
  batch: BatchPlan,
  style: LengthStyle,
  photos: Photos,
  most: number,
): { readonly parts: readonly Part[]; readonly left: number } {
  const layouts = batch.papers.flatMap((paper) => paper.plan.sheets.map((layout, index) => ({ paper, layout, index })));
  const knife = layouts.some(({ layout }) => isCentre(layout.paper));
  const name = (paper: string): string => sketch.papers.find(({ id }) => id === paper)?.name ?? paper;
  const called = (layout: string, paper: string): string => {
    const piece = centreOf(layout);
    return piece === null ? name(paper) : (sketch.pieces.find(({ id }) => id === piece)?.name ?? piece);
  };
  const figures = layouts.slice(0, most).map(({ paper, layout, index }) => {
    const drawing = picture(sketch, paper, index, style, photos);
    return part(
      'figure',
      { key: `${paper.paper} ${index}`, class: 'guide' },
      drawing,
      part('figcaption', {}, sheetCaption(layout, called(layout.paper, paper.paper), style)),
    );
  });
  return {
    parts: [
      part('p', { class: 'caution', key: 'caution' }, knife ? `${BLADE_CAUTION} ${KNIFE_CAUTION}` : BLADE_CAUTION),
      part('div', { class: 'sheets', key: 'sheets' }, figures),
    ],
    left: Math.max(0, layouts.length - most),
  };
}
