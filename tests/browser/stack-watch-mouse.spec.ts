import { expect, type Page, test } from '@playwright/test';
import type { TrimwellEditor } from '@trimwell/editor';
import { boxOf, expectNoErrors, openTable, pull, sketchText } from './table.js';

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

const row = (page: Page, id: string) => page.locator(`trimwell-stack .pick[data-row="${id}"]`);

/** A point on the row's name. */
async function spotOn(page: Page, id: string, down = 0.5) {
  const { x, y, height } = await boxOf(row(page, id));
  return { x: x + 40, y: y + height * down };
}

test('a row is dragged to where a gap opens; Escape puts it back, and one Undo takes it back', async ({ page }) => {
  const errors = await openTable(page);
  const before = await sketchText(page);
  const strip = (await boxOf(row(page, 'strip'))).y;
  await pull(page, await spotOn(page, 'greeting'), await spotOn(page, 'strip', 0.9));
  // The strip makes room before anything is let go.
  await expect.poll(async () => (await boxOf(row(page, 'strip'))).y).toBeLessThan(strip - 10);
  expect(await sketchText(page)).toBe(before);
  await page.keyboard.press('Escape');
  await page.mouse.up();
  expect(await sketchText(page)).toBe(before);
  await expect.poll(async () => (await boxOf(row(page, 'strip'))).y).toBeCloseTo(strip, 0);
  await pull(page, await spotOn(page, 'greeting'), await spotOn(page, 'strip', 0.9));
  await page.mouse.up();
  expect(await order(page)).toBe('panel-mat panel scallops greeting strip wreath-mat wreath');
  await page.keyboard.press('Control+z');
  expect(await sketchText(page)).toBe(before);
  expectNoErrors(errors);
});

test('several are taken by Control and by Shift, and dragged together', async ({ page }) => {
  await openTable(page);
  await row(page, 'panel').click();
  await row(page, 'strip').click({ modifiers: ['Control'] });
  await pull(page, await spotOn(page, 'strip'), await spotOn(page, 'greeting', -0.2));
  await page.mouse.up();
  expect(await order(page)).toBe('panel-mat scallops wreath-mat wreath greeting panel strip');
  await row(page, 'scallops').click();
  await row(page, 'wreath').click({ modifiers: ['Shift'] });
  await expect(page.locator('trimwell-stack [role="row"][aria-selected="true"]')).toHaveCount(3);
});

test('a slip is dragged by its picture, and pointing lights it up everywhere', async ({ page }) => {
  await openTable(page);
  const slip = page.locator('trimwell-stack .picture g[data-piece="panel"] path[data-role="outline"]');
  await slip.hover();
  await expect(page.locator('trimwell-sheets [data-piece="panel"].lit').first()).toBeAttached();
  await page.getByRole('button', { name: /Lay out all/ }).click();
  // The cards come in above what the pointer would rest on, so they are waited for before it goes there.
  await expect(page.locator('trimwell-batch use[data-piece="panel"]').first()).toBeVisible();
  const cards = await page.locator('trimwell-batch li').count();
  await slip.hover();
  await expect(page.locator('trimwell-batch use[data-piece="panel"].lit')).toHaveCount(cards);
  await page
    .locator('trimwell-batch use[data-piece="panel"]')
    .first()
    .hover({ force: true, position: { x: 6, y: 6 } });
  await expect(page.locator('trimwell-stack [role="row"].lit')).toHaveCount(1);
});

test('near the edge of a long stack a drag scrolls it', async ({ page }) => {
  await openTable(page);
  await page.evaluate(() => {
    const editor = document.querySelector<TrimwellEditor>('trimwell-editor');
    const sketch = editor?.sketch;
    const [first] = sketch?.pieces ?? [];
    if (!editor || !sketch || !first) return;
    const { mats: _mats, ...free } = first;
    const more = Array.from({ length: 31 }, (_, n) => ({ ...free, id: `more-${n}`, name: `More ${n}` }));
    editor.sketch = { ...sketch, pieces: [...sketch.pieces, ...more] };
  });
  await expect(page.locator('trimwell-stack [role="row"]')).toHaveCount(39);
  const stack = await boxOf(page.locator('trimwell-stack'));
  await pull(page, await spotOn(page, 'more-30'), { x: stack.x + 200, y: stack.y + stack.height - 8 });
  await expect.poll(() => page.locator('trimwell-stack').evaluate((element) => element.scrollTop)).toBeGreaterThan(400);
  await page.mouse.up();
  expect((await order(page)).endsWith('more-30')).toBe(false);
});
