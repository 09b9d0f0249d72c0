import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { axeViolations } from './axe.js';
import { DESK } from './desk-only.js';
import { expectNoErrors, openTable, pieceIn, pieceOn, restedPlan, settledPlan, sketchText } from './table.js';

const panel = (page: Page) => page.locator('trimwell-variations');
const band = (page: Page) => page.locator('trimwell-writing-band');
const contrast = (page: Page) => page.locator('trimwell-contrast');

/** Ids that are on, and the one that is written. */
async function worn(page: Page): Promise<readonly [readonly string[], string | null]> {
  return page.evaluate(() => {
    const state = document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.state;
    return [state?.on ?? [], state?.writing ?? null] as const;
  });
}

async function take(page: Page, ...pieces: string[]): Promise<void> {
  await page.evaluate((selection) => {
    document
      .querySelector<TrimwellEditor>('trimwell-editor')
      ?.session?.dispatch({ event: 'piece.select', edits: [], selection, at: 0 });
  }, pieces);
}

test('a variation is put on, says what it does, and leaves the card as it is', async ({ page }) => {
  const errors = await openTable(page);
  await restedPlan(page);
  const before = await sketchText(page);
  const box = panel(page).getByRole('checkbox', { name: 'Square corners' });
  await box.scrollIntoViewIfNeeded();
  await expect(panel(page).locator('li').first()).toContainText(/sheets/);
  await expect(panel(page)).not.toContainText('Counting', { timeout: 30_000 });
  await box.click();
  await expect(box).toBeChecked();
  await expect(pieceOn(page, 'wreath')).toBeVisible();
  expect(await worn(page)).toEqual([['square-corners'], null]);
  expect(await sketchText(page)).toBe(before);
  await box.click();
  await expect(box).not.toBeChecked();
  expectNoErrors(errors);
});

test('another is started, named, made on the card by keys, ended, opened and undone', { tag: DESK }, async ({
  page,
}) => {
  const errors = await openTable(page);
  const before = await pieceIn(page, 'strip');
  const start = panel(page).getByRole('button', { name: 'Start another' });
  await start.focus();
  await page.keyboard.press('Enter');
  const name = band(page).getByRole('textbox');
  await expect(name).toBeFocused();
  await page.keyboard.type('Low strip');
  await page.keyboard.press('Enter');
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  await take(page, 'strip');
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Control+ArrowUp');
  await page.keyboard.press('Control+ArrowUp');
  await page.keyboard.press('Escape');
  await expect(band(page)).toContainText('1 change');
  expect(await pieceIn(page, 'strip')).toEqual(before);
  await band(page).getByRole('button', { name: 'Done' }).click();
  await expect(band(page)).toBeHidden();
  await expect(panel(page).getByRole('checkbox', { name: 'Low strip' })).toBeFocused();
  expect((await worn(page))[1]).toBeNull();
  const open = panel(page).getByRole('button', { name: 'Open Low strip' });
  await open.focus();
  await page.keyboard.press('Enter');
  const slip = panel(page).getByRole('region', { name: 'Variation Low strip' });
  await expect(slip.getByRole('listitem')).toContainText('Gingham strip');
  await expect(slip.getByRole('textbox', { name: 'name' })).toBeFocused();
  await slip.getByRole('button', { name: /^Leave out/ }).click();
  await expect(slip).toContainText('Changes nothing yet');
  await page.keyboard.press('Escape');
  await expect(slip).toHaveCount(0);
  await expect(open).toBeFocused();
  await page.keyboard.press('Control+z');
  await open.click();
  await expect(panel(page).getByRole('region')).toContainText('Gingham strip');
  expectNoErrors(errors);
});

test('a ready one is offered, counted and added', async ({ page }) => {
  const errors = await openTable(page);
  await restedPlan(page);
  await panel(page).getByText('Ready to add').click();
  const size = panel(page).locator('.ready li').filter({ hasText: 'Another card size' });
  await expect(size).toContainText('Card 5 × 7 in');
  await expect(size).toContainText(/sheet|cut/, { timeout: 40_000 });
  await size.getByRole('button', { name: 'Add Another card size' }).click();
  await settledPlan(page);
  await expect(panel(page).getByRole('checkbox', { name: 'Another card size' })).toBeChecked();
  const shown = await page.evaluate(
    () => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.state.sketch.card.width,
  );
  expect(shown).toBe(5 * 16256);
  expectNoErrors(errors);
});

test('pieces are cut from several papers in turn and kept apart on every card', async ({ page }) => {
  const errors = await openTable(page);
  await take(page, 'strip', 'panel');
  const apart = contrast(page).getByRole('switch', { name: 'Never the same paper on one card' });
  await expect(apart).not.toBeChecked();
  await apart.scrollIntoViewIfNeeded();
  await apart.click();
  await expect(apart).toBeChecked();
  await take(page, 'strip');
  await expect(contrast(page)).toContainText('Print panel');
  await contrast(page).getByText('Cut from several papers in turn').click();
  await contrast(page).getByRole('checkbox', { name: 'Berry dots' }).check();
  await contrast(page).getByRole('button', { name: 'Cut it from these' }).click();
  await expect(contrast(page)).toContainText('among Green gingham and Berry dots');
  await contrast(page).getByRole('button', { name: 'Let Gingham strip and Print panel share a paper' }).click();
  await expect(contrast(page)).not.toContainText('Print panel let them share');
  expectNoErrors(errors);
});

test('writing, the open slip and the ready ones pass axe', async ({ page }) => {
  await openTable(page);
  await restedPlan(page);
  await panel(page).getByRole('button', { name: 'Open Square corners' }).click();
  await panel(page).getByText('Ready to add').click();
  await panel(page).getByRole('button', { name: 'Start another' }).click();
  expect(await axeViolations(page)).toEqual([]);
});
