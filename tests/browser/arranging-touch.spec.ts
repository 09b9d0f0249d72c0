import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { drawFinger, openTable, outlineBox, pieceIn } from './table.js';

async function spotOn(page: Page, id: string): Promise<{ readonly x: number; readonly y: number }> {
  const box = await outlineBox(page, id);
  return { x: box.x + 8, y: box.y + 8 };
}

async function selection(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.state.selection ?? []);
}

test('after “Select more” every touch takes one more, and a finger moves them together', async ({ page }) => {
  await openTable(page);
  const strip = await spotOn(page, 'strip');
  await page.touchscreen.tap(strip.x, strip.y);
  await page.locator('trimwell-ticket').getByRole('button', { name: 'Select more' }).tap();
  const panel = await spotOn(page, 'panel');
  await page.touchscreen.tap(panel.x, panel.y);
  expect(await selection(page)).toEqual(['strip', 'panel']);
  const was = [await pieceIn(page, 'strip'), await pieceIn(page, 'panel')] as const;
  await drawFinger(page, panel, { x: panel.x, y: panel.y + 30 });
  const is = [await pieceIn(page, 'strip'), await pieceIn(page, 'panel')] as const;
  expect(is[0].y).toBeGreaterThan(was[0].y);
  expect(is[0].y - was[0].y).toBe(is[1].y - was[1].y);
  await page.locator('trimwell-ticket').getByRole('button', { name: 'Done' }).tap();
  expect(await selection(page)).toEqual([]);
});
