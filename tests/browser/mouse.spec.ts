import { expect, test } from '@playwright/test';
import {
  boxOf,
  expectNoErrors,
  guideText,
  middleOf,
  openTable,
  outlineBox,
  pieceIn,
  pieceOn,
  pixelsPerInch,
  pull,
  settledPlan,
  sketchText,
  tally,
} from './table.js';

const INCH = 16256;

test('pulling a handle changes the piece, its guide and the tally in the same gesture; undo brings all back', async ({
  page,
}) => {
  const errors = await openTable(page);
  const [before, guide, counted] = [await sketchText(page), await guideText(page, 'Green gingham'), await tally(page)];
  const strip = await outlineBox(page, 'strip');
  const inch = await pixelsPerInch(page);
  await page.mouse.click(strip.x + 12, strip.y + strip.height / 2);
  await pull(
    page,
    { x: strip.x + strip.width / 2, y: strip.y + strip.height - 1 },
    { x: strip.x + strip.width / 2, y: strip.y + strip.height + 2 * inch },
    30,
  );
  // The button is still down: everything has followed already.
  await expect.poll(async () => (await pieceIn(page, 'strip')).height / INCH).toBeGreaterThan(2.5);
  await expect.poll(() => guideText(page, 'Green gingham')).not.toBe(guide);
  await expect.poll(() => tally(page)).not.toBe(counted);
  await page.mouse.up();
  await settledPlan(page);
  expect((await pieceIn(page, 'strip')).height % (INCH / 16)).toBe(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await settledPlan(page);
  expect(await sketchText(page)).toBe(before);
  expect(await guideText(page, 'Green gingham')).toBe(guide);
  expect(await tally(page)).toBe(counted);
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  expectNoErrors(errors);
});

test('a dragged piece lands where the pointer takes it, on a mark of the ruler, and its mat follows', async ({
  page,
}) => {
  await openTable(page);
  const inch = await pixelsPerInch(page);
  const start = await pieceIn(page, 'wreath');
  const from = await middleOf(pieceOn(page, 'wreath').locator('path[data-role="outline"]'));
  await pull(page, from, { x: from.x - 0.5 * inch, y: from.y + 0.7 * inch });
  await page.mouse.up();
  const end = await pieceIn(page, 'wreath');
  expect(Math.abs(end.x - start.x + 0.5 * INCH)).toBeLessThanOrEqual(INCH / 8);
  expect(Math.abs(end.y - start.y - 0.7 * INCH)).toBeLessThanOrEqual(INCH / 8);
  expect((await pieceIn(page, 'wreath-mat')).x).toBe(end.x - INCH / 8);
});

test('Escape in the middle of a drag puts everything back, and leaves nothing to undo', async ({ page }) => {
  await openTable(page);
  const before = await sketchText(page);
  const from = await middleOf(pieceOn(page, 'greeting').locator('path[data-role="outline"]'));
  await pull(page, from, { x: from.x + 40, y: from.y - 90 });
  expect(await sketchText(page)).not.toBe(before);
  await page.keyboard.press('Escape');
  expect(await sketchText(page)).toBe(before);
  await page.mouse.up();
  expect(await sketchText(page)).toBe(before);
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

test('a tilted piece is resized in its own directions: the opposite edge stays where it is', async ({ page }) => {
  await openTable(page);
  await page.getByRole('button', { name: 'Star window' }).click();
  await settledPlan(page);
  const start = await pieceIn(page, 'tag');
  const box = await boxOf(pieceOn(page, 'tag').locator('path[data-role="outline"]'));
  await page.mouse.click(box.x + box.width / 2, box.y + box.height * 0.7);
  const handles = page.locator('trimwell-face .handle:not(.tilt)');
  const places = await handles.evaluateAll((all) =>
    all
      .map((handle) => handle.getBoundingClientRect())
      .map(({ x, y, width, height }) => ({ x: x + width / 2, y: y + height / 2 })),
  );
  const lowest = places.reduce((a, b) => (b.y > a.y ? b : a));
  await pull(page, lowest, { x: lowest.x - 8, y: lowest.y + 40 });
  await page.mouse.up();
  const end = await pieceIn(page, 'tag');
  expect(end.tilt).toBe(start.tilt);
  expect(end.height).toBeGreaterThan(start.height);
  const topLeft = ({ x, y, width, height, tilt }: typeof start) => {
    const turn = (tilt * Math.PI) / 180;
    return [
      x + width / 2 - (width / 2) * Math.cos(turn) + (height / 2) * Math.sin(turn),
      y + height / 2 - (width / 2) * Math.sin(turn) - (height / 2) * Math.cos(turn),
    ] as const;
  };
  // Which corner was pulled depends on the tilt; the corner across from it must not have moved by more than a few ticks.
  const corners = [start, end].map(topLeft);
  const moved = Math.hypot(
    (corners[1]?.[0] ?? 0) - (corners[0]?.[0] ?? 0),
    (corners[1]?.[1] ?? 0) - (corners[0]?.[1] ?? 0),
  );
  expect(moved).toBeLessThan(start.width);
});

test('a sheet that is taken from the table and dropped on the card becomes a new piece', async ({ page }) => {
  await openTable(page);
  const before = (JSON.parse(await sketchText(page)) as { pieces: readonly unknown[] }).pieces.length;
  const sheet = await middleOf(page.locator('trimwell-sheets .sheet').first());
  const panel = await outlineBox(page, 'panel');
  await pull(page, sheet, { x: panel.x + panel.width / 2, y: panel.y + panel.height * 0.75 }, 20);
  await page.mouse.up();
  const pieces = (JSON.parse(await sketchText(page)) as { pieces: readonly { from: string; id: string }[] }).pieces;
  expect(pieces).toHaveLength(before + 1);
  expect(pieces.at(-1)?.from).toBe('ivory');
  await pull(page, sheet, { x: sheet.x, y: sheet.y - 60 });
  await page.mouse.up();
  expect((JSON.parse(await sketchText(page)) as { pieces: readonly unknown[] }).pieces).toHaveLength(before + 1);
});

test('the pin of the yield ruler sets the batch, and the plan follows', async ({ page }) => {
  await openTable(page);
  const ruler = await boxOf(page.getByRole('slider', { name: 'Cards in the batch' }));
  await page.mouse.click(ruler.x + (ruler.width * 3.5) / 24, ruler.y + 30);
  await settledPlan(page);
  expect(await tally(page)).toContain('4 cards');
  await page.getByRole('button', { name: 'Undo' }).click();
  await settledPlan(page);
  expect(await tally(page)).toContain('12 cards');
});

test('what is pointed at lights up on the sheets', async ({ page }) => {
  await openTable(page);
  const greeting = await middleOf(pieceOn(page, 'greeting').locator('path[data-role="outline"]'));
  await page.mouse.move(greeting.x, greeting.y);
  await expect.poll(() => page.locator('trimwell-sheets [data-role="blank"].lit').count()).toBeGreaterThan(0);
  const lit = await page
    .locator('trimwell-sheets [data-role="blank"].lit')
    .evaluateAll((all) => all.map((blank) => blank.getAttribute('data-piece')));
  expect(new Set(lit)).toEqual(new Set(['greeting']));
});
