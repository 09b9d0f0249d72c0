import { batchRecipe, planBatch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { write } from './write-desk.js';

/** The pages with that country of the post, as one text. */
async function pagesText(post: string | null): Promise<string> {
  const sketch = sampleSketch();
  const subject = { sketch, batch: planBatch(batchRecipe(sketch), 1), most: null, date: '2026-11-26' };
  const choice = { paper: 'letter', language: 'en', unit: 'in', templates: false } as const;
  const made = await write({ subject, wish: { make: 'pages', choice, post } }, () => undefined);
  return JSON.stringify(made);
}

test('the pages tell the letter of the country that was chosen, and of the likely one where there is none such', async () => {
  expect(await pagesText('CA')).toContain('Canada: ');
  const likely = await pagesText(null);
  expect(likely).toContain('United States: ');
  expect(await pagesText('XX')).toBe(likely);
});
