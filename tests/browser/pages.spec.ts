import { expect, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { expectNoErrors, middleOf, openTable, pieceIn, pieceOn, pull } from './table.js';

const TRAYS = [
  ['New card', 'trimwell-new-card'],
  ['Shelf', 'trimwell-shelf'],
  ['Tools', 'trimwell-tools'],
  ['Keys', 'trimwell-keys'],
  ['Fernhollow paper club, sketch 14', 'trimwell-about-card'],
  ['Ivory card', 'trimwell-papers'],
] as const;

test('a strict page: no inline style, no eval, and all of the table works', async ({ page }) => {
  const errors = await openTable(page, 'strict.html');
  const before = await pieceIn(page, 'greeting');
  const from = await middleOf(pieceOn(page, 'greeting'));
  await pull(page, from, { x: from.x, y: from.y - 60 });
  await page.mouse.up();
  expect((await pieceIn(page, 'greeting')).y).toBeLessThan(before.y);
  for (const [name, content] of TRAYS) {
    await page.getByRole('button', { name, exact: true }).first().click();
    await expect(page.locator(content)).toBeVisible();
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
  await open('http://127.0.0.1:9/card.json');
  await expect(page.getByRole('alert')).toContainText('http://127.0.0.1:9/card.json could not be fetched');
  await open('./strict.html');
  await expect(page.getByRole('alert')).toContainText('allowed: JSON text');
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
