import { readdirSync, readFileSync } from 'node:fs';
import {
  checkPages,
  estimateMeasure,
  type HandoutOptions,
  type HandoutPages,
  layOutHandout,
  type Page,
  type PageBlock,
} from '@trimwell/handout';
import { type BatchPlan, batchRecipe, batchYield, expectSketch, planBatch, type Sketch } from '@trimwell/sketch';
import { expect } from 'vitest';

export interface Sample {
  readonly name: string;
  readonly sketch: Sketch;
  readonly batch: BatchPlan;
}

const folder = new URL('../../demo/sketches/', import.meta.url);

/** A sketch with the plan that the demo shows of it. */
export function sampleOf(name: string, sketch: Sketch): Sample {
  const recipe = batchRecipe(sketch);
  const { cards } = sketch.batch;
  const batch = typeof cards === 'number' ? planBatch(recipe, cards) : batchYield(recipe)?.plan;
  if (!batch) throw new Error(`${name} is without end.`);
  return { name, sketch, batch };
}

/** The demo's sketches with their plans. */
export const SAMPLES: readonly Sample[] = readdirSync(folder).map((name) =>
  sampleOf(name, expectSketch(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))),
);

/** A handout, which is checked. */
export function laidOut({ sketch, batch }: Sample, options: Partial<HandoutOptions> = {}): HandoutPages {
  const pages = layOutHandout(sketch, batch, {
    paper: 'letter',
    language: 'en',
    templates: false,
    measure: estimateMeasure,
    date: '2026-11-26',
    ...options,
  });
  expect(checkPages(pages)).toEqual([]);
  return pages;
}

function within(block: PageBlock): readonly PageBlock[] {
  return [block, ...(block.blocks ?? []).flatMap(within)];
}

/** Every block of some pages, in reading order. */
export function blocksOf(pages: readonly Page[]): readonly PageBlock[] {
  return pages.flatMap(({ blocks }) => blocks.flatMap(within));
}

/** The words of a block and of all within it; lines are joined by spaces. */
export function wordsOf(block: PageBlock): string {
  return within(block)
    .flatMap(({ items }) => items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])))
    .join(' ');
}
