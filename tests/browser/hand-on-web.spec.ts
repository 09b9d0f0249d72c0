import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { readShareCode } from '@trimwell/sketch/share-code';
import { axeViolations } from './axe.js';
import { DESK, deskByNight } from './desk-only.js';
import { openTable } from './table.js';

/** Draws out the tray that hands a sketch on, at what is put in a web page. */
async function openWeb(page: Page, path?: string): Promise<readonly string[]> {
  const errors = await openTable(page, path);
  await page.getByRole('button', { name: 'Hand on' }).click();
  await page.getByRole('button', { name: /Pages to print and other/ }).click();
  await page.getByRole('radio', { name: 'In a web page' }).check();
  await expect(text(page)).toContainText('<trimwell-sketch');
  return errors;
}

function text(page: Page): Locator {
  return page.locator('trimwell-web-maker pre');
}

/** The text as the browser reads it, without running anything of it. */
async function readAsPage(page: Page) {
  const html = (await text(page).textContent()) ?? '';
  return page.evaluate((source) => {
    const read = new DOMParser().parseFromString(source, 'text/html');
    return {
      code: read.querySelector('trimwell-sketch')?.getAttribute('code') ?? null,
      frame: read.querySelector('iframe')?.getAttribute('src') ?? null,
      script: read.querySelector('script')?.getAttribute('src') ?? null,
      caption: read.querySelector('caption')?.textContent ?? null,
      rows: read.querySelectorAll('tbody tr').length,
      links: [...read.querySelectorAll('a')].map((link) => link.href),
      drawn: read.querySelectorAll('svg [data-piece]').length,
    };
  }, html);
}

test('a live sketch is copied with its code and its static part', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  const errors = await openWeb(page);
  const shown = await readAsPage(page);
  expect(shown.script).toBe('/trimwell/trimwell-sketch.js');
  const reading = readShareCode(shown.code ?? '');
  expect(reading.ok && reading.sketch.title).toBe('Hedgerow wreath');
  expect(shown.caption).toBe('Hedgerow wreath: sizes for one card');
  expect(shown.rows).toBe(10);
  expect(shown.drawn).toBeGreaterThan(7);
  await page.getByRole('button', { name: 'Copy it' }).click();
  await expect(page.getByText('The text is copied.')).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(await text(page).textContent());
  const picture = page.getByRole('img', { name: 'The card as it stands in the page' });
  expect(await picture.evaluate((image: HTMLImageElement) => image.naturalWidth)).toBeGreaterThan(200);
  expect(errors).toEqual([]);
});

test('a frame and a plain page have the same card and sizes; only the frame names the folder', { tag: DESK }, async ({
  page,
}) => {
  await openWeb(page);
  await page.getByLabel('Files at').fill('https://example.org/paper');
  await page.getByLabel('Files at').press('Tab');
  await page.getByLabel('Put in as').selectOption('frame');
  await expect(text(page)).toContainText('<iframe');
  const frame = await readAsPage(page);
  const [address, code = ''] = (frame.frame ?? '').split('#');
  expect(address).toBe('https://example.org/paper/frame.html');
  expect(readShareCode(code).ok).toBe(true);
  await page.getByLabel('Put in as').selectOption('plain');
  await expect(text(page)).not.toContainText('<iframe');
  await expect(page.getByLabel('Files at')).toBeHidden();
  const plain = await readAsPage(page);
  expect([plain.script, plain.frame, plain.code]).toEqual([null, null, null]);
  expect(plain.rows).toBe(10);
  await page.getByLabel('Lengths in').selectOption('mm');
  await expect(text(page)).toContainText('215.9 × 139.7 mm');
});

test('a link to the handout is https, and what is none is refused in words', { tag: DESK }, async ({ page }) => {
  await openWeb(page);
  const field = page.getByLabel('Handout at');
  await field.fill('javascript:alert(1)');
  await field.press('Tab');
  await expect(page.getByRole('alert')).toContainText('"javascript:alert(1)" is no such address; allowed: an https');
  await expect(page.getByRole('button', { name: 'Save the text (HTML)' })).toHaveAttribute('aria-disabled', 'true');
  await field.fill('https://example.org/wreath.pdf');
  await field.press('Tab');
  await expect.poll(async () => (await readAsPage(page)).links).toContain('https://example.org/wreath.pdf');
  const files = page.getByLabel('Files at');
  await files.fill('http://example.org/?a');
  await files.press('Tab');
  await expect(page.getByRole('alert')).toContainText('allowed: an https address, or a path');
  // Plain HTML needs no folder.
  await page.getByLabel('Put in as').selectOption('plain');
  await expect(page.getByRole('button', { name: 'Save the text (HTML)' })).toHaveAttribute('aria-disabled', 'false');
});

test('the text is saved as it is shown, on a strict page too', { tag: DESK }, async ({ page }) => {
  const errors = await openWeb(page, './strict.html');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Save the text (HTML)' }).click(),
  ]);
  expect(download.suggestedFilename()).toMatch(/^hedgerow-wreath-web-page-\d{4}-\d\d-\d\d\.html$/);
  expect(await readFile(await download.path(), 'utf8')).toBe(await text(page).textContent());
  expect(errors).toEqual([]);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing by ${colorScheme}, and nothing hangs over the edge`, {
    tag: deskByNight(colorScheme),
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openWeb(page);
    expect(await axeViolations(page)).toEqual([]);
    const over = await page.locator('trimwell-hand-on-tray').evaluate((tray) => {
      const room = tray.getBoundingClientRect();
      return tray.scrollWidth > Math.ceil(room.width) ? [tray.scrollWidth, room.width] : [];
    });
    expect(over).toEqual([]);
  });
}
