import { expect, test } from '@playwright/test';
import {
  boxOf,
  drawFinger,
  expectNoErrors,
  guideText,
  middleOf,
  openTable,
  outlineBox,
  pieceIn,
  pieceOn,
  pixelsPerInch,
  settledPlan,
  sketchText,
} from './table.js';

test('a finger drags a piece and pulls a handle; the guide follows; undo brings all back', async ({ page }) => {
  const errors = await openTable(page);
  const [before, guide] = [await sketchText(page), await guideText(page, 'Green gingham')];
  const start = await pieceIn(page, 'greeting');
  const from = await middleOf(pieceOn(page, 'greeting').locator('path[data-role="outline"]'));
  await drawFinger(page, from, { x: from.x + 10, y: from.y - 50 });
  // As far as the finger went, to a mark: the page did not scroll under it.
  const pulled = ((start.y - (await pieceIn(page, 'greeting')).y) / 16256) * (await pixelsPerInch(page));
  expect(Math.abs(pulled - 50)).toBeLessThan(8);
  const under = await outlineBox(page, 'strip');
  await page.touchscreen.tap(under.x + 14, under.y + under.height / 2);
  // What is selected is brought clear of its ticket, which comes from below.
  const ticket = page.locator('trimwell-ticket');
  await expect
    .poll(async () => {
      const piece = await outlineBox(page, 'strip');
      return (await boxOf(ticket)).y - piece.y - piece.height;
    })
    .toBeGreaterThan(20);
  const strip = await outlineBox(page, 'strip');
  const handle = { x: strip.x + strip.width / 2, y: strip.y + strip.height };
  await drawFinger(page, handle, { x: handle.x, y: handle.y + 30 });
  await settledPlan(page);
  expect((await pieceIn(page, 'strip')).height).toBeGreaterThan(16256);
  expect(await guideText(page, 'Green gingham')).not.toBe(guide);
  await page.getByRole('button', { name: 'Undo' }).tap();
  await page.getByRole('button', { name: 'Undo' }).tap();
  await settledPlan(page);
  expect(await sketchText(page)).toBe(before);
  expectNoErrors(errors);
});

test('beside the card a finger scrolls the page', async ({ page }) => {
  await openTable(page);
  const tallest = await boxOf(page.locator('trimwell-yield'));
  await drawFinger(page, { x: 40, y: tallest.y + 20 }, { x: 40, y: tallest.y - 260 });
  await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(50);
});

test('nothing reaches over the side of a phone', async ({ page }) => {
  await openTable(page);
  for (const card of ['Hedgerow wreath', 'Tide line', 'Star window']) {
    await page.getByRole('button', { name: card }).tap();
    await settledPlan(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  }
});

test('a finger takes a sheet from the table and drops it on the card; sideways it scrolls the sheets', async ({
  page,
}) => {
  await openTable(page);
  const count = async () => (JSON.parse(await sketchText(page)) as { pieces: readonly unknown[] }).pieces.length;
  const before = await count();
  await page.locator('trimwell-sheets .sheet').first().scrollIntoViewIfNeeded();
  const sheet = await middleOf(page.locator('trimwell-sheets .sheet').first());
  await drawFinger(page, sheet, { x: sheet.x - 40, y: sheet.y });
  expect(await count()).toBe(before);
  const panel = await outlineBox(page, 'panel');
  await drawFinger(page, sheet, { x: panel.x + panel.width / 2, y: panel.y + panel.height - 40 }, 20);
  expect(await count()).toBe(before + 1);
});
