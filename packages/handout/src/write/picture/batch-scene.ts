import { batchRecipe, type MixPlan, mixPlan, type Sketch } from '@trimwell/sketch';
import { dealtSketch } from '../../draw/dealt-sketch.js';
import type { Drawing } from '../../drawing/drawing.js';
import { faceDrawing } from './face-scene.js';

/** The space between cards, as a share of a card's smaller side. */
const GAP = 0.16;

/** Cards in rows: each different card is drawn once and stands at many places, in ticks. */
export interface BatchScene {
  readonly box: Drawing['box'];
  readonly different: readonly Drawing[];
  readonly places: readonly { readonly drawing: number; readonly x: number; readonly y: number }[];
  readonly columns: number;
}

/** The number of columns with which `cards` cards are largest in a room of `aspect`, its width through its height. */
function columnsFor(cards: number, box: Drawing['box'], gap: number, aspect: number): number {
  const across = (columns: number): number => columns * (box.width + gap) - gap;
  const down = (columns: number): number => Math.ceil(cards / columns) * (box.height + gap) - gap;
  // The height of a room in which these columns just fit, to be made small.
  const needed = (columns: number): number => Math.max(down(columns), across(columns) / aspect);
  const all = Array.from({ length: cards }, (_, index) => index + 1);
  return all.reduce((best, columns) => (needed(columns) < needed(best) ? columns : best), 1);
}

/** The fronts of `cards` cards, each in the papers that are dealt to it, in rows that fill a room of `aspect`. */
export function batchScene(sketch: Sketch, cards: number, aspect: number): BatchScene {
  const plan: MixPlan = mixPlan(batchRecipe(sketch), cards);
  const looks = Array.from({ length: cards }, (_, card) => JSON.stringify(plan.deal[card] ?? []));
  const kinds = [...new Set(looks)];
  const different = kinds.map((look) => faceDrawing(dealtSketch(sketch, plan, looks.indexOf(look)), 'front'));
  const box = faceDrawing(sketch, 'front').box;
  const gap = Math.min(box.width, box.height) * GAP;
  const columns = columnsFor(cards, box, gap, aspect);
  const rows = Math.ceil(cards / columns);
  const width = columns * (box.width + gap) - gap;
  const places = looks.map((look, index) => {
    const row = Math.floor(index / columns);
    const inRow = row === rows - 1 ? cards - row * columns : columns;
    const left = (width - (inRow * (box.width + gap) - gap)) / 2;
    return {
      drawing: kinds.indexOf(look),
      x: left + (index - row * columns) * (box.width + gap) - box.x,
      y: row * (box.height + gap) - box.y,
    };
  });
  return { box: { x: 0, y: 0, width, height: rows * (box.height + gap) - gap }, different, places, columns };
}
