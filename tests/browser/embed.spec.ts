import { expect, type Page, test } from '@playwright/test';
import { DESK } from './desk-only.js';
import { cardOf, openPost, overhang, readSketch, stored, watch, watchShifts } from './embed-kit.js';

/** The sketch that the element shows: its title, and how many pieces it has. */
function shown(page: Page, embed: string): Promise<unknown> {
  return page.evaluate((selector) => {
    const element = document.querySelector(selector);
    const sketch = element && (Reflect.get(element, 'sketch') as { title: string; pieces: unknown[] } | null);
    return sketch && [sketch.title, sketch.pieces.length];
  }, embed);
}

test('a post with an element and an address, an element with its sketch inside, and a frame', async ({ page }) => {
  const seen = await openPost(page, './post.html', '#wreath');
  expect(await shown(page, '#wreath')).toEqual(['Hedgerow wreath', 9]);
  await readSketch(page, '#window');
  expect(await shown(page, '#window')).toEqual(['Star window', 8]);
  const frame = page.frameLocator('#tide');
  await page.locator('#tide').scrollIntoViewIfNeeded();
  await expect(cardOf(frame)).toBeVisible();
  await expect(frame.getByText('Tide line').first()).toBeVisible();
  expect(await overhang(page)).toBe(0);
  expect(seen.errors).toEqual([]);
});

test('an element reads a share code', { tag: DESK }, async ({ page }) => {
  const seen = await openPost(page, './embed-rtl.html');
  expect(await shown(page, 'trimwell-sketch')).toEqual(['Tide line', 8]);
  expect(seen.errors).toEqual([]);
});

test('a frame tells its height to its parent, and to nobody who is not asked', { tag: DESK }, async ({ page }) => {
  await page.addInitScript(() => {
    const heard: unknown[] = [];
    Object.assign(window, { heard });
    addEventListener('message', ({ data, origin }) => heard.push([origin, data]));
  });
  await page.goto('./post.html');
  await page.locator('#tide').scrollIntoViewIfNeeded();
  const height = () =>
    page.evaluate(() => {
      const heard = Reflect.get(window, 'heard') as [string, { trimwell?: string; height?: number }][];
      const told = heard.filter(([, data]) => data.trimwell === 'height');
      return told.every(([origin]) => origin === location.origin) ? (told.at(-1)?.[1].height ?? 0) : -1;
    });
  await expect.poll(height).toBeGreaterThan(300);
  const inside = await page
    .frameLocator('#tide')
    .locator('html')
    .evaluate((root) => Math.ceil(root.getBoundingClientRect().height));
  await expect.poll(async () => Math.abs((await height()) - inside)).toBeLessThan(3);
});

test('what the frame is told by others changes nothing', { tag: DESK }, async ({ page }) => {
  await page.goto('./post.html');
  await page.locator('#tide').scrollIntoViewIfNeeded();
  const frame = page.frameLocator('#tide');
  await expect(cardOf(frame)).toBeVisible();
  const before = await frame
    .locator('trimwell-sketch')
    .evaluate((element) => JSON.stringify(Reflect.get(element, 'sketch')));
  await page.locator('#tide').evaluate((element: HTMLIFrameElement) => {
    for (const message of [{ trimwell: 'sketch', code: 'x' }, 'height', null, { trimwell: 'height', height: 9 }, [[]]])
      element.contentWindow?.postMessage(message, '*');
  });
  await page.waitForTimeout(200);
  const after = await frame
    .locator('trimwell-sketch')
    .evaluate((element) => JSON.stringify(Reflect.get(element, 'sketch')));
  expect(after).toBe(before);
});

for (const [name, how] of [
  ['an address that does not answer', { src: './sketches/no-such.json' }],
  ['an address that answers with something else', { src: './post.html' }],
  ['a code cut short', { code: 'aVVVV' }],
] as const) {
  test(`${name} leaves what the page put there, and a quiet word`, { tag: DESK }, async ({ page }) => {
    await page.goto('./embed-plain.html');
    await readSketch(page);
    const refused = await page.evaluate(
      (attributes) =>
        new Promise<unknown>((resolve) => {
          const element = document.createElement('trimwell-sketch');
          for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
          const words = document.createElement('p');
          words.textContent = 'The card as the page has it';
          element.append(words);
          element.addEventListener('sketch-refused', (event) => {
            const { problems } = (event as CustomEvent<{ problems: { message: string }[] }>).detail;
            resolve(problems.map(({ message }) => message));
          });
          document.querySelector('article')?.prepend(element);
        }),
      how,
    );
    expect(refused).toHaveLength(1);
    await expect(page.getByText('The card as the page has it')).toBeVisible();
    await expect(page.locator('trimwell-sketch').first().getByRole('note')).toBeVisible();
  });
}

test.describe('without scripts', () => {
  test.use({ javaScriptEnabled: false });

  test('the card and its sizes stand, in every way', async ({ page }) => {
    await page.goto('./post.html');
    for (const title of ['Hedgerow wreath', 'Star window', 'Tide line']) {
      const table = page.getByRole('table', { name: `${title}: sizes for one card` });
      await expect(table).toBeVisible();
      expect(await table.getByRole('row').count()).toBeGreaterThan(8);
      await expect(page.getByRole('img', { name: `${title}, card face` })).toBeVisible();
    }
  });
});

test('where the script does not come, the card and its sizes stand', { tag: DESK }, async ({ page }) => {
  await page.route(/trimwell-sketch\.js/, (route) => route.abort());
  await page.goto('./embed-plain.html');
  await expect(page.getByRole('table', { name: 'Hedgerow wreath: sizes for one card' })).toBeVisible();
  await expect(page.getByRole('img', { name: 'Hedgerow wreath, card face' })).toBeVisible();
});

/** Where what stands behind the first sketch of the page begins, from the top of the page. */
function behind(page: Page): Promise<number> {
  return page.evaluate(() => {
    const next = document.querySelector('trimwell-sketch')?.nextElementSibling;
    return next ? next.getBoundingClientRect().top + window.scrollY : -1;
  });
}

test('nothing moves while it comes, over a slow line', async ({ page }) => {
  const shifts = await watchShifts(page);
  const client = await page.context().newCDPSession(page);
  await client.send('Network.emulateNetworkConditions', {
    offline: false,
    latency: 300,
    downloadThroughput: 60_000,
    uploadThroughput: 30_000,
  });
  // The script comes well behind the page, so that what stands before it can be looked at.
  await page.route(/trimwell-sketch\.js/, async (route) => {
    await new Promise((resolve) => setTimeout(resolve, 1_500));
    await route.continue();
  });
  for (const path of ['./embed-plain.html', './embed-narrow.html', './post.html']) {
    await page.goto(path, { waitUntil: 'commit' });
    await page.waitForFunction(() => document.readyState === 'interactive' && document.styleSheets.length > 0);
    const before = await behind(page);
    expect(await page.evaluate(() => document.querySelector('trimwell-sketch')?.shadowRoot ?? null)).toBeNull();
    await readSketch(page);
    await page.waitForTimeout(500);
    expect(await behind(page)).toBe(before);
    expect(await shifts()).toEqual({ score: 0, moved: [] });
  }
});

test('nothing is asked of anyone but its own files and its sketch', { tag: DESK }, async ({ page, baseURL }) => {
  const seen = await openPost(page, './embed-plain.html');
  await page.waitForTimeout(500);
  const base = new URL(baseURL ?? '');
  const others = seen.requests.filter((address) => {
    const { origin, pathname, protocol } = new URL(address);
    if (protocol === 'data:' || protocol === 'blob:') return false;
    const own = /^\/(trimwell\/|assets\/|sketches\/hedgerow-wreath\.json$|embed-plain\.html$)/.test(pathname);
    return origin !== base.origin || !own;
  });
  expect(others).toEqual([]);
  expect(seen.requests.filter((address) => address.includes('hedgerow-wreath.json'))).toHaveLength(1);
});

test('nothing is stored before a choice is made', { tag: DESK }, async ({ page }) => {
  await openPost(page, './embed-plain.html');
  await page.waitForTimeout(500);
  expect(await stored(page)).toEqual([]);
});

test('what is not near the view is not drawn and asks for nothing', async ({ page }) => {
  const seen = watch(page);
  await page.goto('./embed-plain.html');
  await page.evaluate(() => {
    const far = document.createElement('trimwell-sketch');
    far.id = 'far';
    far.setAttribute('src', './sketches/star-window.json');
    const space = document.createElement('p');
    space.style.height = '9000px';
    document.querySelector('main')?.append(space, far);
  });
  await readSketch(page);
  await page.waitForTimeout(400);
  expect(seen.requests.some((address) => address.includes('star-window'))).toBe(false);
  await page.locator('#far').scrollIntoViewIfNeeded();
  await expect(cardOf(page, '#far').first()).toBeVisible();
});
