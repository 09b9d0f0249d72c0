import { readFile } from 'node:fs/promises';
import { expect, type Page, test } from '@playwright/test';
import { openTable, pieceOn, sketchText } from './table.js';

/** Opens a file from the shelf, as the user does. */
async function openFile(page: Page, text: string): Promise<void> {
  await page.getByRole('button', { name: 'Shelf', exact: true }).click();
  await page
    .getByLabel('Sketch or piece list')
    .setInputFiles({ name: 'card.json', mimeType: 'application/json', buffer: Buffer.from(text) });
}

test('a saved sketch opens again as the same sketch', async ({ page }) => {
  await openTable(page);
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  const changed = await sketchText(page);
  await page.getByRole('button', { name: 'Hand on' }).click();
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /The sketch, to open again/ }).click(),
  ]);
  expect(download.suggestedFilename()).toBe('hedgerow-wreath.json');
  const text = await readFile(await download.path(), 'utf8');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await sketchText(page)).not.toBe(changed);
  await openFile(page, text);
  await expect.poll(() => sketchText(page)).toBe(changed);
});

test('a file that is no sketch is refused by path, value and what is allowed, and nothing is changed', async ({
  page,
}) => {
  await openTable(page);
  const before = await sketchText(page);
  const sketch = JSON.parse(await readFile(new URL('../../demo/sketches/tide-line.json', import.meta.url), 'utf8')) as {
    card: { width: string };
  };
  sketch.card.width = 'wide';
  await openFile(page, JSON.stringify(sketch));
  await expect(page.getByRole('alert')).toContainText('card.width is "wide"; allowed: a length');
  expect(await sketchText(page)).toBe(before);
});

test('the piece list and a true-size guide are handed out', async ({ page }) => {
  await openTable(page);
  const save = async (name: RegExp) => {
    const button = page.getByRole('button', { name });
    if (!(await button.first().isVisible())) await page.getByRole('button', { name: 'Hand on' }).click();
    const [download] = await Promise.all([page.waitForEvent('download'), button.first().click()]);
    return readFile(await download.path(), 'utf8');
  };
  expect(await save(/Piece list for 12 cards/)).toMatch(/^label,name,.*\r\nA,Card base,/);
  expect(await save(/Guide ivory-1.*true size/)).toMatch(/^<svg [^>]*width="8\.5in" height="11in"/);
});
