import { expect, type Page, test } from '@playwright/test';
import { type Hostile, hostileCorpus } from '../embed/hostile-corpus.js';
import { RAN } from '../embed/hostile-words.js';
import { openPost } from './embed-kit.js';

/** Frames that an answer may take: what hangs takes for ever. About ten seconds where sixty are drawn a second. */
const MOST_FRAMES = 600;
/** So many are given to the page at a time, to keep what goes through the pipe small. */
const AT_ONCE = 20;

interface Fed {
  /** Answers by the index of the item: read, refused, or none in time. */
  readonly answers: readonly string[];
  /** The longest time between two frames, in milliseconds; told, never judged here. */
  readonly longest: number;
}

/** Gives each item to an element of its own, one after another, and waits for its answer, frame by frame. */
function feed(page: Page, items: readonly Hostile[]): Promise<Fed> {
  return page.evaluate(
    async ({ texts, most }) => {
      const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
      const place = document.querySelector('article');
      const answers: string[] = [];
      let longest = 0;
      for (const { by, text } of texts) {
        const element = document.createElement('trimwell-sketch');
        let answer: string | null = null;
        element.addEventListener('sketch-read', () => {
          answer = 'read';
        });
        element.addEventListener('sketch-refused', () => {
          answer = 'refused';
        });
        if (by === 'code') element.setAttribute('code', text);
        else {
          const script = document.createElement('script');
          script.type = 'application/json';
          script.textContent = text;
          element.append(script);
        }
        let last = await frame();
        place?.prepend(element);
        for (let count = 0; count < most && answer === null; count += 1) {
          const now = await frame();
          longest = Math.max(longest, now - last);
          last = now;
        }
        // What is drawn after the answer belongs to it.
        for (let count = 0; count < 2; count += 1) {
          const now = await frame();
          longest = Math.max(longest, now - last);
          last = now;
        }
        answers.push(answer ?? 'none');
        element.remove();
      }
      return { answers, longest };
    },
    { texts: items.map(({ by, text }) => ({ by, text })), most: MOST_FRAMES },
  );
}

test('no sketch and no code of the corpus runs anything, asks for anything, or stops the page', async ({ page }) => {
  test.setTimeout(300_000);
  const seen = await openPost(page, './embed-plain.html');
  await page.waitForTimeout(500);
  const dialogs: string[] = [];
  page.on('dialog', (dialog) => {
    dialogs.push(dialog.message());
    void dialog.dismiss();
  });
  const before = seen.requests.length;
  const corpus = hostileCorpus();
  const wrong: string[] = [];
  let longest = 0;
  for (let at = 0; at < corpus.length; at += AT_ONCE) {
    const items = corpus.slice(at, at + AT_ONCE);
    const fed = await feed(page, items);
    longest = Math.max(longest, fed.longest);
    for (const [index, { name, by, ends }] of items.entries()) {
      const answer = fed.answers[index];
      if (answer === 'none' || (ends !== null && answer !== ends)) wrong.push(`${by} ${name}: ${answer}`);
    }
  }
  expect(wrong).toEqual([]);
  expect(await page.evaluate((flag) => flag in window, RAN)).toBe(false);
  expect(await page.evaluate(() => 'polluted' in {})).toBe(false);
  expect(dialogs).toEqual([]);
  // The script's own parts may come; nothing else may.
  const asked = seen.requests.slice(before).filter((address) => !/\/trimwell\/|^(data|blob):/.test(address));
  expect(asked).toEqual([]);
  test.info().annotations.push({ type: 'longest gap between frames, ms', description: longest.toFixed(0) });
  expect(seen.errors).toEqual([]);
});
