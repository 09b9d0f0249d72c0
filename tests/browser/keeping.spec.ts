import { readFile } from 'node:fs/promises';
import { type BrowserContext, expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { axeViolations } from './axe.js';
import { DESK } from './desk-only.js';
import { expectNoErrors, middleOf, pieceOn, sketchText } from './table.js';

/** Opens the demo with its table kept, and waits until what lay there last lies there again. Plans are of no concern here. */
async function openKept(page: Page): Promise<readonly string[]> {
  const errors: string[] = [];
  page.on('pageerror', (error) => errors.push(error.message));
  await page.goto('./');
  await expect(page.getByRole('textbox', { name: 'Title of the sketch' })).toBeVisible();
  await page.evaluate(() => {
    const editor = document.querySelector<TrimwellEditor>('trimwell-editor');
    if (editor) editor.keep ??= 'club';
  });
  await expect(page.locator('trimwell-kept-note')).toBeAttached();
  await page.waitForFunction(() => {
    const editor = document.querySelector<TrimwellEditor>('trimwell-editor');
    return editor?.shadowRoot?.querySelector('trimwell-kept-note')?.keeper?.restoring === false;
  });
  return errors;
}

async function newTab(context: BrowserContext): Promise<Page> {
  const page = await context.newPage();
  await openKept(page);
  return page;
}

/** Gives the sketch on the table another title, as the user does. */
async function rename(page: Page, title: string): Promise<void> {
  const box = page.getByRole('textbox', { name: 'Title of the sketch' });
  await box.fill(title);
  await box.press('Enter');
  await box.blur();
}

async function expectNote(page: Page, words: string | RegExp): Promise<void> {
  await expect(page.locator('trimwell-kept-note')).toContainText(words);
}

async function expectTitle(page: Page, title: string): Promise<void> {
  await expect(page.getByRole('textbox', { name: 'Title of the sketch' })).toHaveValue(title);
}

/** Another sketch of the demo, changed and kept under this title. */
async function keepAnother(page: Page, card: string, title: string): Promise<void> {
  await page.getByRole('button', { name: card, exact: true }).click();
  await rename(page, title);
  await expectNote(page, 'kept a moment ago');
}

async function openShelf(page: Page): Promise<void> {
  await page.bringToFront();
  await page.getByRole('button', { name: 'Shelf', exact: true }).click();
  await expect(page.getByRole('listbox', { name: 'Kept sketches' })).toBeVisible();
}

function card(page: Page, title: string) {
  return page.getByRole('listbox', { name: 'Kept sketches' }).getByRole('option').filter({ hasText: title });
}

test('a change is kept by itself and is there again after the page was loaded anew', async ({ page }) => {
  const errors = await openKept(page);
  await rename(page, 'Hedge for the fair');
  await expectNote(page, 'kept a moment ago');
  const before = await sketchText(page);
  await openKept(page);
  await expectTitle(page, 'Hedge for the fair');
  expect(await sketchText(page)).toBe(before);
  expectNoErrors(errors);
});

test('a tab that is killed in the middle of a drag comes back to the last settled sketch', { tag: DESK }, async ({
  page,
}) => {
  await openKept(page);
  await rename(page, 'Before the drag');
  await expectNote(page, 'kept a moment ago');
  const before = await sketchText(page);
  const from = await middleOf(pieceOn(page, 'strip'));
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 70, from.y + 40, { steps: 8 });
  expect(await sketchText(page)).not.toBe(before);
  const client = await page.context().newCDPSession(page);
  const crashed = page.waitForEvent('crash');
  client.send('Page.crash').catch(() => undefined);
  await crashed;
  const next = await newTab(page.context());
  expect(await sketchText(next)).toBe(before);
});

test('two tabs on one sketch never overwrite each other; the user chooses', { tag: DESK }, async ({
  page,
  context,
}) => {
  await openKept(page);
  await rename(page, 'Both');
  await expectNote(page, 'kept a moment ago');
  const other = await newTab(context);
  await expectTitle(other, 'Both');
  await rename(page, 'Left');
  await expectNote(other, 'newer in another tab');
  await rename(other, 'Right');
  await expectNote(other, 'changed in two tabs');
  await openShelf(page);
  await expect(card(page, 'Left')).toHaveCount(1);
  await expect(card(page, 'Right')).toContainText('second of two tabs');
  await page.keyboard.press('Escape');
  await other.getByRole('button', { name: 'Keep mine in its place' }).click();
  await expectNote(other, 'kept a moment ago');
  await expectNote(page, 'newer in another tab');
  await page.getByRole('button', { name: 'Take the one from the other tab' }).click();
  await expectTitle(page, 'Right');
  await openShelf(page);
  await expect(card(page, 'Right')).toHaveCount(1);
  await expect(card(page, 'Left')).toHaveCount(0);
});

test('a full storage is told, work goes on, and nothing is lost once there is room', { tag: DESK }, async ({
  page,
}) => {
  const client = await page.context().newCDPSession(page);
  await page.goto('./');
  const origin = new URL(page.url()).origin;
  await client.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 100 });
  await openKept(page);
  await rename(page, 'No room for me');
  await expectNote(page, 'not kept: storage is full');
  await expect(page.getByRole('button', { name: 'Save as a file' })).toBeVisible();
  await rename(page, 'Still working');
  await expectTitle(page, 'Still working');
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as a file' }).click();
  expect(await readFile(await (await saved).path(), 'utf8')).toContain('"Still working"');
  await client.send('Storage.overrideQuotaForOrigin', { origin });
  await rename(page, 'Room again');
  await expectNote(page, 'kept a moment ago');
  await openKept(page);
  await expectTitle(page, 'Room again');
});

test('a link carries the sketch to another browser, where it is kept', { tag: DESK }, async ({ page, browser }) => {
  await openKept(page);
  await rename(page, 'Zoë’s hedge ½');
  await expectNote(page, 'kept a moment ago');
  await openShelf(page);
  await page.getByRole('button', { name: 'Copy a link' }).click();
  const link = await page.getByRole('textbox', { name: 'The link' }).inputValue();
  await expect(page.getByText(`${link.length.toLocaleString('en')} characters`)).toBeVisible();
  const before = await sketchText(page);
  const elsewhere = await browser.newContext({ baseURL: new URL('./', page.url()).href });
  const there = await elsewhere.newPage();
  await openKept(there);
  const problems = await there.evaluate(async (code) => {
    const reading = await document.querySelector<TrimwellEditor>('trimwell-editor')?.openShared(code);
    return reading?.ok ? [] : reading?.problems;
  }, new URL(link).hash.slice('#sketch='.length));
  expect(problems).toEqual([]);
  expect(await sketchText(there)).toBe(before);
  await expectNote(there, 'kept a moment ago');
  await openKept(there);
  expect(await sketchText(there)).toBe(before);
  await elsewhere.close();
});

test('the shelf: search, lay on the table, take off and put back, copy', async ({ page }) => {
  const errors = await openKept(page);
  await rename(page, 'Hedge one');
  await expectNote(page, 'kept a moment ago');
  await keepAnother(page, 'Star window', 'Star two');
  await keepAnother(page, 'Tide line', 'Tide three');
  await openShelf(page);
  const all = page.getByRole('listbox', { name: 'Kept sketches' }).getByRole('option');
  await expect(all).toHaveCount(3);
  await expect(card(page, 'Tide three')).toContainText('on the table');
  expect(await axeViolations(page)).toEqual([]);

  await page.getByRole('searchbox', { name: 'Look for' }).fill('STAR');
  await expect(all).toHaveCount(1);
  await page.getByRole('searchbox', { name: 'Look for' }).fill('');

  await card(page, 'Hedge one').click();
  await page.getByRole('button', { name: 'Take it off the shelf' }).click();
  await expect(all).toHaveCount(2);
  await page.getByRole('button', { name: 'Put Hedge one back' }).click();
  await expect(all).toHaveCount(3);

  await page.getByRole('button', { name: 'Stand a copy beside it' }).click();
  await expect(card(page, 'Hedge one')).toHaveCount(2);

  await card(page, 'Star two').click();
  await page.keyboard.press('Enter');
  await expectTitle(page, 'Star two');
  await expect(page.getByRole('listbox', { name: 'Kept sketches' })).toHaveCount(0);
  await openKept(page);
  await expectTitle(page, 'Star two');
  expectNoErrors(errors);
});

test('a file is opened onto the shelf, and one that is none changes nothing', { tag: DESK }, async ({ page }) => {
  await openKept(page);
  await rename(page, 'Here first');
  await openShelf(page);
  const file = page.getByLabel('Sketch or piece list').last();
  await file.setInputFiles({ name: 'no.json', mimeType: 'application/json', buffer: Buffer.from('{"trimwell": 7}') });
  await expect(page.getByRole('alert').filter({ hasText: 'Nothing was changed' })).toBeVisible();
  await expectTitle(page, 'Here first');
  const document = await readFile(new URL('../../demo/sketches/tide-line.json', import.meta.url));
  await file.setInputFiles({ name: 'tide.json', mimeType: 'application/json', buffer: document });
  await expectTitle(page, 'Tide line');
  await expectNote(page, 'kept a moment ago');
  await openShelf(page);
  await expect(card(page, 'Here first')).toHaveCount(1);
  await expect(card(page, 'Tide line')).toContainText('on the table');
});

test('an editor that is not asked to keep anything stores nothing', { tag: DESK }, async ({ page }) => {
  await page.goto('./two-tables.html');
  const title = page.getByRole('textbox', { name: 'Title of the sketch' }).first();
  await title.fill('Not kept');
  await title.blur();
  await expect(page.locator('trimwell-kept-note')).toHaveCount(0);
  expect(await page.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name))).toEqual([]);
});
