/**
 * The live sketch: how large its files are, how soon it is seen, how soon a choice has its guide, and how long the page
 * ever waits while it is fed what is meant to do harm. Times are of this machine; compare them with the baseline.
 */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { gzipSync } from 'node:zlib';
import { chromium } from '@playwright/test';
import { runnerImport } from 'vite';
import { CHROMIUM_ARGS, ensureChromium } from '../run/find-chromium.mjs';
import { against, baseline, percentile, row } from './measure.mjs';
import { served } from './served.mjs';

const BUNDLE = fileURLToPath(new URL('../../packages/embed/dist/bundle/', import.meta.url));
const VISITS = 12;

/** Every file of the bundle: bytes as they lie, and gzipped as they travel. */
function sizes() {
  const files = readdirSync(BUNDLE, { recursive: true })
    .filter((name) => statSync(`${BUNDLE}${name}`).isFile())
    .map((name) => {
      const bytes = readFileSync(`${BUNDLE}${name}`);
      return { name, raw: bytes.length, packed: gzipSync(bytes, { level: 9 }).length };
    })
    .sort((a, b) => b.packed - a.packed);
  for (const { name, raw, packed } of files) row(name, `${raw} B`, `${packed} B gzipped`);
}

/** Notes when the first card is read and painted, for as long as the page is open. */
function noteFirstPaint() {
  document.addEventListener(
    'sketch-read',
    () => requestAnimationFrame(() => requestAnimationFrame(() => performance.mark('painted'))),
    { capture: true, once: true },
  );
}

/** Milliseconds from the arrival of the script to the first painted card. */
async function firstPaint(browser, url) {
  const page = await browser.newPage({ viewport: { width: 1000, height: 900 } });
  await page.addInitScript(noteFirstPaint);
  await page.goto(`${url}embed-plain.html`);
  await page.waitForFunction(() => performance.getEntriesByName('painted').length > 0);
  const took = await page.evaluate(() => {
    const [script] = performance.getEntriesByType('resource').filter(({ name }) => name.endsWith('trimwell-sketch.js'));
    return performance.getEntriesByName('painted')[0].startTime - script.responseEnd;
  });
  await page.close();
  return took;
}

/** Milliseconds from a choice at the desk to the frame with its new guide: 3 to 14 cards, one after another. */
async function choiceToGuide(page, url) {
  await page.goto(`${url}embed-plain.html`);
  await page.getByRole('button', { name: 'Make it yours' }).click();
  await page.waitForFunction(() => {
    const result = document.querySelector('trimwell-sketch')?.shadowRoot?.querySelector('.result');
    return result && !result.hasAttribute('data-searching');
  });
  return page.evaluate(async () => {
    const root = document.querySelector('trimwell-sketch').shadowRoot;
    const field = root.querySelector('input.count');
    const times = [];
    for (let cards = 3; cards < 15; cards += 1) {
      const start = performance.now();
      field.value = String(cards);
      field.dispatchEvent(new Event('change', { bubbles: true }));
      while (!root.querySelector('.tally').textContent.startsWith(`${cards} cards`))
        await new Promise((resolve) => requestAnimationFrame(resolve));
      times.push(performance.now() - start);
      await new Promise((resolve) => setTimeout(resolve, 700));
    }
    return times;
  });
}

/** The longest time between two frames while each of the corpus is taken in, with its name. */
async function corpusGaps(page, url, corpus) {
  await page.goto(`${url}embed-plain.html`);
  await page.waitForFunction(() => document.querySelector('trimwell-sketch')?.sketch);
  const gaps = [];
  for (const { name, by, text } of corpus) {
    const gap = await page.evaluate(
      async ({ by: how, text: what }) => {
        const frame = () => new Promise((resolve) => requestAnimationFrame(resolve));
        const element = document.createElement('trimwell-sketch');
        let answered = false;
        for (const answer of ['sketch-read', 'sketch-refused'])
          element.addEventListener(answer, () => {
            answered = true;
          });
        if (how === 'code') element.setAttribute('code', what);
        else {
          const script = document.createElement('script');
          script.type = 'application/json';
          script.textContent = what;
          element.append(script);
        }
        let last = await frame();
        let longest = 0;
        document.querySelector('article').prepend(element);
        for (let after = 0; after < 4; after += answered ? 1 : 0) {
          const now = await frame();
          longest = Math.max(longest, now - last);
          last = now;
        }
        element.remove();
        return longest;
      },
      { by, text },
    );
    gaps.push({ name: `${by}: ${name}`, gap });
  }
  return gaps.sort((a, b) => b.gap - a.gap);
}

export async function bench() {
  const base = baseline();
  row('baseline: fixed arithmetic', `${base.toFixed(2)} ms`);
  sizes();
  const { module } = await runnerImport(fileURLToPath(new URL('../embed/hostile-corpus.ts', import.meta.url)));
  await served(async (url) => {
    const browser = await chromium.launch({ executablePath: ensureChromium(), args: CHROMIUM_ARGS });
    const times = [];
    for (let visit = 0; visit < VISITS; visit += 1) times.push(await firstPaint(browser, url));
    row(
      'script there to first card painted',
      against(percentile(times, 0.5), base),
      `worst ${percentile(times, 1).toFixed(0)} ms`,
    );
    const page = await browser.newPage({ viewport: { width: 1000, height: 900 } });
    const choices = await choiceToGuide(page, url);
    row(
      'a choice to its first guide',
      against(percentile(choices, 0.5), base),
      `worst ${percentile(choices, 1).toFixed(0)} ms`,
    );
    const gaps = await corpusGaps(page, url, module.hostileCorpus());
    const over = gaps.filter(({ gap }) => gap > 100).length;
    row(`${gaps.length} hostile sketches and codes`, `${over} with a gap of more than 100 ms between frames`);
    for (const { name, gap } of gaps.slice(0, 6)) row(`  ${name.slice(0, 40)}`, `${gap.toFixed(0)} ms`);
    await browser.close();
  });
}
