import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { axeViolations } from './axe.js';
import { DESK, deskByNight } from './desk-only.js';
import { expectNoErrors, openTable } from './table.js';

const TRAY = ['trimwell-editor', 'trimwell-tray-host', 'trimwell-build'];

/** Draws out the tray in which the card is built, from the stack. */
async function openBuild(page: Page): Promise<Locator> {
  await page.getByRole('button', { name: 'Build it' }).click();
  await expect(page.getByRole('dialog', { name: 'How it is built' })).toBeVisible();
  const tray = page.locator('trimwell-build');
  await expect(tray.locator('ol li')).toHaveCount(10);
  return tray;
}

/** The pieces that the picture of a step shows. */
function shown(tray: Locator): Promise<readonly (string | null)[]> {
  return tray
    .locator('.picture g[data-piece]')
    .evaluateAll((groups) => groups.map((group) => group.getAttribute('data-piece')));
}

test('the card is built up piece by piece, and what is new stands out', async ({ page }) => {
  const errors = await openTable(page);
  const tray = await openBuild(page);
  expect(await shown(tray)).toEqual([]);
  await tray.getByRole('button', { name: 'Next step' }).click();
  await tray.getByRole('button', { name: 'Next step' }).click();
  expect(await shown(tray)).toEqual(['panel-mat', 'panel']);
  await expect(tray.locator('.picture g.lit')).toHaveAttribute('data-piece', 'panel');
  await expect(tray.getByRole('status').first()).toHaveText(
    'Glue C (Print panel) on B, so that 1⁄8 in of B shows all round.',
  );
  await tray.locator('ol button').nth(8).click();
  await expect(tray.getByRole('status').first()).toContainText('Open the card. Glue I (Liner)');
  expect(await shown(tray)).toEqual(['liner']);
  await page.getByRole('button', { name: 'Put away' }).click();
  await expect(tray).toHaveCount(0);
  expectNoErrors(errors);
});

test('by keys alone: along the steps, the cut elsewhere, and back to the stack', { tag: DESK }, async ({ page }) => {
  await openTable(page);
  await expect(page.locator('trimwell-stack .thick')).toContainText('at the thickest');
  await page.getByRole('button', { name: 'Build it' }).focus();
  await page.keyboard.press('Enter');
  const tray = page.locator('trimwell-build');
  await tray.locator('[aria-current="step"]').focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('End');
  await expect(tray.locator('.count')).toHaveText('Step 10 of 10');
  await expect(tray.locator('[aria-current="step"]')).toBeFocused();
  const cut = tray.getByRole('slider', { name: 'Where it is cut through' });
  const before = await tray.locator('.cut svg').first().innerHTML();
  await cut.focus();
  await page.keyboard.press('Home');
  await expect(cut).toHaveAttribute('aria-valuetext', '0 in from the top');
  expect(await tray.locator('.cut svg').first().innerHTML()).not.toBe(before);
  await page.keyboard.press('Escape');
  await expect(tray).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Build it' })).toBeFocused();
});

test('played, the steps go on by themselves until they are held', { tag: DESK }, async ({ page }) => {
  await openTable(page);
  const tray = await openBuild(page);
  await tray.getByRole('button', { name: 'Play the steps' }).click();
  await expect(tray.locator('.count')).toHaveText('Step 2 of 10');
  await tray.getByRole('button', { name: 'Hold' }).click();
  await expect(tray.getByRole('button', { name: 'Play the steps' })).toBeVisible();
});

test('the post of a country is watched, and remembered; the envelope from paper is saved in true size', {
  tag: DESK,
}, async ({ page }) => {
  await openTable(page);
  await expect(page.locator('trimwell-watch')).toContainText('Nothing:');
  const tray = await openBuild(page);
  await tray.getByRole('combobox', { name: 'Country of the post' }).selectOption('United States');
  await expect(tray.locator('trimwell-card-facts li')).toHaveCount(1);
  await expect(tray.locator('trimwell-card-facts li')).toContainText('Limits of 2023-07-09');
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    tray.getByRole('button', { name: 'Save its template' }).click(),
  ]);
  // The square that the tray tells of, 7 5/8 in, and the room around it of a fiftieth on each side.
  await expect(tray).toContainText('a square of 7 5⁄8 in');
  const [, width] = /width="([\d.]+)in"/.exec(await readFile(await download.path(), 'utf8')) ?? [];
  expect(Number(width)).toBeCloseTo(7.625 * 1.04, 3);
  await page.getByRole('button', { name: 'Put away' }).click();
  await expect(page.locator('trimwell-watch')).toContainText('the letter may cost a surcharge');
  await page.reload();
  await expect(page.locator('trimwell-watch')).toContainText('the letter may cost a surcharge');
});

test('the grain of the base is said in its paper, and told where the card is folded', { tag: DESK }, async ({
  page,
}) => {
  await openTable(page);
  const tray = await openBuild(page);
  await tray.getByRole('button', { name: 'grain' }).click();
  const papers = page.locator('trimwell-papers');
  await papers.getByRole('combobox', { name: 'Grain' }).selectOption('along its width');
  await page.getByRole('button', { name: 'Put away' }).click();
  await openBuild(page);
  await expect(page.locator('trimwell-build trimwell-card-facts')).toContainText(/(along|across) the grain/);
});

for (const scheme of ['light', 'dark'] as const) {
  test(`axe finds nothing, nothing hangs over the edge, and targets are large enough, by ${scheme}`, {
    tag: deskByNight(scheme),
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme: scheme });
    await openTable(page);
    const tray = await openBuild(page);
    expect(await axeViolations(page, TRAY)).toEqual([]);
    const content = page.locator('trimwell-tray .content');
    expect(await content.evaluate((node) => node.scrollWidth - node.clientWidth)).toBe(0);
    const small = await tray.evaluate((element) => {
      const roots = [element, ...(element.shadowRoot?.querySelectorAll('*') ?? [])].flatMap(
        (node) => node.shadowRoot ?? [],
      );
      return roots
        .flatMap((root) => [...root.querySelectorAll('button, select, input')])
        .map((node) => (node.closest('label') ?? node).getBoundingClientRect())
        .filter(({ width, height }) => width < 24 || height < 24).length;
    });
    expect(small).toBe(0);
  });
}
