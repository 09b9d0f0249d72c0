import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { checkSketch, type Sketch } from '@trimwell/sketch';
import { axeViolations } from './axe.js';
import { DESK, deskByNight } from './desk-only.js';
import { expectNoErrors, openTable, settledPlan } from './table.js';

/** Draws a tray out, as any part of the table does. */
async function drawOut(page: Page, tray: 'new card' | 'card', content: string): Promise<void> {
  await page.evaluate(
    (wanted) =>
      document
        .querySelector('trimwell-editor')
        ?.dispatchEvent(new CustomEvent('tray-wish', { detail: { tray: wanted }, bubbles: true, composed: true })),
    tray,
  );
  await page.locator(content).waitFor();
}

async function onTable(page: Page): Promise<Sketch> {
  const sketch = await page.evaluate(
    () => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.state.sketch,
  );
  if (!sketch) throw new Error('no sketch on the table');
  return sketch;
}

test('a new card is chosen with the mouse or a finger, laid out and planned', async ({ page }) => {
  const errors = await openTable(page);
  await drawOut(page, 'new card', 'trimwell-new-card');
  const tray = page.locator('trimwell-new-card');
  await expect(tray.getByRole('radio', { name: /^US A2/ })).toBeChecked();
  await tray.locator('.line label').filter({ hasText: 'millimetres' }).click();
  await tray.locator('label.size').filter({ hasText: 'DL slimline' }).click();
  await tray.locator('.line label').filter({ hasText: 'lying' }).click();
  await tray.locator('label.layout').filter({ hasText: 'Row of windows' }).click();
  await expect(tray.getByRole('status')).toHaveText('Row of windows, 210 × 99 mm, folded along the top');
  await tray.getByRole('button', { name: 'Lay it out' }).click();
  await expect.poll(async () => (await onTable(page)).title).toBe('Row of windows');
  await settledPlan(page);
  const sketch = await onTable(page);
  expect(sketch.card).toMatchObject({ width: 210 * 640, height: 99 * 640, fold: 'top', envelope: { name: 'ISO DL' } });
  expect(checkSketch(sketch)).toEqual([]);
  expectNoErrors(errors);
});

test('a new card is chosen by keys alone: arrows in each group, Tab from group to group', { tag: DESK }, async ({
  page,
}) => {
  const errors = await openTable(page);
  await drawOut(page, 'new card', 'trimwell-new-card');
  const tray = page.locator('trimwell-new-card');
  await tray.getByRole('radio', { name: 'inches' }).focus();
  await page.keyboard.press('Tab');
  await expect(tray.getByRole('radio', { name: /^US A2/ })).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await expect(tray.getByRole('radio', { name: /^US A6/ })).toBeChecked();
  await page.keyboard.press('Tab');
  await page.keyboard.press('ArrowRight');
  await expect(tray.getByRole('radio', { name: 'lying' })).toBeChecked();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await expect(tray.getByRole('radio', { name: /^Window and mat/ })).toBeFocused();
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await onTable(page)).title).toBe('Three strips');
  expect((await onTable(page)).card).toMatchObject({ width: 6.25 * 16256, height: 4.5 * 16256, fold: 'top' });
  expectNoErrors(errors);
});

test('the card and its words: each change shows on the table, and undo takes it back', async ({ page }) => {
  const errors = await openTable(page);
  const before = await onTable(page);
  await drawOut(page, 'card', 'trimwell-about-card');
  const tray = page.locator('trimwell-about-card');
  await tray.getByLabel('Title').fill('Hedge corner');
  await tray.getByLabel('Usual size').selectOption('us-a7');
  await tray.getByLabel('What it says, new line').fill('Club notes');
  await tray.getByLabel('Where it leads, new line').fill('http://fernhollow.example');
  await tray.getByRole('button', { name: 'Add the line' }).click();
  await expect(tray.getByRole('alert')).toContainText('https://');
  await expect(tray.getByLabel('Where it leads, new line')).toBeFocused();
  await tray.getByLabel('Where it leads, new line').fill('https://fernhollow.example/notes');
  await page.keyboard.press('Enter');
  await tray.getByLabel('New supply').fill('Scoring board');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await onTable(page)).supplies.at(-1)).toBe('Scoring board');
  const after = await onTable(page);
  expect(after).toMatchObject({ title: 'Hedge corner', links: [{ text: 'Club notes' }] });
  expect(after.card).toMatchObject({ width: 5 * 16256, height: 7 * 16256 });
  expect(checkSketch(after).filter(({ code }) => code === 'off-the-card')).toEqual([]);
  await page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.undo(4));
  expect(await onTable(page)).toEqual(before);
  await expect(tray.getByLabel('Title')).toHaveValue(before.title);
  expectNoErrors(errors);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in either tray by ${colorScheme}`, { tag: deskByNight(colorScheme) }, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openTable(page);
    for (const [tray, content] of [
      ['new card', 'trimwell-new-card'],
      ['card', 'trimwell-about-card'],
    ] as const) {
      await drawOut(page, tray, content);
      expect(await axeViolations(page)).toEqual([]);
      await page.keyboard.press('Escape');
      await page.locator(content).waitFor({ state: 'detached' });
    }
  });
}
