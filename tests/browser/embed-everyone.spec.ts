import { execFileSync } from 'node:child_process';
import { writeFile } from 'node:fs/promises';
import { expect, type Page, test } from '@playwright/test';
import { findReader } from '../run/find-readers.mjs';
import { axeViolations } from './axe.js';
import { DESK, deskByNight } from './desk-only.js';
import { cardOf, openPost, readSketch } from './embed-kit.js';

const FOLDS = [
  'Other ways to make it',
  'The paper I have',
  'Every card',
  'Steps',
  'From the designer',
  'Print, save, keep',
];

async function openAll(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Make it yours' }).click();
  await expect(page.locator('trimwell-sketch .tally')).toContainText('cards from');
  for (const name of FOLDS) await page.locator('trimwell-sketch summary').filter({ hasText: name }).click();
  await expect(page.locator('trimwell-sketch ol li').first()).toBeVisible();
  await expect(page.locator('trimwell-sketch .cards figure').first()).toBeVisible();
}

for (const colorScheme of ['light', 'dark'] as const) {
  test(`axe finds nothing in a post with all open, ${colorScheme}`, { tag: deskByNight(colorScheme) }, async ({
    page,
  }) => {
    await page.emulateMedia({ colorScheme });
    await openPost(page, './embed-plain.html');
    expect(await axeViolations(page)).toEqual([]);
    await openAll(page);
    expect(await axeViolations(page)).toEqual([]);
  });
}

test('axe finds nothing where scripts do not run', { tag: DESK }, async ({ page }) => {
  await page.route(/trimwell-sketch\.js/, (route) => route.abort());
  await page.goto('./post.html');
  expect(await axeViolations(page)).toEqual([]);
});

test('all of it is reached by the keyboard, in its order, and every target is large enough', async ({ page }) => {
  await openPost(page, './embed-plain.html');
  await openAll(page);
  const small = await page.locator('trimwell-sketch').evaluate((element) =>
    [...(element.shadowRoot?.querySelectorAll('button, select, input, summary, a[href]') ?? [])].flatMap((node) => {
      const { width, height } = (node.closest('label.tick') ?? node).getBoundingClientRect();
      // WCAG 2.2, 2.5.8: 24 by 24 CSS pixels.
      return width < 24 || height < 24 ? [`${node.localName} ${node.textContent} ${width} x ${height}`] : [];
    }),
  );
  expect(small).toEqual([]);
  const focusable = await page
    .locator('trimwell-sketch')
    .evaluate(
      (element) =>
        [...(element.shadowRoot?.querySelectorAll('button, select, input, summary, a[href]') ?? [])].filter(
          (node) => !(node as HTMLButtonElement).disabled,
        ).length,
    );
  await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
  await page.locator('h1').click();
  const reached = new Set<string>();
  let lastTop = -1;
  const backwards: string[] = [];
  for (let press = 0; press < focusable + 5; press += 1) {
    await page.keyboard.press('Tab');
    const at = await page.evaluate(() => {
      const root = document.querySelector('trimwell-sketch')?.shadowRoot;
      const node = root?.activeElement;
      if (!root || !node) return null;
      const all = [...root.querySelectorAll('*')];
      return {
        index: all.indexOf(node),
        what: `${node.localName} ${node.textContent}`,
        top: node.getBoundingClientRect().top + scrollY,
        outline: getComputedStyle(node).outlineStyle,
      };
    });
    if (!at) continue;
    // Behind the last one the browser begins anew.
    if (reached.has(String(at.index))) break;
    reached.add(String(at.index));
    expect(at.outline).not.toBe('none');
    // Things of one row may differ by a few pixels in height.
    if (at.top < lastTop - 60) backwards.push(`${at.what} at ${at.top} after ${lastTop}`);
    lastTop = at.top;
  }
  expect(reached.size).toBe(focusable);
  expect(backwards).toEqual([]);
});

test('on paper the page has the card and its sizes, and no controls', async ({ page }) => {
  await openPost(page, './embed-plain.html');
  const path = test.info().outputPath('post.pdf');
  await writeFile(path, await page.pdf({ format: 'A4' }));
  const text = execFileSync(findReader('pdftotext'), [path, '-'], { encoding: 'utf8' }).replace(/\s+/g, ' ');
  for (const words of ['Hedgerow wreath', 'Card base', 'Greeting', 'Liner', 'Here the page goes on.'])
    expect(text).toContain(words);
  expect(text).not.toContain('Make it yours');
  expect(text).not.toContain('Sizes in');
});

test('the reader’s version is printed by itself: card, guide, steps, cautions and every card', { tag: DESK }, async ({
  page,
}) => {
  await page.addInitScript(() => {
    window.print = () => {
      const { body } = document;
      Reflect.set(window.top ?? window, 'printedText', body.textContent);
      Reflect.set(window.top ?? window, 'printedPictures', body.querySelectorAll('svg').length);
    };
  });
  await openPost(page, './embed-plain.html');
  await openAll(page);
  await expect(page.locator('trimwell-sketch .result')).not.toHaveAttribute('data-searching', /.*/);
  await page.getByRole('button', { name: 'Print my version' }).click();
  await expect
    .poll(() => page.evaluate(() => String(Reflect.get(window, 'printedText'))))
    .toContain('12 cards from 18');
  const text = await page.evaluate(() => String(Reflect.get(window, 'printedText')));
  for (const words of ['Hedgerow wreath', 'Gingham strip', 'Blades:', 'Fernhollow paper club'])
    expect(text).toContain(words);
  expect(text).not.toContain('Here the page goes on.');
  expect(await page.evaluate(() => Number(Reflect.get(window, 'printedPictures')))).toBeGreaterThan(10);
});

test('twenty sketches: each drawn when it is come to, all by one planner', async ({ page }) => {
  test.setTimeout(120_000);
  const seen = await openPost(page, './embed-twenty.html');
  const count = await page.locator('trimwell-sketch').count();
  expect(count).toBe(20);
  const drawn = () => cardOf(page).count();
  const atFirst = await drawn();
  expect(atFirst).toBeLessThan(8);
  for (let index = 0; index < count; index += 1) {
    await page.locator('trimwell-sketch').nth(index).scrollIntoViewIfNeeded();
    await expect(page.locator('trimwell-sketch').nth(index).locator('[part="card"] svg')).toBeVisible();
  }
  expect(await drawn()).toBe(20);
  expect(page.workers()).toHaveLength(0);
  for (const index of [0, 1, 2, 19]) {
    const one = page.locator('trimwell-sketch').nth(index);
    await one.getByRole('button', { name: 'Make it yours' }).click();
    await expect(one.locator('.tally')).toContainText(/\d+ cards from \d+ sheets/);
  }
  expect(page.workers()).toHaveLength(1);
  expect(seen.errors).toEqual([]);
});

test('a page by day or by night, as the attribute or the visitor wishes', { tag: DESK }, async ({ page }) => {
  const ground = () =>
    page.locator('trimwell-sketch').evaluate((element) => {
      const sheet = element.shadowRoot?.querySelector('[part="sheet"]');
      return sheet ? getComputedStyle(sheet).backgroundColor : '';
    });
  await page.emulateMedia({ colorScheme: 'light' });
  await openPost(page, './embed-plain.html');
  const day = await ground();
  await page.emulateMedia({ colorScheme: 'dark' });
  const night = await ground();
  expect(night).not.toBe(day);
  await page.locator('trimwell-sketch').evaluate((element) => element.setAttribute('theme', 'light'));
  expect(await ground()).toBe(day);
  await page
    .locator('trimwell-sketch')
    .evaluate((element) => element.style.setProperty('--trimwell-slip', 'rgb(1, 2, 3)'));
  expect(await ground()).toBe('rgb(1, 2, 3)');
  await readSketch(page);
});
