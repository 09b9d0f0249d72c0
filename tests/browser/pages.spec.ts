import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { expectNoErrors, middleOf, openTable, pieceIn, pieceOn, pull, sketchText } from './table.js';

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

/** Takes the table out of the page and puts it back, in the same task or after a while. */
async function moveTable(page: Page, after: number): Promise<void> {
  await page.evaluate(async (pause) => {
    const table = document.querySelector('trimwell-editor');
    const main = document.querySelector('main');
    table?.remove();
    if (pause > 0) await new Promise((resolve) => setTimeout(resolve, pause));
    if (table) main?.append(table);
  }, after);
}

for (const [pause, when] of [
  [0, 'at once'],
  [200, 'after a while'],
] as const) {
  test(`a table that is moved within its page, ${when}, has its sketch, its steps and its keeping`, async ({
    page,
  }) => {
    const errors = await openTable(page);
    await page.getByRole('button', { name: 'Tide line' }).click();
    await pieceOn(page, 'sun').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowDown');
    const moved = await sketchText(page);
    await moveTable(page, pause);
    expect(await sketchText(page)).toBe(moved);
    await expect(page.locator('trimwell-kept-note')).toContainText('kept');
    expect(await sketchText(page)).toBe(moved);
    await page.getByRole('button', { name: 'Undo' }).click();
    expect(await sketchText(page)).not.toBe(moved);
    expectNoErrors(errors);
  });
}

test('a table that is moved before its sketch has come shows it all the same', async ({ page }) => {
  await openTable(page, 'strict.html');
  await page.evaluate(() => {
    const table = document.createElement('trimwell-editor');
    table.setAttribute('src', './sketches/star-window.json');
    document.querySelector('main')?.replaceChildren(table);
  });
  await moveTable(page, 1);
  await expect(page.getByLabel('Title of the sketch')).toHaveValue('Star window');
});

test('a table without a sketch has a blank card, and one whose keeping cannot be loaded says so', async ({ page }) => {
  await page.route(/define-keeping/, (route) => route.abort());
  await page.goto('strict.html');
  await page.evaluate(() => {
    const table = document.createElement('trimwell-editor');
    table.setAttribute('keep', 'club');
    document.querySelector('main')?.replaceChildren(table);
  });
  await expect(page.getByLabel('Title of the sketch')).toHaveValue('Blank card');
  await expect(page.getByText('Nothing is kept here')).toBeVisible();
});

test('keys typed into a field of the page are for that field', async ({ page }) => {
  await openTable(page, 'plain.html');
  await page.getByLabel('Title of the sketch').fill('Another');
  await page.getByLabel('Title of the sketch').press('Enter');
  await page.evaluate(() => {
    const field = document.createElement('input');
    field.slot = 'actions';
    field.ariaLabel = 'Of the page';
    document.querySelector('trimwell-editor')?.append(field);
  });
  await page.getByLabel('Of the page').fill('words');
  await page.getByLabel('Of the page').press('Control+z');
  await expect(page.getByLabel('Title of the sketch')).toHaveValue('Another');
});

test('where no planner may be started the table says why, and the card can still be laid out', async ({ page }) => {
  await page.addInitScript(() => {
    window.Worker = class {
      constructor() {
        throw new DOMException('not from this origin', 'SecurityError');
      }
    } as unknown as typeof Worker;
  });
  await page.goto('plain.html');
  await expect(page.getByText(/the planner could not be started: not from this origin/).first()).toBeVisible();
  await expect(pieceOn(page, 'label')).toBeVisible();
});
