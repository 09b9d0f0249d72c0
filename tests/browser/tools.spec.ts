import { expect, type Locator, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import type { Piece } from '@trimwell/sketch';
import { axeViolations } from './axe.js';
import { DESK } from './desk-only.js';
import { drawFinger, expectNoErrors, middleOf, openTable, pull } from './table.js';

const INCH = 16256;
const MARKS = ['trimwell-editor', 'trimwell-face', 'trimwell-edge-marks'];
const TRAY = ['trimwell-editor', 'trimwell-tray-host', 'trimwell-tools'];

/** The piece as it is shown; lengths in ticks. */
async function shown(page: Page, id: string): Promise<Piece> {
  const piece = await page.evaluate(
    (wanted) =>
      document
        .querySelector<TrimwellEditor>('trimwell-editor')
        ?.session?.state.sketch.pieces.find((one) => one.id === wanted) ?? null,
    id,
  );
  if (!piece) throw new Error(`no piece ${id}`);
  return piece;
}

/** Selects a piece, as a press in the stack does, and waits for its marks. */
async function take(page: Page, id: string): Promise<void> {
  await page.evaluate((piece) => {
    document
      .querySelector<TrimwellEditor>('trimwell-editor')
      ?.session?.dispatch({ event: 'piece.select', edits: [], selection: [piece], at: 0 });
  }, id);
  await expect(page.locator('trimwell-edge-marks button').first()).toBeVisible();
}

/** The grip of a corner; clockwise from the top left. */
function grip(page: Page, corner: 0 | 1 | 2 | 3): Locator {
  return page.locator('trimwell-face .handle.round .target').nth(corner);
}

async function pixelsPerInch(page: Page): Promise<number> {
  const box = await page.locator('trimwell-face [data-piece="panel"] path[data-role="outline"]').boundingBox();
  if (!box) throw new Error('the panel is not shown');
  return (box.width / (await shown(page, 'panel')).width) * INCH;
}

function mark(page: Page, edge: string): Locator {
  return page.locator('trimwell-edge-marks').getByRole('button', { name: new RegExp(`^${edge} edge`) });
}

function slip(page: Page): Locator {
  return page.locator('trimwell-edge-slip').getByRole('dialog');
}

function isPhone(page: Page): boolean {
  return (page.viewportSize()?.width ?? 0) < 640;
}

/** Drags from a spot with what the visitor has: a finger or the mouse. */
async function drag(page: Page, from: { x: number; y: number }, to: { x: number; y: number }): Promise<void> {
  if (isPhone(page)) await drawFinger(page, from, to);
  else {
    await pull(page, from, to);
    await page.mouse.up();
  }
}

async function press(page: Page, target: Locator): Promise<void> {
  if (isPhone(page)) await target.tap();
  else await target.click();
}

test('a corner is rounded on the card by its grip: all alike together, and undone in one step', async ({ page }) => {
  const errors = await openTable(page);
  await take(page, 'panel');
  const before = (await shown(page, 'panel')).corners;
  const from = await middleOf(grip(page, 0));
  const by = (await pixelsPerInch(page)) * 0.5;
  await drag(page, from, { x: from.x + by, y: from.y + by });
  const { corners } = await shown(page, 'panel');
  expect(corners.tl).toBeGreaterThan(before.tl);
  expect(new Set(Object.values(corners)).size).toBe(1);
  expect(corners.tl % (INCH / 64)).toBe(0);
  await page.evaluate(() => document.querySelector<TrimwellEditor>('trimwell-editor')?.session?.undo());
  expect((await shown(page, 'panel')).corners).toEqual(before);
  expectNoErrors(errors);
});

test('an edge is punched from the pictures on its slip, and made plain again', async ({ page }) => {
  const errors = await openTable(page);
  await take(page, 'panel');
  await press(page, mark(page, 'top'));
  await expect(slip(page)).toBeVisible();
  await expect(slip(page).getByRole('button', { name: 'Plain' })).toBeFocused();
  await press(page, slip(page).getByRole('button', { name: 'Zigzag' }));
  await expect.poll(async () => (await shown(page, 'panel')).punched.top).toBe('zigzag-1');
  await expect(slip(page).getByRole('status')).toContainText('repeats');
  await press(page, slip(page).getByRole('button', { name: 'Plain' }));
  await expect.poll(async () => (await shown(page, 'panel')).punched.top).toBeUndefined();
  await press(page, slip(page).getByRole('button', { name: 'Done' }));
  await expect(page.locator('trimwell-edge-slip')).toHaveCount(0);
  expectNoErrors(errors);
});

test('by keys alone: mark, slip, punch, back to the mark', { tag: DESK }, async ({ page }) => {
  await openTable(page);
  await take(page, 'panel');
  await mark(page, 'bottom').focus();
  await page.keyboard.press('Enter');
  await expect(slip(page).getByRole('button', { name: 'Plain' })).toBeFocused();
  await page.keyboard.press('Tab');
  await page.keyboard.press('Space');
  await expect.poll(async () => (await shown(page, 'panel')).punched.bottom).not.toBeUndefined();
  await page.keyboard.press('Escape');
  await expect(page.locator('trimwell-edge-slip')).toHaveCount(0);
  await expect(mark(page, 'bottom')).toBeFocused();
  // The keys were for the slip: the piece is still there and selected.
  expect((await shown(page, 'panel')).id).toBe('panel');
});

test('a length is typed as a sum: its result stands under the field, and Enter takes it', { tag: DESK }, async ({
  page,
}) => {
  await openTable(page);
  await take(page, 'panel');
  const width = page.locator('trimwell-ticket').getByRole('textbox', { name: 'Width' });
  await width.fill('3 1/2 + 2*1/16 - 1/8');
  await expect(page.locator('trimwell-ticket .worked').first()).toHaveText('= 3 1⁄2 in');
  await width.press('Enter');
  await expect.poll(async () => (await shown(page, 'panel')).width).toBe(3.5 * INCH);
  await width.press('ArrowUp');
  await expect.poll(async () => (await shown(page, 'panel')).width).toBe((3.5 + 1 / 16) * INCH);
  await width.fill('3 in * 2 in');
  await width.press('Enter');
  await expect(page.locator('trimwell-ticket').getByRole('alert')).toContainText('an area');
  await width.press('Escape');
  await expect(width).toHaveValue('3 9⁄16 in');
});

test('the tray of tools: own rounders come first in the ticket, and are remembered', async ({ page }) => {
  const errors = await openTable(page);
  const tray = async (): Promise<void> => {
    await page.evaluate(() =>
      document
        .querySelector('trimwell-editor')
        ?.dispatchEvent(new CustomEvent('tray-wish', { detail: { tray: 'tools' }, bubbles: true, composed: true })),
    );
    await expect(page.locator('trimwell-tools h3').first()).toBeVisible();
  };
  await tray();
  await press(page, page.getByRole('button', { name: 'Corner rounder, 1⁄4 in' }));
  const another = page.getByRole('textbox', { name: 'Radius of another rounder you have' });
  await another.fill('1/4 + 1/16');
  await another.press('Enter');
  await expect(page.getByRole('button', { name: 'Corner rounder, 5⁄16 in' })).toHaveAttribute('aria-pressed', 'true');
  expect(await axeViolations(page, TRAY)).toEqual([]);
  await page.reload();
  await expect(page.locator('trimwell-face [role="option"]').first()).toBeVisible();
  await take(page, 'panel');
  const radii = page.locator('trimwell-corners .radii button');
  await expect(radii).toHaveText(['0', '1⁄4', '5⁄16']);
  await radii.nth(2).click();
  await expect.poll(async () => (await shown(page, 'panel')).corners.tl).toBe((5 / 16) * INCH);
  expectNoErrors(errors);
});

test('a punch measured with a ruler is put into the sketch', async ({ page }) => {
  await openTable(page);
  await take(page, 'panel');
  await press(page, mark(page, 'left'));
  await press(page, slip(page).getByRole('button', { name: 'Measure your own' }));
  const form = page.locator('trimwell-punch-form');
  await form.getByRole('textbox', { name: 'Name' }).fill('Hedge punch');
  const repeat = form.getByRole('textbox', { name: 'Repeat of the punch' });
  await repeat.fill('5 in / 8');
  await repeat.press('Enter');
  await form.getByRole('radio', { name: 'arch' }).check({ force: true });
  await expect(form.getByRole('img')).toHaveAttribute('aria-label', /edge of arch: repeat 5\/8 in/);
  expect(await axeViolations(page, TRAY)).toEqual([]);
  await press(page, form.getByRole('button', { name: 'Put it in this sketch' }));
  await expect(page.locator('trimwell-tools .punches')).toContainText('Hedge punch');
});

test('the slip and the marks offend nothing that axe knows of', async ({ page }) => {
  await openTable(page);
  await take(page, 'panel');
  expect(await axeViolations(page, MARKS)).toEqual([]);
  expect(await axeViolations(page, ['trimwell-editor', 'trimwell-ticket', 'trimwell-corners'])).toEqual([]);
  expect(await axeViolations(page, ['trimwell-editor', 'trimwell-ticket', 'trimwell-edges'])).toEqual([]);
  await press(page, mark(page, 'top'));
  await expect(slip(page)).toBeVisible();
  expect(await axeViolations(page, [...MARKS, 'trimwell-edge-slip'])).toEqual([]);
});
