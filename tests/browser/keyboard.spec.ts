import { expect, test } from '@playwright/test';
import { expectNoErrors, guideText, openTable, pieceIn, pieceOn, settledPlan, sketchText, tally } from './table.js';

const STEP = 16256 / 16;

test('by keyboard alone: pick, move, resize, see the guide and the tally follow, undo it all', async ({ page }) => {
  const errors = await openTable(page);
  const [before, guide] = [await sketchText(page), await guideText(page, 'Green gingham')];
  const start = await pieceIn(page, 'strip');
  await pieceOn(page, 'panel-mat').focus();
  for (let n = 0; n < 40; n += 1) {
    if ((await page.evaluate(() => document.querySelector('trimwell-editor')?.session?.state.selection[0])) === 'strip')
      break;
    await page.keyboard.press('.');
  }
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('ArrowDown');
  expect(await pieceIn(page, 'strip')).toMatchObject({ x: start.x + STEP, y: start.y + STEP });
  for (let n = 0; n < 16; n += 1) await page.keyboard.press('Control+ArrowDown');
  expect((await pieceIn(page, 'strip')).height).toBe(start.height + 16 * STEP);
  await settledPlan(page);
  expect(await guideText(page, 'Green gingham')).not.toBe(guide);
  for (let n = 0; n < 18; n += 1) await page.keyboard.press('Control+z');
  await settledPlan(page);
  expect(await sketchText(page)).toBe(before);
  expect(await guideText(page, 'Green gingham')).toBe(guide);
  expectNoErrors(errors);
});

test('a size is typed as a length; what is none stays, and says what is allowed', async ({ page }) => {
  await openTable(page);
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  const width = page.locator('trimwell-ticket').getByRole('textbox', { name: 'Width', exact: true });
  await width.fill('3 1/2');
  await width.press('Enter');
  expect((await pieceIn(page, 'strip')).width).toBe(3.5 * 16256);
  await width.fill('80 mm');
  await width.press('Enter');
  expect((await pieceIn(page, 'strip')).width).toBe(80 * 640);
  await width.fill('rather wide');
  await width.press('Enter');
  await expect(page.getByRole('alert')).toContainText('is no number, no unit and no sign. Such as 4 1/4 in');
  expect((await pieceIn(page, 'strip')).width).toBe(80 * 640);
  await expect(width).toHaveValue('rather wide');
});

test('a piece is added, named, punched, rounded, reordered and taken away without a drag', async ({ page }) => {
  await openTable(page);
  const before = await sketchText(page);
  await page.getByRole('button', { name: 'Cut a piece from Rowan card' }).press('Enter');
  const ticket = page.locator('trimwell-ticket');
  await ticket.getByRole('textbox', { name: 'Name of the piece' }).fill('Red label');
  await ticket.getByRole('textbox', { name: 'Name of the piece' }).press('Enter');
  await ticket.getByRole('textbox', { name: 'Radius of all corners' }).fill('1/8');
  await ticket.getByRole('textbox', { name: 'Radius of all corners' }).press('Enter');
  await ticket.getByRole('button', { name: 'top plain' }).press('Enter');
  await page.getByRole('dialog').getByRole('button', { name: 'Small scallops' }).press('Enter');
  await page.getByRole('dialog').getByRole('button', { name: 'Done' }).press('Enter');
  const id = await page.evaluate(
    () => document.querySelector('trimwell-editor')?.session?.state.selection.at(-1) ?? '',
  );
  expect(await pieceIn(page, id)).toMatchObject({
    name: 'Red label',
    from: 'rowan',
    corners: { tl: 2032, br: 2032 },
    punched: { top: 'small-scallops' },
  });
  await expect(ticket.getByRole('button', { name: 'Glue later' })).toBeDisabled();
  await ticket.getByRole('button', { name: 'Glue earlier' }).press('Enter');
  await expect(ticket.getByRole('button', { name: 'Glue later' })).toBeEnabled();
  await ticket.getByRole('button', { name: 'Take away' }).press('Enter');
  expect((JSON.parse(await sketchText(page)) as { pieces: readonly unknown[] }).pieces).toHaveLength(
    (JSON.parse(before) as { pieces: readonly unknown[] }).pieces.length,
  );
});

test('the ruler is a slider for the arrow keys', async ({ page }) => {
  await openTable(page);
  const ruler = page.getByRole('slider', { name: 'Cards in the batch' });
  await ruler.focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('ArrowLeft');
  await settledPlan(page);
  expect(await tally(page)).toContain('10 cards');
  await page.keyboard.press('Home');
  await settledPlan(page);
  expect(await tally(page)).toContain('1 card');
  await expect(ruler).toHaveAttribute('aria-valuenow', '1');
});

test('millimetres and inches are the same sketch', async ({ page }) => {
  await openTable(page);
  const start = await pieceIn(page, 'strip');
  await page.getByRole('button', { name: 'mm', exact: true }).click();
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  await expect(page.locator('trimwell-ticket').getByRole('textbox', { name: 'Width', exact: true })).toHaveValue(
    '95.25 mm',
  );
  expect(await pieceIn(page, 'strip')).toEqual(start);
});

test("events tell of the user's own doing only: each change, and whether it is settled", async ({ page }) => {
  await openTable(page);
  await page.evaluate(() => {
    const editor = document.querySelector('trimwell-editor');
    const heard: string[] = [];
    Object.assign(window, { heard });
    editor?.addEventListener('sketch-change', (event) => {
      const { sketch, settled } = (event as CustomEvent<{ sketch: { title: string }; settled: boolean }>).detail;
      heard.push(`${sketch.title} ${settled ? 'settled' : 'moving'}`);
    });
    editor?.addEventListener('plan-change', (event) => {
      if ((event as CustomEvent<{ plan: object | null }>).detail.plan) heard.push('plan');
    });
  });
  const heard = () => page.evaluate(() => (window as unknown as { heard: readonly string[] }).heard);
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  expect(await heard()).toEqual([]);
  await page.keyboard.press('Control+ArrowRight');
  await settledPlan(page);
  const changes = (await heard()).filter((word) => word !== 'plan');
  expect(changes).toEqual(['Hedgerow wreath moving', 'Hedgerow wreath settled']);
  expect(await heard()).toContain('plan');
  await page.evaluate(() => {
    const editor = document.querySelector('trimwell-editor');
    if (editor?.sketch) editor.sketch = { ...editor.sketch, title: 'Set by the page' };
  });
  await settledPlan(page);
  expect((await heard()).filter((word) => word !== 'plan')).toEqual(changes);
});
