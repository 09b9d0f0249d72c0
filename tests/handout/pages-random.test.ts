import { planCuts } from '@trimwell/geometry';
import { checkPages, estimateMeasure, layOutHandout } from '@trimwell/handout';
import { batchRecipe, planBatch, type Sketch } from '@trimwell/sketch';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { randomSketch } from '../kit/random-sketch.js';

/** Layouts matter here and not good plans, so that little work is enough. */
function planQuickly(sketch: Sketch) {
  return planBatch(batchRecipe(sketch), Number(sketch.batch.cards), (job) => planCuts(job, { work: 1_000 }));
}

test('200 random sketches are laid out with nothing on anything else and nothing off the page', () => {
  fc.assert(
    fc.property(
      randomSketch(),
      fc.constantFrom('letter' as const, 'a4' as const),
      fc.constantFrom('en' as const, 'de' as const),
      (sketch, paper, language) => {
        const options = { paper, language, templates: true, measure: estimateMeasure, date: '2026-11-26' };
        const pages = layOutHandout(sketch, planQuickly(sketch), options);
        expect(pages.pages.length).toBeGreaterThan(2);
        expect(checkPages(pages)).toEqual([]);
      },
    ),
    { numRuns: 200, seed: 20261126 },
  );
}, 300_000);
