import { type Drawing, drawCard } from '@trimwell/handout';
import { type Problem, readSketchText, type Sketch } from '@trimwell/sketch';
import type { KeptSketch } from '../../keeping/kept-sketch.js';

/** What a kept sketch shows on the shelf: the front of its card, or why it cannot be read. */
export type KeptView =
  | { readonly ok: true; readonly sketch: Sketch; readonly drawing: Drawing }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/**
 * Views of kept sketches, each made when it is first looked at and again for another revision. They are drawn from the
 * document itself, so that there is no picture to store, to grow stale or to trust.
 */
export class KeptViews {
  readonly #views = new Map<string, { readonly revision: number; readonly view: KeptView }>();

  of({ id, revision, document }: KeptSketch): KeptView {
    const known = this.#views.get(id);
    if (known?.revision === revision) return known.view;
    const reading = readSketchText(document);
    const view: KeptView = reading.ok ? { ...reading, drawing: frontOf(reading.sketch) } : reading;
    this.#views.set(id, { revision, view });
    return view;
  }
}

function frontOf(sketch: Sketch): Drawing {
  const drawing = drawCard(sketch, { face: 'front', style: { unit: sketch.unit }, dimensions: false });
  const { width, height } = sketch.card;
  // The card fills its box, so that it stands on the board; its shadow is the board's.
  const items = drawing.items.filter(({ role }) => role !== 'shadow');
  return { ...drawing, items, box: { x: 0, y: 0, width, height } };
}
