import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { axeViolations } from './axe.js';
import { DESK } from './desk-only.js';
import { expectNoErrors, openTable, pieceIn, pieceOn, sketchText } from './table.js';

const INCH = 16256;

async function selection(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.state.selection ?? []);
}

async function said(page: Page): Promise<string> {
  return (await page.locator('trimwell-face [role="status"]').textContent()) ?? '';
}

/** Puts the focus on a piece and takes it, by keys alone. */
async function take(page: Page, id: string): Promise<void> {
  await pieceOn(page, id).focus();
  await page.keyboard.press('Enter');
}

test('several are taken along the stack, moved, lined up and undone by keys, and it is announced', {
  tag: DESK,
}, async ({ page }) => {
  const errors = await openTable(page);
  const before = await sketchText(page);
  await take(page, 'strip');
  await page.keyboard.press('>');
  expect(await selection(page)).toHaveLength(2);
  expect(await said(page)).toContain('2 pieces in all');
  const [strip, mat] = [await pieceIn(page, 'strip'), await pieceIn(page, 'wreath-mat')];
  await page.keyboard.press('ArrowDown');
  expect((await pieceIn(page, 'strip')).y).toBe(strip.y + INCH / 16);
  expect((await pieceIn(page, 'wreath-mat')).y).toBe(mat.y + INCH / 16);
  // What the mat holds moves along, once.
  expect((await pieceIn(page, 'wreath')).y - (await pieceIn(page, 'wreath-mat')).y).toBe(mat.mats?.reveal ?? 2032);
  await page.keyboard.press('Shift+L');
  expect((await pieceIn(page, 'strip')).x).toBe((await pieceIn(page, 'wreath-mat')).x);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect(await sketchText(page)).toBe(before);
  await page.keyboard.press('Control+a');
  expect(await selection(page)).toHaveLength(7);
  expectNoErrors(errors);
});

test('pieces are copied, cut and pasted by the usual keys, with no question asked', { tag: DESK }, async ({ page }) => {
  const errors = await openTable(page);
  const pieces = () =>
    page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.sketch?.pieces.length ?? 0);
  const before = await pieces();
  await take(page, 'wreath-mat');
  await page.keyboard.press('<');
  await page.keyboard.press('Control+c');
  expect(await said(page)).toContain('copied');
  await page.keyboard.press('Control+v');
  expect(await pieces()).toBe(before + 2);
  expect(await selection(page)).toHaveLength(2);
  await page.keyboard.press('Control+x');
  expect(await pieces()).toBe(before);
  await page.keyboard.press('Control+v');
  expect(await pieces()).toBe(before + 2);
  expectNoErrors(errors);
});

test('a locked piece says why it stays; a hidden one is off the card until it is shown', async ({ page }) => {
  await openTable(page);
  await take(page, 'strip');
  await page.keyboard.press('l');
  const strip = await pieceIn(page, 'strip');
  await page.keyboard.press('ArrowLeft');
  await expect(page.locator('trimwell-face .refused')).toContainText('is locked and stays');
  await page.keyboard.press('Delete');
  expect(await pieceIn(page, 'strip')).toEqual(strip);
  await page.keyboard.press('l');
  await page.keyboard.press('h');
  await expect(pieceOn(page, 'strip')).toHaveCount(0);
  expect((await pieceIn(page, 'strip')).hidden).toBe(true);
  await pieceOn(page, 'panel').focus();
  await page.keyboard.press('s');
  await expect(pieceOn(page, 'strip')).toHaveCount(1);
});

test('the ticket of several pieces lines them up and is accessible; of one it sets shape, kind and mats', async ({
  page,
}) => {
  await openTable(page);
  await take(page, 'strip');
  await page.keyboard.press('>');
  const ticket = page.locator('trimwell-ticket');
  await expect(ticket.getByRole('region', { name: 'The selected pieces' })).toBeVisible();
  expect(await axeViolations(page, ['trimwell-editor', 'trimwell-ticket'])).toEqual([]);
  await ticket.getByRole('group', { name: 'Line up, across' }).getByRole('button', { name: 'right' }).click();
  const [strip, mat] = [await pieceIn(page, 'strip'), await pieceIn(page, 'wreath-mat')];
  expect(strip.x + strip.width).toBe(mat.x + mat.width);
  await ticket.getByRole('button', { name: 'Done' }).click();
  await take(page, 'wreath');
  const { width, height } = await pieceIn(page, 'wreath');
  await ticket.getByLabel('Shape', { exact: true }).selectOption('ellipse');
  expect(await pieceIn(page, 'wreath')).toMatchObject({ shape: 'ellipse', width, height });
  expect((await pieceIn(page, 'wreath-mat')).shape).toBe('ellipse');
  await ticket.getByRole('textbox', { name: 'Reveal', exact: true }).fill('1/4');
  await page.keyboard.press('Enter');
  expect((await pieceIn(page, 'wreath-mat')).width).toBe(width + INCH / 2);
});

test('the keys are listed in a tray, from the table they go by', async ({ page }) => {
  await openTable(page);
  await page.evaluate(() =>
    document
      .querySelector('trimwell-editor')
      ?.dispatchEvent(new CustomEvent('tray-wish', { detail: { tray: 'keys' }, bubbles: true, composed: true })),
  );
  const keys = page.locator('trimwell-keys');
  await expect(keys.getByRole('heading', { name: 'Lining up' })).toBeVisible();
  await expect(keys).toContainText('only there');
  await expect(keys).toContainText('Equal gaps from left to right');
});
