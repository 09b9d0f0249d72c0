import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import type { Corners } from '@trimwell/sketch';
import { middleOf, openTable, pull } from './table.js';

async function corners(page: Page): Promise<Corners | undefined> {
  return page.evaluate(
    () =>
      document
        .querySelector<TrimwellEditor>('trimwell-editor')
        ?.session?.state.sketch.pieces.find((one) => one.id === 'panel')?.corners,
  );
}

test('with Shift only the dragged corner is rounded, and Escape puts it back', async ({ page }) => {
  await openTable(page);
  await page.evaluate(() => {
    document
      .querySelector<TrimwellEditor>('trimwell-editor')
      ?.session?.dispatch({ event: 'piece.select', edits: [], selection: ['panel'], at: 0 });
  });
  const before = await corners(page);
  const grip = page.locator('trimwell-face .handle.round .target').nth(2);
  await expect(grip).toBeAttached();
  const from = await middleOf(grip);
  await page.keyboard.down('Shift');
  await pull(page, from, { x: from.x - 30, y: from.y - 30 });
  await expect.poll(async () => (await corners(page))?.br).toBeGreaterThan(before?.br ?? 0);
  expect((await corners(page))?.tl).toBe(before?.tl);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  await page.keyboard.up('Shift');
  expect(await corners(page)).toEqual(before);
});
