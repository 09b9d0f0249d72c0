import { expect, type FrameLocator, type Locator, type Page } from '@playwright/test';

/** What a page asked for and said while it was looked at. */
export interface Witness {
  readonly errors: string[];
  /** Addresses of all requests, as they were made. */
  readonly requests: string[];
}

/** Notes errors and requests of `page` from now on. */
export function watch(page: Page): Witness {
  const seen: Witness = { errors: [], requests: [] };
  page.on('pageerror', (error) => seen.errors.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') seen.errors.push(message.text());
  });
  page.on('request', (request) => seen.requests.push(request.url()));
  return seen;
}

/** Opens a page with live sketches and waits until the first one is read. */
export async function openPost(page: Page, path: string, embed = 'trimwell-sketch'): Promise<Witness> {
  const seen = watch(page);
  await page.goto(path);
  await readSketch(page, embed);
  return seen;
}

/** Waits until the element has read its sketch; it is brought into view, since it may wait for that. */
export async function readSketch(page: Page, embed = 'trimwell-sketch'): Promise<void> {
  await page.locator(embed).first().scrollIntoViewIfNeeded();
  await page.waitForFunction((selector) => {
    const element = document.querySelector(selector);
    return element !== null && Reflect.get(element, 'sketch') instanceof Object;
  }, embed);
  await expect(cardOf(page, embed).first()).toBeVisible();
}

/** The drawing of the card in the live part. */
export function cardOf(page: Page | FrameLocator, embed = 'trimwell-sketch'): Locator {
  return page.locator(`${embed} [part="card"] svg`);
}

/** How far the page can be scrolled sideways, in pixels. */
export function overhang(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

/** Adds up the layout shifts of the page that no input explains, from its very beginning. */
export async function watchShifts(
  page: Page,
): Promise<() => Promise<{ readonly score: number; readonly moved: readonly string[] }>> {
  await page.addInitScript(() => {
    interface Shift extends PerformanceEntry {
      readonly value: number;
      readonly hadRecentInput: boolean;
      readonly sources: readonly {
        readonly node: Node | null;
        readonly previousRect: DOMRectReadOnly;
        readonly currentRect: DOMRectReadOnly;
      }[];
    }
    const found = { score: 0, moved: [] as string[] };
    Object.assign(window, { shiftsFound: found });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as Shift[]) {
        if (entry.hadRecentInput) continue;
        found.score += entry.value;
        const box = ({ x, y, width, height }: DOMRectReadOnly) => [x, y, width, height].map(Math.round).join(' ');
        for (const { node, previousRect, currentRect } of entry.sources)
          found.moved.push(`${node?.nodeName}: ${box(previousRect)} to ${box(currentRect)}`);
      }
    }).observe({ type: 'layout-shift', buffered: true });
  });
  return () => page.evaluate(() => Reflect.get(window, 'shiftsFound') as { score: number; moved: string[] });
}

/** Everything that the page has put into storage of any kind. */
export function stored(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => [
    ...Object.keys(localStorage),
    ...Object.keys(sessionStorage),
    ...(await indexedDB.databases()).map(({ name }) => `database ${name}`),
    ...(document.cookie === '' ? [] : [document.cookie]),
    ...('caches' in window ? await caches.keys() : []),
  ]);
}
