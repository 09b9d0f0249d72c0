import { expect, test } from '@playwright/test';
import { axeViolations } from './axe.js';
import { deskByNight } from './desk-only.js';
import { openTable, pieceOn, settledPlan } from './table.js';

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing by ${colorScheme}, with nothing picked, with a piece picked, with the lists open`, {
    tag: deskByNight(colorScheme),
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openTable(page);
    expect(await axeViolations(page)).toEqual([]);
    await pieceOn(page, 'strip').focus();
    await page.keyboard.press('Enter');
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Hand on' }).click();
    expect(await axeViolations(page)).toEqual([]);
    await page.getByRole('button', { name: 'Keys' }).click();
    expect(await axeViolations(page)).toEqual([]);
  });
}

test('every target is 24 px or more, or stands that far from the next (WCAG 2.2, 2.5.8)', async ({ page }) => {
  await openTable(page);
  await pieceOn(page, 'strip').focus();
  await page.keyboard.press('Enter');
  const small = await page
    .locator(
      'trimwell-editor button, trimwell-editor select, trimwell-editor summary, trimwell-editor input:not([type=file])',
    )
    .evaluateAll((all) =>
      all
        .map((element) => ({
          // A press on the words of a label is a press on its box.
          box: (element.closest('label') ?? element).getBoundingClientRect(),
          text: (element.getAttribute('aria-label') ?? element.textContent ?? '').trim(),
        }))
        .filter(({ box }) => box.width > 0 && (box.width < 24 || box.height < 24))
        .map(({ box, text }) => `${text} ${box.width} x ${box.height}`),
    );
  expect(small).toEqual([]);
});

test('two tables on one page do not disturb each other', async ({ page, isMobile }) => {
  test.setTimeout(90_000);
  await openTable(page, './two-tables.html');
  await settledPlan(page, '#right');
  const text = (id: string) =>
    page.evaluate(
      (selector) => JSON.stringify(document.querySelector<HTMLElementTagNameMap['trimwell-editor']>(selector)?.sketch),
      id,
    );
  const [left, right] = [await text('#left'), await text('#right')];
  const strip = pieceOn(page, 'greeting', '#left').locator('path[data-role="outline"]');
  await strip.scrollIntoViewIfNeeded();
  const box = await strip.boundingBox();
  if (!box) throw new Error('the greeting is shown');
  if (isMobile) {
    await pieceOn(page, 'greeting', '#left').focus();
    await page.keyboard.press('Enter');
    await page.keyboard.press('ArrowUp');
  } else {
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await page.mouse.down();
    await page.mouse.move(box.x + box.width / 2 + 20, box.y + box.height / 2 - 40, { steps: 8 });
    await page.mouse.up();
  }
  expect(await text('#left')).not.toBe(left);
  expect(await text('#right')).toBe(right);
  await pieceOn(page, 'greeting', '#right').focus();
  await page.keyboard.press('Enter');
  await page.keyboard.press('ArrowDown');
  expect(await text('#right')).not.toBe(right);
});
