import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { strFromU8, unzipSync } from 'fflate';
import { PNG } from 'pngjs';
import { findReader } from '../run/find-readers.mjs';
import { axeViolations } from './axe.js';
import { DESK, deskByNight } from './desk-only.js';
import { openTable } from './table.js';

type Kind = 'Pages to print' | 'Files for a cutting machine' | 'A piece list' | 'A picture';

/** Draws the tray out that hands a sketch on, as the user does. */
async function openTray(page: Page, path?: string): Promise<readonly string[]> {
  const errors = await openTable(page, path);
  await page.getByRole('button', { name: 'Hand on' }).click();
  await page.getByRole('button', { name: /Pages to print and other/ }).click();
  await expect(pages(page).first()).toBeVisible();
  return errors;
}

function pages(page: Page): Locator {
  return page.locator('trimwell-page-picture');
}

async function choose(page: Page, kind: Kind): Promise<void> {
  await page.getByRole('radio', { name: kind }).check();
}

/** Presses the button that saves; where the file lies, and what it is called. */
async function save(page: Page): Promise<{ readonly path: string; readonly name: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: /^Save the / }).click(),
  ]);
  await expect(page.getByRole('status').filter({ hasText: 'is saved.' })).toHaveText(
    `${download.suggestedFilename()} is saved.`,
  );
  return { path: await download.path(), name: download.suggestedFilename() };
}

function told(program: string, ...args: readonly string[]): string {
  return execFileSync(findReader(program), args, { encoding: 'utf8' });
}

const DAY = String.raw`\d{4}-\d\d-\d\d`;

test('the pages that are shown are the pages that are saved', { tag: DESK }, async ({ page }) => {
  const errors = await openTray(page);
  const shown = await pages(page).count();
  expect(shown).toBeGreaterThan(3);
  const { path, name } = await save(page);
  expect(name).toMatch(new RegExp(`^hedgerow-wreath-${DAY}\\.pdf$`));
  const facts = told('pdfinfo', path);
  expect(facts).toMatch(new RegExp(`Pages: +${shown}\\n`));
  expect(facts).toContain('612 x 792 pts (letter)');
  expect(facts).toMatch(/Title: +Hedgerow wreath/);
  expect(facts).toMatch(/Encrypted: +no/);
  const [first = ''] = told('pdftotext', '-layout', path, '-').split('\f');
  for (const words of ['Sizes for one card', 'Gingham strip', '12 cards from 18 sheets'])
    expect(first).toContain(words);
  const drawn = (await pages(page).first().locator('text').allTextContents()).join(' ');
  for (const words of ['Sizes for one card', 'Gingham strip', '12 cards from 18 sheets'])
    expect(drawn).toContain(words);
  expect(errors).toEqual([]);
});

test('every choice shows in the preview and in the file', { tag: DESK }, async ({ page }) => {
  await openTray(page);
  const before = await pages(page).count();
  await page.getByLabel('Printed on').selectOption('a4');
  await page.getByLabel('Language').selectOption('de');
  await page.getByLabel('Lengths in').selectOption('mm');
  await page.getByLabel(/Every piece at true size/).check();
  await expect(page.getByText('Maße für eine Karte')).toBeVisible();
  await expect.poll(() => pages(page).count()).toBeGreaterThan(before);
  const { path } = await save(page);
  expect(told('pdfinfo', path)).toContain('(A4)');
  expect(told('pdftotext', path, '-')).toContain('mm');
});

test('a password is asked for, said what it protects, and locks the file', async ({ page }) => {
  await openTray(page);
  await page.getByLabel('It opens only with a password').check();
  const button = page.getByRole('button', { name: 'Save the pages (PDF)' });
  await expect(button).toHaveAttribute('aria-disabled', 'true');
  await expect(page.getByText('Whoever has it can print, copy and pass on the pages')).toBeVisible();
  const field = page.getByLabel('Password', { exact: true });
  await field.fill('x'.repeat(128));
  await expect(page.getByRole('alert')).toHaveText('The password takes 128 bytes; allowed: 1 to 127.');
  await expect(button).toHaveAttribute('aria-disabled', 'true');
  await field.fill('seven geese by the mill');
  await expect(button).toHaveAttribute('aria-disabled', 'false');
  const { path } = await save(page);
  const locked = told('qpdf', '--show-encryption', '--password=seven geese by the mill', path);
  expect(locked).toContain('R = 6');
  expect(locked).toContain('stream encryption method: AESv3');
  expect(() => told('qpdf', '--check', path)).toThrow(/invalid password/);
  // What was typed is nowhere when the tray comes again.
  await page.getByRole('button', { name: 'Put away' }).click();
  await page.getByRole('button', { name: 'Hand on' }).click();
  await page.getByRole('button', { name: /Pages to print and other/ }).click();
  await expect(page.getByLabel('It opens only with a password')).not.toBeChecked();
});

test('what takes long has a bar and can be given up', { tag: DESK }, async ({ page }) => {
  await openTray(page);
  await page.evaluate(() => {
    const post = Worker.prototype.postMessage;
    // A slow machine: the worker gets its work late.
    Worker.prototype.postMessage = function (this: Worker, message: unknown) {
      if ((message as { wish?: { make?: string } }).wish?.make !== 'pdf') return post.call(this, message as never);
      setTimeout(() => post.call(this, message as never), 2_000);
    };
  });
  await page.getByRole('button', { name: /^Save the / }).click();
  await expect(page.getByRole('progressbar', { name: 'How far the file is' })).toBeVisible();
  await page.getByRole('button', { name: 'Give up' }).click();
  await expect(page.getByText('Given up; nothing was saved.')).toBeVisible();
  await expect(page.getByRole('button', { name: /^Save the / })).toBeVisible();
  await save(page);
});

test('files for a cutting machine come in one zip, as they are shown', async ({ page }) => {
  await openTray(page);
  await choose(page, 'Files for a cutting machine');
  const names = page.locator('trimwell-cut-maker .name');
  await expect(names.first()).toBeVisible();
  const shown = await names.allTextContents();
  const { path, name } = await save(page);
  expect(name).toMatch(new RegExp(`^hedgerow-wreath-${DAY}-cut-files-svg\\.zip$`));
  const files = unzipSync(await readFile(path));
  expect(Object.keys(files).filter((file) => file.endsWith('.svg'))).toEqual(shown);
  expect(Object.keys(files).some((file) => file.endsWith('.txt'))).toBe(true);
  const [first = ''] = shown;
  const svg = strFromU8(files[first] ?? new Uint8Array());
  expect(svg).toMatch(/^<svg [^>]*width="8\.5in" height="11in"/);
  await page.getByLabel('Written as').selectOption('dxf');
  await page.getByLabel('A file for').selectOption('piece');
  await expect(names.first()).toHaveText(/\.dxf$/);
  const pieces = unzipSync(await readFile((await save(page)).path));
  expect(Object.keys(pieces).filter((file) => file.endsWith('.dxf'))).toEqual(await names.allTextContents());
});

test('a piece list is shown, copied and saved as it was chosen', { tag: DESK }, async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await openTray(page);
  await choose(page, 'A piece list');
  const list = page.locator('trimwell-list-maker pre');
  await expect(list).toContainText('label,name,');
  await page.getByLabel('Of', { exact: true }).selectOption('setting');
  await page.getByLabel('Written as').selectOption('markdown');
  await expect(list).toContainText('|');
  const text = (await list.textContent()) ?? '';
  await page.getByRole('button', { name: 'Copy it' }).click();
  await expect(page.getByText('The list is copied.')).toBeVisible();
  expect(await page.evaluate(() => navigator.clipboard.readText())).toBe(text);
  const { path, name } = await save(page);
  expect(name).toMatch(new RegExp(`^hedgerow-wreath-pieces-setting-${DAY}\\.md$`));
  expect(await readFile(path, 'utf8')).toBe(text);
});

/** How many different colours a picture has, of every fiftieth point. */
function colours({ data }: PNG): number {
  const found = new Set<string>();
  for (let at = 0; at < data.length; at += 4 * 50) found.add(data.subarray(at, at + 3).join());
  return found.size;
}

test('a picture has the pixels that were asked for', { tag: DESK }, async ({ page }) => {
  await openTray(page);
  await choose(page, 'A picture');
  await expect(page.locator('trimwell-picture-maker img')).toBeVisible();
  const card = await save(page);
  expect(card.name).toMatch(new RegExp(`^hedgerow-wreath-${DAY}-card\\.png$`));
  const png = PNG.sync.read(await readFile(card.path));
  expect([png.width, png.height]).toEqual([1200, 800]);
  expect(colours(png)).toBeGreaterThan(50);
  await page.getByLabel('Of', { exact: true }).selectOption('guide');
  await page.getByLabel('Sheet', { exact: true }).selectOption('2');
  await page.getByLabel('Size').selectOption('other');
  const sides = page.getByLabel('Pixels');
  await sides.fill('12 by 9');
  await sides.press('Tab');
  await expect(page.getByRole('alert')).toContainText('"12 by 9" is no size; allowed: ');
  await sides.fill('640 x 480');
  await sides.press('Tab');
  await expect(page.getByText('640 x 480 pixels')).toBeVisible();
  const guide = await save(page);
  expect(guide.name).toMatch(/-guide-2\.png$/);
  const small = PNG.sync.read(await readFile(guide.path));
  expect([small.width, small.height]).toEqual([640, 480]);
  await page.getByLabel('Written as').selectOption('svg');
  const svg = await save(page);
  const drawn = PNG.sync.read(execFileSync(findReader('rsvg-convert'), [svg.path], { maxBuffer: 1 << 26 }));
  expect([drawn.width, drawn.height]).toEqual([640, 480]);
});

test('all of it works on a page with a strict policy', { tag: DESK }, async ({ page }) => {
  const errors = await openTray(page, './strict.html');
  await save(page);
  for (const kind of ['Files for a cutting machine', 'A piece list', 'A picture'] as const) {
    await choose(page, kind);
    await save(page);
  }
  expect(errors).toEqual([]);
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in any kind by ${colorScheme}, and nothing hangs over the edge`, {
    tag: deskByNight(colorScheme),
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openTray(page);
    await page.getByLabel('It opens only with a password').check();
    for (const kind of ['Pages to print', 'Files for a cutting machine', 'A piece list', 'A picture'] as const) {
      await choose(page, kind);
      await expect(page.getByRole('button', { name: /^Save the / })).toBeVisible();
      await expect(page.getByText('Being laid out')).toBeHidden();
      expect(await axeViolations(page)).toEqual([]);
      const over = await page.locator('trimwell-hand-on-tray').evaluate((tray) => {
        const room = tray.getBoundingClientRect();
        return tray.scrollWidth > Math.ceil(room.width) ? [tray.scrollWidth, room.width] : [];
      });
      expect(over).toEqual([]);
    }
  });
}
