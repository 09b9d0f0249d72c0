import { expect, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { expectNoErrors, middleOf, openTable, pieceIn, pieceOn, pull } from './table.js';

const TRAYS = ['New card', 'Shelf', 'Tools', 'Keys'];

test('a strict page: no inline style, no eval, and all of the table works', async ({ page }) => {
  const errors = await openTable(page, 'strict.html');
  const before = await pieceIn(page, 'strip');
  const from = await middleOf(pieceOn(page, 'strip'));
  await pull(page, from, { x: from.x, y: from.y + 60 });
  await page.mouse.up();
  expect((await pieceIn(page, 'strip')).y).toBeGreaterThan(before.y);
  for (const name of TRAYS) {
    await page.getByRole('button', { name, exact: true }).click();
    await expect(page.locator('trimwell-tray dialog h2')).toBeVisible();
    await expect(page.locator('trimwell-tray > *')).toBeVisible();
    await page.getByRole('button', { name: 'Put away' }).click();
  }
  expectNoErrors(errors);
});

test('one script tag and a sketch inside the element', async ({ page }) => {
  const errors = await openTable(page, 'plain.html');
  await expect(page.getByLabel('Title of the sketch')).toHaveValue('Thank-you note');
  await expect(pieceOn(page, 'label')).toBeVisible();
  expectNoErrors(errors);
});

test('a sketch that cannot be fetched or read is refused in words', async ({ page }) => {
  await openTable(page, 'strict.html');
  const open = (src: string) =>
    page.evaluate((address) => {
      const table = document.createElement('trimwell-editor');
      table.setAttribute('src', address);
      document.querySelector('main')?.replaceChildren(table);
    }, src);
  await open('./sketches/no-such-card.json');
  await expect(page.getByRole('alert')).toContainText('no-such-card.json');
  await open('./parts.json');
  await expect(page.getByRole('alert')).toContainText('trimwell');
});

test('the page keeps its own styles, and the table its own', async ({ page }) => {
  await openTable(page, 'plain.html');
  const before = await page.evaluate(() => document.adoptedStyleSheets.length + document.styleSheets.length);
  await page.addStyleTag({
    content: 'button { display: none !important } * { color: red !important; font-size: 40px }',
  });
  await expect(page.getByRole('button', { name: 'Keys' })).toBeVisible();
  const size = await page.locator('trimwell-headline').evaluate((part) => {
    const button = part.shadowRoot?.querySelector('button');
    return button ? getComputedStyle(button).fontSize : '';
  });
  expect(size).toBe('13.5px');
  expect(before).toBe(await page.evaluate(() => document.adoptedStyleSheets.length + document.styleSheets.length - 1));
});

test('colours are the page’s to set', async ({ page }) => {
  await openTable(page, 'plain.html');
  const ground = await page.evaluate(() => {
    const table = document.querySelector<TrimwellEditor>('trimwell-editor');
    if (!table) return '';
    table.theme = 'light';
    table.style.setProperty('--trimwell-table', 'rgb(1, 2, 3)');
    return getComputedStyle(table).backgroundColor;
  });
  expect(ground).toBe('rgb(1, 2, 3)');
});
