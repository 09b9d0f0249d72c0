import { expect, type Page, test } from '@playwright/test';
import { batchRecipe, mixPlan, type Sketch } from '@trimwell/sketch';
import { sampleSketch } from '../kit/sample-sketch.js';
import { stripSketch } from '../kit/strip-sketch.js';
import { axeViolations } from './axe.js';
import { DESK, deskByNight } from './desk-only.js';
import { expectNoErrors, laySketch, openTable, pieceIn, restedPlan, settledPlan, sketchText, tally } from './table.js';

const INCH = 16256;

const slips = (page: Page) => page.locator('trimwell-near-misses .slip');
const tryOn = (page: Page) => page.getByRole('button', { name: /^Try on: Make Strip/ });

test('a near miss is offered, tried on, and put back as the very sketch from before', async ({ page }) => {
  const errors = await openTable(page);
  await expect(slips(page)).toHaveCount(0);
  // Twelve strips of 4 x 2 1/8 in from sheets of 4 x 12 in: five from a sheet; of 2 in six (by hand).
  await laySketch(page, stripSketch('2 1/8 in'));
  await expect(slips(page)).toHaveCount(1);
  await expect(slips(page)).toContainText('Make Strip 2 in high instead of 2 1⁄8 in');
  await expect(slips(page)).toContainText('2 sheets of Moss card instead of 3');
  await expect(page.locator('trimwell-near-misses [role=status]')).toHaveText('1 near miss to try on.');
  const before = await sketchText(page);
  expect(await tally(page)).toContain('from 9 sheets');
  await tryOn(page).click();
  expect((await pieceIn(page, 'strip')).height).toBe(2 * INCH);
  await settledPlan(page);
  expect(await tally(page)).toContain('from 8 sheets');
  await expect(page.locator('trimwell-near-misses [role=status]')).toContainText('Tried on');
  await page.getByRole('button', { name: 'Put back' }).click();
  expect(await sketchText(page)).toBe(before);
  await settledPlan(page);
  expect(await tally(page)).toContain('from 9 sheets');
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  await expect(tryOn(page)).toBeVisible();
  expectNoErrors(errors);
});

test('what was tried on is kept, and is one step to undo', async ({ page }) => {
  await openTable(page);
  await laySketch(page, stripSketch('2 1/8 in'));
  const before = await sketchText(page);
  await tryOn(page).click();
  await page.getByRole('button', { name: 'Keep' }).click();
  await expect(slips(page)).toHaveCount(0);
  expect((await pieceIn(page, 'strip')).height).toBe(2 * INCH);
  await page.getByRole('button', { name: 'Undo' }).click();
  expect(await sketchText(page)).toBe(before);
  await restedPlan(page);
  await expect(tryOn(page)).toBeVisible();
});

test('all of it works with the keyboard, and the focus goes on to what is pressed next', { tag: DESK }, async ({
  page,
}) => {
  await openTable(page);
  await laySketch(page, stripSketch('2 1/8 in'));
  const before = await sketchText(page);
  await tryOn(page).focus();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('button', { name: 'Keep' })).toBeFocused();
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Put back' })).toBeFocused();
  await page.keyboard.press('Enter');
  expect(await sketchText(page)).toBe(before);
  await expect(tryOn(page)).toBeFocused();
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await expect(slips(page)).toHaveCount(0);
  expect((await pieceIn(page, 'strip')).height).toBe(2 * INCH);
  // Nothing is offered any more: the focus rests at the heading beside, not at the top of the page.
  await expect(page.getByRole('heading', { name: 'To watch' })).toBeFocused();
  await page.keyboard.press('Control+z');
  expect(await sketchText(page)).toBe(before);
});

test('cards that a near miss adds are told from those the sheets give as it is', { tag: DESK }, async ({ page }) => {
  await openTable(page);
  await laySketch(page, stripSketch('2 1/8 in', { moss: 2 }, { batch: { cards: 'as many as possible' } }));
  await expect(slips(page)).toContainText('12 cards instead of 10');
  await expect(page.locator('trimwell-yield-note .limit')).toHaveText(
    'The sheets give 10 cards at most; Moss card runs out first.',
  );
  // Five strips from a sheet: one more sheet gives five cards more (by hand).
  await expect(page.locator('trimwell-yield-note .one-more')).toHaveText('One more sheet of Moss card gives 15.');
});

/** Eight pinwheel blanks of 7 x 5 in for sheets of 12 x 12 in: four from a sheet with stopped cuts, fewer without. */
function pinwheelSketch(): Sketch {
  const sketch = stripSketch('5 in');
  const side = (inches: number) => (inches * INCH) as Sketch['card']['width'];
  return {
    ...sketch,
    papers: sketch.papers.map((paper) => (paper.id === 'moss' ? { ...paper, width: side(12) } : paper)),
    pieces: sketch.pieces.map((piece) => ({ ...piece, width: side(7), height: side(5) })),
    batch: { ...sketch.batch, cards: 8 },
  };
}

test('the switch of stopped cuts changes the plan and says what to take care of; undo brings both back', async ({
  page,
}) => {
  await openTable(page);
  await laySketch(page, pinwheelSketch());
  const counted = await tally(page);
  const choice = page.getByRole('switch', { name: 'Stopped cuts' });
  await expect(choice).toHaveAttribute('aria-checked', 'false');
  await expect(page.locator('trimwell-choices #stoppedCuts')).toContainText('sliding blade');
  await choice.focus();
  await page.keyboard.press('Space');
  await expect(choice).toHaveAttribute('aria-checked', 'true');
  await expect(page.locator('trimwell-choices #stoppedCuts')).toContainText('Blades:');
  await settledPlan(page);
  expect(await tally(page)).not.toBe(counted);
  expect(await page.evaluate(() => document.querySelector('trimwell-editor')?.plan?.sheets)).toBe(4 + 2);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(choice).toHaveAttribute('aria-checked', 'false');
  await settledPlan(page);
  expect(await tally(page)).toBe(counted);
});

test('the switch of hidden centres is a step of its own too, with the knife caution', async ({ page }) => {
  await openTable(page);
  const choice = page.getByRole('switch', { name: 'Hidden centres' });
  await choice.click();
  await expect(page.locator('trimwell-choices #hiddenCentres')).toContainText('Knife:');
  expect((JSON.parse(await sketchText(page)) as Sketch).batch.hiddenCentres).toBe(true);
  await settledPlan(page);
  // The wreath mats come out of the panel mats, which the print panels cover; a centre is no sheet.
  await expect(page.locator('trimwell-sheets li').filter({ hasText: 'centres of 12 Panel mat' })).toHaveCount(1);
  expect(await tally(page)).toContain('from 17 sheets');
  await page.getByRole('button', { name: 'Undo' }).click();
  expect((JSON.parse(await sketchText(page)) as Sketch).batch.hiddenCentres).toBe(false);
});

/** The papers of every role on every card, as the picture shows them. */
async function shownDeal(page: Page, pieces: readonly string[]): Promise<readonly (readonly string[])[]> {
  return page
    .locator('trimwell-batch li')
    .evaluateAll(
      (cards, wanted) =>
        cards.map((card) =>
          wanted.map((piece) => card.querySelector(`use[data-piece="${piece}"]`)?.getAttribute('href') ?? ''),
        ),
      pieces,
    );
}

test('the batch is laid out card by card in the papers of the mix plan, as many as the batch has', async ({ page }) => {
  await openTable(page);
  const sketch = sampleSketch();
  await laySketch(page, sketch);
  await expect(page.locator('trimwell-batch li')).toHaveCount(0);
  await page.getByRole('button', { name: 'Lay out all 6' }).click();
  await expect(page.locator('trimwell-batch li')).toHaveCount(6);
  const { deal, roles } = mixPlan(batchRecipe(sketch), 6);
  const shown = await shownDeal(
    page,
    roles.map(({ piece }) => piece),
  );
  expect(shown.map((card) => card.map((href) => href.split('-').at(-1)))).toEqual(deal);
  // Two papers in two contrasting roles: one way or the other (by hand).
  await expect(page.locator('trimwell-batch .differ')).toHaveText('6 cards in 2 looks');
  await expect(page.locator('trimwell-batch .reason')).toHaveCount(1);
  await expect(page.getByRole('img', { name: /^Card 1: Panel from .*, Strip from / })).toBeVisible();
  await page.getByRole('slider', { name: 'Cards in the batch' }).press('ArrowRight');
  await settledPlan(page);
  await expect(page.locator('trimwell-batch li')).toHaveCount(7);
  await page.getByRole('button', { name: 'Put away' }).click();
  await expect(page.locator('trimwell-batch li')).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'Lay out all 7' })).toBeFocused();
});

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing by ${colorScheme} with slips, a trial, the cards laid out and the switches on`, {
    tag: deskByNight(colorScheme),
  }, async ({ page }) => {
    await page.emulateMedia({ colorScheme });
    await openTable(page);
    await page.getByRole('button', { name: 'Lay out all 12' }).click();
    await page.getByRole('switch', { name: 'Stopped cuts' }).click();
    await page.getByRole('switch', { name: 'Hidden centres' }).click();
    await settledPlan(page);
    expect(await axeViolations(page)).toEqual([]);
    await laySketch(page, stripSketch('2 1/8 in'));
    await expect(tryOn(page)).toBeVisible();
    expect(await axeViolations(page)).toEqual([]);
    await tryOn(page).click();
    await settledPlan(page);
    expect(await axeViolations(page)).toEqual([]);
  });
}

test('what is pressed is 24 px or more (WCAG 2.2, 2.5.8)', async ({ page }) => {
  await openTable(page);
  await page.getByRole('button', { name: 'Lay out all 12' }).click();
  await laySketch(page, stripSketch('2 1/8 in'));
  await tryOn(page).click();
  const sizes = await page
    .locator(':is(trimwell-near-misses, trimwell-choices, trimwell-yield-note) button')
    .evaluateAll((all) =>
      all.map((button) => button.getBoundingClientRect()).map(({ width, height }) => [width, height]),
    );
  expect(sizes.length).toBeGreaterThanOrEqual(4);
  for (const [width = 0, height = 0] of sizes) expect(Math.min(width, height)).toBeGreaterThanOrEqual(24);
});
