import { expect, type Page, test } from '@playwright/test';
import { DESK } from './desk-only.js';
import { cardOf, openPost, overhang } from './embed-kit.js';

interface Box {
  readonly what: string;
  readonly width: number;
  readonly height: number;
}

/** Sizes of what is seen inside the element, in its order, whole pixels. */
function boxes(page: Page, embed = 'trimwell-sketch'): Promise<readonly Box[]> {
  return page.evaluate((selector) => {
    const root = document.querySelector(selector)?.shadowRoot;
    const nodes = root?.querySelectorAll('svg[role="img"], table, tr, button, select, input, summary') ?? [];
    return [...nodes].flatMap((node) => {
      const { width, height } = node.getBoundingClientRect();
      return [{ what: node.localName, width: Math.round(width), height: Math.round(height) }];
    });
  }, embed);
}

test('a strict page with Trusted Types: no error, and the card and its guide come', { tag: DESK }, async ({ page }) => {
  const seen = await openPost(page, './embed-strict.html');
  await expect(cardOf(page).first()).toBeVisible();
  await page.waitForTimeout(300);
  expect(seen.errors).toEqual([]);
});

test('rough styles of the page leave what is inside as it is', async ({ page }) => {
  await page.setViewportSize({ width: 700, height: 900 });
  await openPost(page, './embed-plain.html');
  const width = await page.locator('trimwell-sketch').evaluate((element) => element.getBoundingClientRect().width);
  const plain = await boxes(page);
  expect(plain.length).toBeGreaterThan(8);
  await openPost(page, './embed-hostile-style.html');
  // The same column, since that is the page's to give.
  await page.locator('trimwell-sketch').evaluate((element, wide) => {
    const column = document.createElement('div');
    column.setAttribute('style', `all: revert !important; display: block !important; width: ${wide}px !important`);
    document.body.replaceChildren(column);
    column.append(element);
  }, width);
  const rough = await boxes(page);
  expect(rough.map(({ what }) => what)).toEqual(plain.map(({ what }) => what));
  for (const [index, box] of rough.entries()) {
    const meant = plain[index];
    expect(box.width, `${box.what} ${index}`).toBeGreaterThan((meant?.width ?? 0) * 0.8 - 2);
    expect(box.width, `${box.what} ${index}`).toBeLessThan((meant?.width ?? 0) * 1.25 + 2);
    expect(box.height, `${box.what} ${index}`).toBeGreaterThan((meant?.height ?? 0) * 0.7 - 2);
    expect(box.height, `${box.what} ${index}`).toBeLessThan((meant?.height ?? 0) * 1.5 + 2);
  }
  const spacing = await page.locator('trimwell-sketch').evaluate((element) => {
    const cell = element.shadowRoot?.querySelector('button');
    return cell ? [getComputedStyle(cell).letterSpacing, getComputedStyle(cell).textTransform] : [];
  });
  expect(spacing).toEqual(['normal', 'none']);
});

test('several on one page do not share a pattern, an id or a choice', { tag: DESK }, async ({ page }) => {
  await openPost(page, './post.html', '#wreath');
  const repeated = await page.evaluate(() => {
    const ids = [...document.querySelectorAll('trimwell-sketch')].flatMap((element) =>
      [...(element.shadowRoot?.querySelectorAll('pattern') ?? [])].map(({ id }) => id),
    );
    return ids.filter((id, index) => ids.indexOf(id) !== index);
  });
  expect(repeated).toEqual([]);
});

test('on a page from right to left the sketch has its place, and nothing hangs over', async ({ page }) => {
  const seen = await openPost(page, './embed-rtl.html');
  expect(await overhang(page)).toBe(0);
  const inside = await page.locator('trimwell-sketch').evaluate((element) => {
    const room = element.getBoundingClientRect();
    return [...(element.shadowRoot?.querySelectorAll('svg, table, button') ?? [])]
      .map((node) => node.getBoundingClientRect())
      .filter(({ width }) => width > 0)
      .every(({ left, right }) => left >= room.left - 1 && right <= room.right + 1);
  });
  expect(inside).toBe(true);
  expect(seen.errors).toEqual([]);
});

for (const theme of ['light', 'dark'] as const) {
  test(`a column of 280 pixels holds all of it, ${theme}`, async ({ page }) => {
    await page.emulateMedia({ colorScheme: theme });
    await page.setViewportSize({ width: 280, height: 700 });
    await openPost(page, './embed-narrow.html');
    // What is wider than the sheet is cut off at its edge, and nothing can be scrolled to it.
    const wide = () =>
      page.locator('trimwell-sketch').evaluate((element) => {
        const edge = element.getBoundingClientRect().right;
        return [...(element.shadowRoot?.querySelectorAll('*') ?? [])]
          .filter((node) => !node.closest('svg svg, defs, [hidden], .unseen'))
          .filter((node) => node.getBoundingClientRect().right > edge + 1)
          .map((node) => `${node.localName} ${node.className}`);
      });
    expect(await wide()).toEqual([]);
    await page.getByRole('button', { name: 'Make it yours' }).click();
    await expect(page.locator('trimwell-sketch .tally')).toContainText('cards from');
    for (const fold of await page.locator('trimwell-sketch summary').all()) await fold.click();
    await expect(page.locator('trimwell-sketch ol li').first()).toBeVisible();
    await expect(page.locator('trimwell-sketch .cards figure').first()).toBeVisible();
    expect(await wide()).toEqual([]);
    expect(await overhang(page)).toBe(0);
  });
}
