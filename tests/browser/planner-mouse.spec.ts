import { expect, type Page, test } from '@playwright/test';
import { stripSketch } from '../kit/strip-sketch.js';
import { laySketch, middleOf, openTable, pieceIn, pieceOn, pull } from './table.js';

const INCH = 16256;

const slips = (page: Page) => page.locator('trimwell-near-misses .slip');
const tryOn = (page: Page) => page.getByRole('button', { name: /^Try on: Make Strip/ });

test('a piece that was moved since is tried on where it lies, and no slip is offered during a drag', async ({
  page,
}) => {
  await openTable(page);
  await laySketch(page, stripSketch('2 1/8 in'));
  const from = await middleOf(pieceOn(page, 'strip').locator('path[data-role="outline"]'));
  await pull(page, from, { x: from.x, y: from.y + 60 });
  await expect(slips(page)).toHaveCount(0);
  await page.mouse.up();
  const { y } = await pieceIn(page, 'strip');
  await tryOn(page).click();
  expect((await pieceIn(page, 'strip')).y).toBe(y + INCH / 16);
});

test('pointing at a piece lights it up on every card, and a card lights it up everywhere else', async ({ page }) => {
  await openTable(page);
  await page.getByRole('button', { name: 'Lay out all 12' }).click();
  const greetings = page.locator('trimwell-batch use[data-piece="greeting"]');
  await greetings.nth(2).hover();
  await expect(page.locator('trimwell-batch use.lit')).toHaveCount(12);
  await expect(page.locator('trimwell-sheets [data-role="blank"].lit').first()).toBeAttached();
  await greetings.nth(2).click();
  await expect(pieceOn(page, 'greeting')).toHaveAttribute('aria-selected', 'true');
});

test('a drag does not redraw the cards that are laid out; they follow when it ends', async ({ page }) => {
  await openTable(page);
  await page.getByRole('button', { name: 'Lay out all 12' }).click();
  const drawn = () => page.locator('trimwell-batch .templates').evaluate((templates) => templates.innerHTML);
  const before = await drawn();
  const from = await middleOf(pieceOn(page, 'greeting').locator('path[data-role="outline"]'));
  await pull(page, from, { x: from.x, y: from.y - 60 });
  expect(await drawn()).toBe(before);
  await page.mouse.up();
  await expect.poll(drawn).not.toBe(before);
});
