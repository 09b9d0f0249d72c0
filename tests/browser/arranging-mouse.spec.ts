import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { boxOf, expectNoErrors, openTable, outlineBox, pieceIn, pull, sketchText } from './table.js';

const MARK = 1016;

async function selection(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.state.selection ?? []);
}

/** A point of a piece near its left top, where nothing lies over it. */
async function spotOn(page: Page, id: string): Promise<{ readonly x: number; readonly y: number }> {
  const box = await outlineBox(page, id);
  return { x: box.x + 8, y: box.y + 8 };
}

test('Shift and a press take one more; a drag of either moves both, on the ruler and as one step', async ({ page }) => {
  const errors = await openTable(page);
  const before = await sketchText(page);
  const [strip, greeting] = [await spotOn(page, 'strip'), await spotOn(page, 'greeting')];
  await page.mouse.click(strip.x, strip.y);
  await page.keyboard.down('Shift');
  await page.mouse.click(greeting.x, greeting.y);
  await page.keyboard.up('Shift');
  expect(await selection(page)).toEqual(['strip', 'greeting']);
  const was = [await pieceIn(page, 'strip'), await pieceIn(page, 'greeting')] as const;
  await pull(page, strip, { x: strip.x + 3, y: strip.y - 41 });
  await page.mouse.up();
  const is = [await pieceIn(page, 'strip'), await pieceIn(page, 'greeting')] as const;
  expect(is[0].y).toBeLessThan(was[0].y);
  expect([is[0].x - was[0].x, is[0].y - was[0].y]).toEqual([is[1].x - was[1].x, is[1].y - was[1].y]);
  expect([is[0].x % MARK, is[0].y % MARK]).toEqual([0, 0]);
  expect(await selection(page)).toEqual(['strip', 'greeting']);
  await page.keyboard.press('Control+z');
  expect(await sketchText(page)).toBe(before);
  // A press without a drag takes one of them alone.
  await page.mouse.click(strip.x, strip.y);
  expect(await selection(page)).toEqual(['strip']);
  expectNoErrors(errors);
});

test('a frame drawn beside the pieces takes what lies in it; Escape puts the selection back', async ({ page }) => {
  await openTable(page);
  const face = await boxOf(page.locator('trimwell-face'));
  const all = {
    from: { x: face.x + 6, y: face.y + face.height - 6 },
    to: { x: face.x + face.width - 6, y: face.y + 6 },
  };
  await pull(page, all.from, all.to);
  await expect(page.locator('trimwell-face .drawn-frame')).toHaveCount(1);
  await page.mouse.up();
  await expect(page.locator('trimwell-face .drawn-frame')).toHaveCount(0);
  expect(await selection(page)).toHaveLength(7);
  for (const id of ['strip', 'wreath'])
    await expect(page.locator(`trimwell-sheets [data-role="blank"][data-piece="${id}"]`).first()).toHaveClass(/lit/);
  await pull(page, all.from, { x: all.from.x + 20, y: all.from.y - 20 });
  expect(await selection(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await selection(page)).toHaveLength(7);
});

test('a locked piece cannot be dragged, and is still lined up with', async ({ page }) => {
  await openTable(page);
  const strip = await spotOn(page, 'strip');
  await page.mouse.click(strip.x, strip.y);
  await page.keyboard.press('l');
  const before = await pieceIn(page, 'strip');
  await pull(page, strip, { x: strip.x + 40, y: strip.y + 40 });
  await page.mouse.up();
  expect(await pieceIn(page, 'strip')).toEqual(before);
  await expect(page.locator('trimwell-face .refused')).toContainText('locked');
});
