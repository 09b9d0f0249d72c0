import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import type { Edit } from '@trimwell/sketch';
import { axeViolations } from './axe.js';
import { DESK } from './desk-only.js';
import { expectNoErrors, openTable, pieceIn, sketchText } from './table.js';

/** The gluing order of the front, lowest first. */
async function order(page: Page): Promise<string> {
  return page.evaluate(
    () =>
      document
        .querySelector<TrimwellEditor>('trimwell-editor')
        ?.sketch?.pieces.filter(({ face }) => face === 'front')
        .map(({ id }) => id)
        .join(' ') ?? '',
  );
}

/** Makes edits as one step. */
async function edit(page: Page, edits: readonly unknown[]): Promise<void> {
  await page.evaluate((made) => {
    const session = document.querySelector<TrimwellEditor>('trimwell-editor')?.session;
    session?.dispatch({ event: 'test.edit', edits: made as readonly Edit[], at: 1 });
  }, edits);
}

const inch = 16256;
const round = { do: 'round', piece: 'greeting', corners: { tl: inch, tr: inch, br: inch, bl: inch } };

test('by keys alone: along the stack, take, glue later and earlier, lock, undo', { tag: DESK }, async ({ page }) => {
  const errors = await openTable(page);
  const before = await sketchText(page);
  await page.locator('trimwell-stack .pick[data-row="greeting"]').focus();
  await page.keyboard.press('PageDown');
  expect(await order(page)).toBe('panel-mat panel scallops strip wreath-mat greeting wreath');
  await page.keyboard.press('Shift+PageDown');
  expect(await order(page)).toBe('greeting panel-mat panel scallops strip wreath-mat wreath');
  await expect(page.locator('trimwell-stack [role="status"]')).toHaveText(
    'Greeting: right over the card base, 1 of 7 from the card up',
  );
  // The focus stays with the row, wherever it goes.
  await page.keyboard.press('ArrowRight');
  await page.keyboard.press('Space');
  expect((await pieceIn(page, 'greeting')).locked).toBe(true);
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('PageUp');
  expect(await order(page)).toBe('greeting panel-mat panel scallops strip wreath-mat wreath');
  await expect(page.locator('trimwell-stack .refused')).toHaveText('Greeting is locked in its place.');
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+z');
  expect(await sketchText(page)).toBe(before);
  expectNoErrors(errors);
});

test('the buttons do what a drag does, for several pieces at once', async ({ page }) => {
  await openTable(page);
  const row = (id: string) => page.locator(`trimwell-stack .pick[data-row="${id}"]`);
  await row('panel').focus();
  await page.keyboard.press('Space');
  await page.keyboard.press('Shift+ArrowUp');
  await page.getByRole('button', { name: 'To the top: glue last' }).click();
  expect(await order(page)).toBe('panel-mat strip wreath-mat wreath greeting panel scallops');
  await expect(page.getByRole('button', { name: 'Up: glue later' })).toBeDisabled();
  await page.getByRole('button', { name: 'Down: glue earlier' }).click();
  expect(await order(page)).toBe('panel-mat strip wreath-mat wreath panel scallops greeting');
});

test('a finding stands at its piece and in the list; either mends it, and the focus is not lost', async ({ page }) => {
  const errors = await openTable(page);
  const before = await sketchText(page);
  await edit(page, [round]);
  const mark = page.locator('trimwell-watch-marks .mark[data-piece="greeting"]');
  await expect(mark).toHaveAccessibleName('To watch at Greeting: Must be changed');
  await mark.focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('dialog', { name: 'To watch at Greeting' })).toContainText('two corners need');
  await page.keyboard.press('Escape');
  await expect(mark).toBeFocused();
  await page.keyboard.press('Enter');
  await page.getByRole('dialog').getByRole('button', { name: 'Make them smaller' }).press('Enter');
  await expect(mark).toHaveCount(0);
  await expect(page.locator('trimwell-face [role="option"][data-piece="greeting"]')).toBeFocused();
  expect((await pieceIn(page, 'greeting')).corners.tl).toBe(inch / 4);
  await page.keyboard.press('Control+z');
  await page.locator('trimwell-watch').getByRole('button', { name: 'Make them smaller: Greeting' }).press('Enter');
  await expect(page.locator('trimwell-watch li')).toHaveText(/Nothing/);
  await page.keyboard.press('Control+z');
  await page.keyboard.press('Control+z');
  expect(await sketchText(page)).toBe(before);
  expectNoErrors(errors);
});

test('a long list scrolls in its column, and the page ends with the table', { tag: DESK }, async ({ page }) => {
  await openTable(page);
  const { width, height } = await pieceIn(page, 'strip');
  const out = Array.from({ length: 14 }, (_, n) => ({
    do: 'add-piece',
    piece: {
      ...{ id: `out-${n}`, name: `Out ${n}`, kind: 'strip', face: 'front', shape: 'rectangle', from: 'sprig' },
      ...{ x: 4 * inch + n, y: n * 2032, width, height, tilt: 0, raise: 0, perCard: 1, punched: {} },
      corners: { tl: 0, tr: 0, br: 0, bl: 0 },
    },
  }));
  await edit(page, out);
  await page.locator('trimwell-watch .more').click();
  await expect(page.locator('trimwell-watch li .says').nth(12)).toBeAttached();
  const { list, column, end, table } = await page.evaluate(() => {
    const root = document.querySelector('trimwell-editor')?.shadowRoot;
    const aside = root?.querySelector('.aside');
    return {
      list: aside?.scrollHeight ?? 0,
      column: aside?.clientHeight ?? 0,
      end: document.documentElement.scrollHeight,
      table: (document.querySelector('trimwell-editor')?.getBoundingClientRect().bottom ?? 0) + scrollY,
    };
  });
  expect(list).toBeGreaterThan(column + 200);
  expect(end).toBeLessThan(table + 40);
});

test('the stack and what there is to watch keep the rules of the web for everyone', async ({ page }) => {
  await openTable(page);
  await edit(page, [round, { do: 'alter-piece', piece: 'wreath', locked: true, hidden: true }]);
  await expect(page.locator('trimwell-watch-marks .mark[data-piece="greeting"]')).toBeVisible();
  expect(await axeViolations(page)).toEqual([]);
  await page.locator('trimwell-watch-marks .mark[data-piece="greeting"]').press('Enter');
  const small = await page
    .locator('trimwell-stack button, trimwell-watch button, trimwell-watch-marks button')
    .evaluateAll((all) =>
      all
        .map((button) => ({ name: button.textContent ?? '', box: button.getBoundingClientRect() }))
        .filter(({ box }) => box.height < 24 || box.width < 24)
        .map(({ name }) => name),
    );
  expect(small.filter((name) => name.trim() !== 'Up')).toEqual([]);
});
