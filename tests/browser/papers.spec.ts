import { crc32, deflateSync } from 'node:zlib';
import { expect, type Locator, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import type { Paper } from '@trimwell/sketch';
import { axeViolations } from './axe.js';
import { DESK } from './desk-only.js';
import { expectNoErrors, openTable, settledPlan, sketchText } from './table.js';

const INCH = 16256;
const TRAY = ['trimwell-editor', 'trimwell-tray-host', 'trimwell-papers'];

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data]);
  const length = Buffer.alloc(4);
  length.writeUInt32BE(data.length);
  const check = Buffer.alloc(4);
  check.writeUInt32BE(crc32(body));
  return Buffer.concat([length, body, check]);
}

/** A PNG of `width` x `height` pixels (PNG, third edition, 8 bit RGB): its left half of one colour, its right of another. */
function twoColours(width: number, height: number, left: readonly number[], right: readonly number[]): Buffer {
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 2, 0, 0, 0], 8);
  const row = Buffer.from([0, ...Array.from({ length: width }, (_, x) => (x < width / 2 ? left : right)).flat()]);
  const rows = Buffer.concat(Array.from({ length: height }, () => row));
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

async function papers(page: Page): Promise<readonly Paper[]> {
  return page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.sketch?.papers ?? []);
}

async function paperNamed(page: Page, name: string): Promise<Paper> {
  const found = (await papers(page)).find((paper) => paper.name === name);
  if (!found) throw new Error(`no paper ${name}`);
  return found;
}

/** What lies in the tray of papers; the tray itself is around it. */
function papersOf(page: Page): Locator {
  return page.locator('trimwell-papers');
}

async function putAway(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Put away' }).click();
  await expect(papersOf(page)).toHaveCount(0);
}

/** Opens the tray of papers by the name of a sheet at the table's edge. */
async function openPaper(page: Page, name: string): Promise<Locator> {
  await page.locator('trimwell-sheets').getByRole('button', { name, exact: true }).click();
  await expect(page.getByRole('dialog', { name: 'Papers' })).toBeVisible();
  const tray = papersOf(page);
  await expect(tray.getByRole('textbox', { name: 'Name of the paper' })).toHaveValue(name);
  return tray;
}

test('a paper is opened by its name at the table, changed, and the plan follows; undo brings all back', async ({
  page,
}) => {
  const errors = await openTable(page);
  const before = await sketchText(page);
  const tray = await openPaper(page, 'Spruce card');
  await tray.getByRole('combobox', { name: 'Usual size' }).selectOption('8 × 8 in');
  await tray.getByRole('checkbox', { name: 'as many as needed' }).check();
  await tray.getByRole('spinbutton', { name: 'Weight in grams per square metre' }).fill('250');
  await tray.getByRole('spinbutton', { name: 'Weight in grams per square metre' }).press('Enter');
  await tray.getByRole('textbox', { name: 'Thickness of a sheet' }).fill('0.3 mm');
  await tray.getByRole('textbox', { name: 'Thickness of a sheet' }).press('Tab');
  await tray.getByRole('radio', { name: 'leaf' }).check();
  await tray.getByRole('button', { name: 'Mark it' }).click();
  await tray.getByRole('button', { name: 'Colours: Rowan' }).click();
  const spruce = await paperNamed(page, 'Spruce card');
  expect(spruce).toMatchObject({ width: 8 * INCH, height: 8 * INCH, gsm: 250, caliper: 192, directional: true });
  expect(spruce).not.toHaveProperty('sheets');
  expect(spruce.look).toMatchObject({ pattern: 'leaf', ground: '#f4e1d6' });
  await settledPlan(page);
  await putAway(page);
  for (let step = 0; step < 7; step += 1) await page.getByRole('button', { name: 'Undo' }).click();
  expect(await sketchText(page)).toBe(before);
  expectNoErrors(errors);
});

test('what cannot be is refused in words and changes nothing', async ({ page }) => {
  await openTable(page);
  const tray = await openPaper(page, 'Spruce card');
  const before = await sketchText(page);
  await tray.getByRole('spinbutton', { name: 'Weight in grams per square metre' }).fill('5');
  await tray.getByRole('spinbutton', { name: 'Weight in grams per square metre' }).press('Tab');
  await expect(tray.getByRole('alert')).toHaveText('Allowed: 10 to 2000.');
  await tray.getByRole('textbox', { name: 'Thickness of a sheet' }).fill('thick');
  await tray.getByRole('textbox', { name: 'Thickness of a sheet' }).press('Tab');
  await expect(tray.getByRole('alert')).toContainText('0.012 in');
  await tray.getByRole('textbox', { name: 'Margin on all sides' }).fill('6 in');
  await tray.getByRole('textbox', { name: 'Margin on all sides' }).press('Enter');
  await expect(tray.getByRole('alert')).toContainText('Margins must leave something of the sheet.');
  expect(await sketchText(page)).toBe(before);
});

test('by keys alone: another paper from the row of sheets, named, and taken away again', { tag: DESK }, async ({
  page,
}) => {
  await openTable(page);
  const count = (await papers(page)).length;
  await page.locator('trimwell-sheets').getByRole('button', { name: 'Another paper' }).focus();
  await page.keyboard.press('Enter');
  const tray = papersOf(page);
  const name = tray.getByRole('textbox', { name: 'Name of the paper' });
  await expect(name).toBeFocused();
  await page.keyboard.type('Wild plum');
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await papers(page)).map((paper) => paper.name)).toContain('Wild plum');
  await expect(tray.getByRole('button', { name: /^Wild plum/ })).toHaveAttribute('aria-pressed', 'true');
  await tray.getByRole('radio', { name: 'plain' }).focus();
  await page.keyboard.press('ArrowRight');
  expect((await paperNamed(page, 'Wild plum')).look.pattern).toBe('stripe');
  await page.keyboard.press('Control+z');
  expect((await paperNamed(page, 'Wild plum')).look.pattern).toBe('plain');
  await tray.locator('.leave').focus();
  await page.keyboard.press('Enter');
  await expect.poll(async () => (await papers(page)).length).toBe(count);
  await expect(tray.locator('.sheet:focus')).toHaveCount(1);
  await page.keyboard.press('Escape');
  await expect(tray).toHaveCount(0);
});

test('a paper in use says what needs it, and goes when that is cut from another one, in one step', async ({ page }) => {
  await openTable(page);
  const before = await sketchText(page);
  const tray = await openPaper(page, 'Spruce card');
  await tray.getByRole('button', { name: 'Take away', exact: true }).click();
  const asks = tray.locator('trimwell-remove-form');
  await expect(asks.getByRole('alert')).toContainText(
    'Spruce card is in use: Panel mat and Wreath mat are cut from it',
  );
  await asks.getByRole('combobox').selectOption({ label: 'Rowan card' });
  await asks.getByRole('button', { name: 'Take away' }).click();
  await expect.poll(async () => (await papers(page)).map(({ name }) => name)).not.toContain('Spruce card');
  await putAway(page);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await sketchText(page)).toBe(before);
});

test('a mix is made, filled, put in another order, and says what it does', async ({ page }) => {
  await openTable(page);
  const tray = await openPaper(page, 'Spruce card');
  await tray.getByRole('button', { name: 'Make a mix' }).click();
  await expect(tray.getByRole('textbox', { name: 'Name of the mix' }).last()).toBeFocused();
  await page.keyboard.type('Greens');
  await page.keyboard.press('Enter');
  const mix = tray.getByRole('region', { name: 'Mix Greens' });
  await mix.getByRole('combobox', { name: 'Put a paper into Greens' }).selectOption({ label: 'Spruce card' });
  await expect(mix).toContainText('3 papers take turns');
  await mix.getByRole('button', { name: 'Spruce card: earlier' }).click();
  await expect(mix.getByRole('listitem').nth(1)).toContainText('Spruce card');
  await mix.getByRole('button', { name: 'Spruce card: take out' }).click();
  await expect(mix.getByRole('listitem')).toHaveCount(2);
  await mix.getByRole('button', { name: 'Take the mix away' }).click();
  await expect(mix).toHaveCount(0);
});

test('a photograph of the sheet is cut to it, shown on the table at the scale of the sheet, and kept', async ({
  page,
}) => {
  const errors = await openTable(page);
  const tray = await openPaper(page, 'Ivory card');
  // Twice as wide as high, for an upright sheet: it is turned by a quarter, so that red lies above blue.
  const buffer = twoColours(1200, 600, [200, 30, 30], [30, 30, 200]);
  const picker = tray.getByLabel('Use a picture of the sheet');
  await picker.setInputFiles({ name: 'sheet.png', mimeType: 'image/png', buffer });
  await tray.getByRole('button', { name: 'Use this part' }).click();
  await expect(tray.getByText('Shown with your own photograph.')).toBeVisible();
  const ivory = await paperNamed(page, 'Ivory card');
  expect(ivory.look.photo).toMatch(/^[0-9a-f]{64}$/);
  // The mean of both halves, as far as a lossy picture keeps it.
  const mean = [1, 3, 5].map((at) => Number.parseInt(ivory.look.ground.slice(at, at + 2), 16));
  for (const [at, value] of [115, 30, 115].entries()) expect(Math.abs((mean[at] ?? 0) - value)).toBeLessThan(12);
  // 8 1/2 x 11 in are 2159 x 2794 tenths of a millimetre.
  const image = page.locator('trimwell-face pattern image').first();
  await expect(image).toHaveAttribute('width', '2159');
  await expect(image).toHaveAttribute('height', '2794');
  await expect(page.locator('trimwell-sheets pattern image').first()).toHaveAttribute('href', /^blob:/);
  const colours = await page.evaluate(
    async (href) => {
      const bitmap = await createImageBitmap(await (await fetch(href ?? '')).blob());
      const canvas = new OffscreenCanvas(bitmap.width, bitmap.height);
      const context = canvas.getContext('2d');
      context?.drawImage(bitmap, 0, 0);
      const at = (y: number) => [...(context?.getImageData(bitmap.width / 2, y, 1, 1).data ?? [])];
      return { width: bitmap.width, height: bitmap.height, top: at(8), bottom: at(bitmap.height - 8) };
    },
    await image.getAttribute('href'),
  );
  expect(colours.width / colours.height).toBeCloseTo(8.5 / 11, 2);
  expect(colours.top[0]).toBeGreaterThan(150);
  expect(colours.bottom[2]).toBeGreaterThan(150);
  await tray.getByRole('button', { name: 'Take the photograph off' }).click();
  expect((await paperNamed(page, 'Ivory card')).look).not.toHaveProperty('photo');
  await expect(page.locator('trimwell-face pattern image')).toHaveCount(0);
  expectNoErrors(errors);
});

test('what is no picture is refused in clear words, and a photograph of elsewhere is said to be missing', {
  tag: DESK,
}, async ({ page }) => {
  await openTable(page);
  const tray = await openPaper(page, 'Ivory card');
  const before = await sketchText(page);
  const picker = tray.getByLabel('Use a picture of the sheet');
  await picker.setInputFiles({ name: 'list.txt', mimeType: 'text/plain', buffer: Buffer.from('ivory') });
  await expect(tray.getByRole('alert')).toContainText('“list.txt” is text/plain, not a picture.');
  await picker.setInputFiles({ name: 'torn.png', mimeType: 'image/png', buffer: Buffer.from('not a picture') });
  await expect(tray.getByRole('alert')).toContainText('“torn.png” cannot be read as a picture');
  // Made in the page: so large a file would take its time through the driver.
  await picker.evaluate((box: HTMLInputElement) => {
    const chosen = new DataTransfer();
    chosen.items.add(new File([new Uint8Array(40 * 1024 * 1024 + 1)], 'vast.png', { type: 'image/png' }));
    box.files = chosen.files;
    box.dispatchEvent(new Event('change'));
  });
  await expect(tray.getByRole('alert')).toContainText('at most 40 MB');
  expect(await sketchText(page)).toBe(before);
  await page.evaluate(() => {
    const session = document.querySelector<TrimwellEditor>('trimwell-editor')?.session;
    const paper = session?.state.sketch.papers.find(({ name }) => name === 'Ivory card');
    if (!session || !paper) return;
    const look = { ...paper.look, photo: 'ab'.repeat(32) };
    session.dispatch({ event: 'paper.change', edits: [{ do: 'set-paper', paper: { ...paper, look } }], at: 1 });
  });
  await tray.getByRole('button', { name: /^Spruce card/ }).click();
  await tray.getByRole('button', { name: /^Ivory card/ }).click();
  await expect(tray.getByText('is not on this machine')).toBeVisible();
});

test('the tray has no violation that axe finds, with a paper in use and with the picture chooser open', async ({
  page,
}) => {
  await openTable(page);
  const tray = await openPaper(page, 'Hedgerow sprig');
  expect(await axeViolations(page, TRAY)).toEqual([]);
  await tray.getByRole('button', { name: 'Take away', exact: true }).click();
  const buffer = twoColours(40, 40, [200, 200, 30], [30, 30, 200]);
  await tray
    .getByLabel('Use a picture of the sheet')
    .setInputFiles({ name: 'sheet.png', mimeType: 'image/png', buffer });
  await expect(tray.getByRole('button', { name: 'Use this part' })).toBeFocused();
  expect(await axeViolations(page, TRAY)).toEqual([]);
});
