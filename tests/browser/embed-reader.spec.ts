import { execFileSync } from 'node:child_process';
import { readFile } from 'node:fs/promises';
import { expect, type Locator, type Page, test } from '@playwright/test';
import { applyEdit, batchRecipe, type Edit, expectSketch, planBatch, type Sketch, usualSheets } from '@trimwell/sketch';
import papaparse from 'papaparse';
import { DEMO_SKETCHES, demoSketch } from '../embed/demo-sketches.js';
import { findReader } from '../run/find-readers.mjs';
import { DESK } from './desk-only.js';
import { cardOf, openPost, readSketch, stored } from './embed-kit.js';

const PAGE = './embed-plain.html';

async function wreath(): Promise<Sketch> {
  return expectSketch(JSON.parse((await demoSketch('hedgerow-wreath')).text));
}

/** What the planner, asked in Node, says of a sketch: the start of the line that the reader sees. */
function tallyOf(sketch: Sketch): string {
  const { cards } = sketch.batch;
  const batch = planBatch(batchRecipe(sketch), Number(cards));
  return `${batch.cards} cards from ${batch.sheets} sheets.`;
}

function tally(page: Page): Locator {
  return page.locator('trimwell-sketch .tally');
}

/** Waits until the planner of the page rests. */
async function settled(page: Page): Promise<void> {
  await expect(page.locator('trimwell-sketch .result')).not.toHaveAttribute('data-searching', /.*/);
}

async function openDesk(page: Page, path = PAGE) {
  const seen = await openPost(page, path);
  await page.getByRole('button', { name: 'Make it yours' }).first().click();
  await settled(page);
  return seen;
}

/** Opens a part of the desk by its name. */
async function unfold(page: Page, name: string): Promise<void> {
  await page.locator('trimwell-sketch summary').filter({ hasText: name }).click();
}

async function save(page: Page, button: string): Promise<{ readonly path: string; readonly name: string }> {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: button }).click(),
  ]);
  return { path: await download.path(), name: download.suggestedFilename() };
}

test('inches become millimetres, and fractions decimals, in every size', async ({ page }) => {
  await openPost(page, PAGE);
  const base = page.locator('trimwell-sketch [part="sizes"] tbody tr').first();
  await expect(base).toContainText('8 1⁄2 × 5 1⁄2 in');
  await page.getByLabel('Sizes in').selectOption('millimetres');
  // 8.5 in and 5.5 in times 25.4 (the international inch of 1959).
  await expect(base).toContainText('215.9 × 139.7 mm');
  await page.getByLabel('Sizes in').selectOption('inches, 0.25');
  await expect(base).toContainText('8.5 × 5.5 in');
  await expect(cardOf(page)).toContainText('4.25 in');
});

test('the guide is there at once, and is what the planner says in Node', { tag: DESK }, async ({ page }) => {
  const seen = await openDesk(page);
  await expect(tally(page)).toContainText(tallyOf(await wreath()));
  await expect(page.locator('trimwell-sketch figure.guide').first()).toBeVisible();
  await expect(page.locator('trimwell-sketch .caution').first()).toContainText('Blades:');
  expect(seen.errors).toEqual([]);
});

test('another number of cards, and as many as the paper gives', async ({ page }) => {
  await openDesk(page);
  const count = page.getByRole('spinbutton', { name: 'Cards' });
  await count.fill('5');
  await count.press('Tab');
  await expect(tally(page)).toContainText('5 cards from');
  await settled(page);
  const sketch = await wreath();
  await expect(tally(page)).toContainText(
    tallyOf(applyEdit(sketch, { do: 'batch', batch: { ...sketch.batch, cards: 5 } })),
  );
  await count.fill('1000000');
  await count.press('Tab');
  // What cannot be stays as it was typed, is told, and changes nothing.
  await expect(count).toHaveValue('1000000');
  await expect(page.getByRole('alert')).toHaveText('1000000 is not allowed; a whole number from 1 to 500 is.');
  await expect(tally(page)).toContainText('5 cards from');
  await count.fill('100');
  await count.press('Tab');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(tally(page)).toContainText('100 cards cannot all be made from this paper.');
  await page.getByLabel('as many as my paper gives').check();
  await expect(tally(page)).toContainText('20 cards from');
});

test('the reader’s own sheets: A4, and a scrap', async ({ page }) => {
  await openDesk(page);
  await unfold(page, 'The paper I have');
  const sheet = usualSheets('in').find(({ name }) => name.startsWith('A4'));
  if (!sheet) throw new Error('A4 is a usual sheet');
  const ivory = page.getByRole('group', { name: 'Ivory card', exact: true });
  await ivory.getByLabel('My sheet').selectOption(sheet.name);
  await settled(page);
  const sketch = await wreath();
  const paper = sketch.papers.find(({ id }) => id === 'ivory');
  if (!paper) throw new Error('the wreath has ivory card');
  const edit: Edit = { do: 'set-paper', paper: { ...paper, width: sheet.width, height: sheet.height } };
  await expect(tally(page)).toContainText(tallyOf(applyEdit(sketch, edit)));
  await expect(page.locator('trimwell-sketch figcaption').first()).toContainText('Ivory card, ≈ 8 1⁄4');
  await page.getByRole('button', { name: 'Add a scrap' }).click();
  const form = page.getByRole('group', { name: 'Add a scrap' });
  await form.getByLabel('Width').fill('no size');
  await form.getByLabel('Height').fill('6 in');
  await form.getByRole('button', { name: 'Add it' }).click();
  await expect(page.getByRole('alert')).toContainText('Not a size');
  await form.getByLabel('Width').fill('6 in');
  await form.getByLabel('Name').fill('Scrap from the drawer');
  await form.getByRole('button', { name: 'Add it' }).click();
  await page
    .locator('trimwell-sketch label.from')
    .filter({ hasText: /^Greeting/ })
    .locator('select')
    .selectOption('Scrap from the drawer');
  await settled(page);
  await expect(page.locator('trimwell-sketch figcaption').filter({ hasText: 'Scrap from the drawer' })).toBeVisible();
});

test('a variation changes the card, the sizes and the guide, and goes off again', async ({ page }) => {
  await openDesk(page);
  const before = await page
    .locator('trimwell-sketch')
    .evaluate((element) => JSON.stringify(Reflect.get(element, 'sketch')));
  const edge = () => cardOf(page).locator('[data-piece="scallops"] path, path[data-piece="scallops"]').first();
  const scalloped = await edge().getAttribute('d');
  await unfold(page, 'Other ways to make it');
  const plain = page.getByRole('checkbox', { name: /No border punch/ });
  await plain.check();
  await expect.poll(() => edge().getAttribute('d')).not.toBe(scalloped);
  const told = page.evaluate(
    () =>
      new Promise<string>((resolve) => {
        const listen = (event: Event) => resolve((event as CustomEvent<{ code: string }>).detail.code);
        document.querySelector('trimwell-sketch')?.addEventListener('choices-change', listen, { once: true });
      }),
  );
  await plain.uncheck();
  expect(await told).toMatch(/^[\w-]+$/);
  await expect.poll(() => edge().getAttribute('d')).toBe(scalloped);
  const after = await page
    .locator('trimwell-sketch')
    .evaluate((element) => JSON.stringify(Reflect.get(element, 'sketch')));
  expect(after).toBe(before);
});

test('every card of the batch, and what the designer wrote', async ({ page }) => {
  await openDesk(page);
  await unfold(page, 'Every card');
  await expect(page.locator('trimwell-sketch .cards figure').first()).toBeVisible();
  expect(await page.locator('trimwell-sketch .cards figure').count()).toBeGreaterThan(2);
  await unfold(page, 'From the designer');
  await expect(page.getByText('Cut the gingham with the checks running true')).toBeVisible();
  await expect(page.getByText('Green ink pad')).toBeVisible();
});

test('steps that are done stay done after a reload, under one key, and can be forgotten', async ({ page }) => {
  await openDesk(page);
  expect(await stored(page)).toEqual([]);
  await unfold(page, 'Steps');
  const boxes = page.locator('trimwell-sketch ol input[type="checkbox"]');
  await boxes.first().check();
  await page.getByRole('button', { name: 'Done, next' }).click();
  await expect(boxes.nth(1)).toBeChecked();
  await expect(page.getByText(/Step 3 of \d+/)).toBeVisible();
  expect(await stored(page)).toEqual(['trimwell-sketch:hedgerow-wreath']);
  await page.reload();
  await readSketch(page);
  await page.getByRole('button', { name: 'Make it yours' }).click();
  await settled(page);
  await unfold(page, 'Steps');
  await expect(boxes.first()).toBeChecked();
  await expect(boxes.nth(1)).toBeChecked();
  await expect(boxes.nth(2)).not.toBeChecked();
  await unfold(page, 'Print, save, keep');
  await page.getByRole('button', { name: 'Back to the designer’s version' }).click();
  await expect(boxes.first()).not.toBeChecked();
  expect(await stored(page)).toEqual([]);
});

test('a link holds the reader’s version, for another reader too', { tag: DESK }, async ({ page, browser }) => {
  await openDesk(page);
  const count = page.getByRole('spinbutton', { name: 'Cards' });
  await count.fill('7');
  await count.press('Tab');
  await page.getByLabel('Sizes in').selectOption('millimetres');
  await settled(page);
  await unfold(page, 'Print, save, keep');
  const link = await page.getByLabel('Link to my version').inputValue();
  expect(new URL(link).hash).toMatch(/^#trimwell=[\w-]+$/);
  const elsewhere = await browser.newContext();
  const other = await elsewhere.newPage();
  await other.goto(link);
  await readSketch(other);
  await other.getByRole('button', { name: 'Make it yours' }).click();
  await settled(other);
  await expect(tally(other)).toContainText('7 cards from');
  await expect(other.locator('trimwell-sketch [part="sizes"] tbody tr').first()).toContainText('215.9 × 139.7 mm');
  expect(await stored(other)).toEqual([]);
  await elsewhere.close();
});

test('a link that holds nothing of ours is told of quietly, and the sketch stands as it is', { tag: DESK }, async ({
  page,
}) => {
  const seen = await openPost(page, `${PAGE}#trimwell=<script>window.trimwellRan=1</script>`);
  await expect(page.locator('trimwell-sketch').getByRole('note')).toContainText('could not be read');
  expect(await page.evaluate(() => 'trimwellRan' in window)).toBe(false);
  expect(seen.errors).toEqual([]);
});

test('the handout and the piece list of the reader’s version are saved, on a strict page too', { tag: DESK }, async ({
  page,
}) => {
  const seen = await openDesk(page, './embed-strict.html');
  const count = page.getByRole('spinbutton', { name: 'Cards' });
  await count.fill('4');
  await count.press('Tab');
  await expect(tally(page)).toContainText('4 cards from');
  await settled(page);
  await unfold(page, 'Print, save, keep');
  await page.getByLabel('Pages').selectOption('A4');
  const pdf = await save(page, 'Handout (PDF)');
  expect(pdf.name).toMatch(/\.pdf$/);
  const facts = execFileSync(findReader('pdfinfo'), [pdf.path], { encoding: 'utf8' });
  expect(facts).toContain('(A4)');
  expect(facts).toMatch(/Title: +Hedgerow wreath/);
  expect(execFileSync(findReader('pdftotext'), [pdf.path, '-'], { encoding: 'utf8' })).toContain('4 cards from');
  const list = await save(page, 'Piece list (CSV)');
  const rows = papaparse.parse<Record<string, string>>(await readFile(list.path, 'utf8'), {
    header: true,
    skipEmptyLines: true,
  });
  expect(rows.errors).toEqual([]);
  expect(rows.data.map(({ name }) => name)).toContain('Gingham strip');
  expect(seen.errors).toEqual([]);
});

for (const name of DEMO_SKETCHES) {
  test(`${name}: the live sketch, the editor and the command find as many cards and sheets`, { tag: DESK }, async ({
    page,
  }) => {
    const { text } = await demoSketch(name);
    await openPost(page, PAGE);
    await page.evaluate((code) => {
      const element = document.createElement('trimwell-sketch');
      element.id = 'asked';
      const script = document.createElement('script');
      script.type = 'application/json';
      script.textContent = code;
      element.append(script);
      document.querySelector('trimwell-sketch')?.replaceWith(element);
    }, text);
    await readSketch(page, '#asked');
    await page.getByRole('button', { name: 'Make it yours' }).click();
    await settled(page);
    const embed = /(\d+) cards from (\d+) sheets/.exec((await tally(page).textContent()) ?? '');
    const command = execFileSync(
      process.execPath,
      ['packages/cli/bin/trimwell.js', 'plan', `demo/sketches/${name}.json`],
      {
        encoding: 'utf8',
      },
    );
    expect(command).toContain(`${embed?.[1]} cards from ${embed?.[2]} sheets`);
    await page.goto('./');
    await page.getByRole('button', { name: expectSketch(JSON.parse(text)).title }).click();
    await expect(page.locator('trimwell-editor .tally')).toContainText(`${embed?.[1]} cards`);
    await expect(page.locator('trimwell-editor .tally')).toContainText(`${embed?.[2]} sheets`);
  });
}
