import { inches, millimetres, ticks } from '@trimwell/geometry';
import { applyEdits, CARD_BASE, type Edit } from '@trimwell/sketch';
import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { AssemblyWorker, planningPort } from '../../../../../tests/kit/assembly-worker.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { cardWatchOf } from '../../session/card-watch-of.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import type { BuildElement } from './build-tray.js';
import { cardSection, usualLine } from './card-section.js';
import './define.js';

beforeAll(() => {
  vi.stubGlobal('Worker', AssemblyWorker);
});
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
});
afterEach(() => {
  vi.useRealTimers();
  document.body.replaceChildren();
});

async function lay(...edits: readonly Edit[]) {
  const element = document.createElement('trimwell-build') as BuildElement;
  const session = new Session(applyEdits(sampleSketch(), edits), planningPort());
  Object.assign(element, { session, pointing: new Pointing() });
  document.body.append(element);
  await element.updateComplete;
  // The planner answers, the sketch comes to rest, the card is looked at.
  for (let turn = 0; turn < 3; turn += 1) {
    vi.advanceTimersByTime(200);
    await element.updateComplete;
  }
  const root = element.renderRoot as ShadowRoot;
  const text = (selector: string): string =>
    root.querySelector(selector)?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
  const press = async (words: string): Promise<void> => {
    [...root.querySelectorAll('button')].find((button) => button.textContent?.trim() === words)?.click();
    await element.updateComplete;
  };
  return { element, session, root, text, press };
}

test('the card is built from its base up, step by step, and inside last', async () => {
  const { text, press, root } = await lay();
  expect(text('.count')).toBe('Step 1 of 6');
  // The base of a card of 4 1/4 in is scored in its middle (by hand).
  expect(text('.now')).toBe('Score A (the card base), 4 1⁄4 in from the left, and fold it to 4 1⁄4 × 5 1⁄2 in.');
  await press('Next step');
  expect(text('.now')).toMatch(/^Glue B \(Panel mat\) on A, so that 1⁄8 in of A shows all round\.$/);
  for (let step = 0; step < 4; step += 1) await press('Next step');
  expect(text('.now')).toMatch(/^Open the card\. Glue /);
  expect(root.querySelectorAll('ol li')).toHaveLength(6);
  expect(text('[aria-current="step"]')).toContain('Open the card.');
});

test('foam and a gap under a piece are told', async () => {
  const { root } = await lay({ do: 'place', piece: 'strip', x: inches(0.5), y: inches(0.75) });
  const steps = [...root.querySelectorAll('ol button')].map((step) => step.textContent?.replace(/\s+/g, ' ') ?? '');
  expect(steps.find((step) => step.includes('Greeting'))).toContain('on foam of 1⁄16 in');
});

test('keys go along the list, with the focus', async () => {
  const { root, text, element } = await lay();
  const list = root.querySelector('ol');
  list?.querySelector('button')?.focus();
  for (const key of ['ArrowDown', 'ArrowDown', 'ArrowUp', 'End']) {
    root.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
    await element.updateComplete;
  }
  expect(text('.count')).toBe('Step 6 of 6');
  expect(root.activeElement).toBe(list?.querySelector('[aria-current="step"]'));
  expect(list?.querySelectorAll('[tabindex="0"]')).toHaveLength(1);
});

test('the steps are played to the end, and held by any press', async () => {
  const { text, press, element } = await lay();
  await press('Play the steps');
  // As long as its words take to be read.
  vi.advanceTimersByTime(1_700);
  await element.updateComplete;
  expect(text('.count')).toBe('Step 1 of 6');
  vi.advanceTimersByTime(4_000);
  await element.updateComplete;
  expect(text('.count')).toBe('Step 2 of 6');
  await press('Hold');
  vi.advanceTimersByTime(10_000);
  await element.updateComplete;
  expect(text('.count')).toBe('Step 2 of 6');
  await press('Play the steps');
  vi.advanceTimersByTime(60_000);
  await element.updateComplete;
  expect(text('.count')).toBe('Step 6 of 6');
  expect(text('.play')).toBe('Play the steps');
});

test('a cut through the highest spot shows every paper on it, as high as they add up', async () => {
  const half = millimetres(0.5);
  const sketch = sampleSketch();
  const { session } = await lay(
    ...sketch.papers.map((paper): Edit => ({ do: 'set-paper', paper: { ...paper, caliper: half } })),
    { do: 'place', piece: 'strip', x: inches(0.25), y: inches(4.5) },
  );
  const { view } = cardWatchOf(session);
  if (!view) throw new Error('the card was looked at');
  const { slabs, height } = cardSection(view, usualLine(view, 'x'));
  // Two leaves, the liner, mat, panel and greeting, each 0.5 mm, and 1/16 in of foam (by hand).
  expect(height).toBe(6 * half + inches(1 / 16));
  expect(slabs.map(({ piece }) => piece)).toEqual([CARD_BASE, 'liner', CARD_BASE, 'panel-mat', 'panel', 'greeting']);
  expect(slabs.at(-1)?.top).toBe(height);
  expect(slabs.at(-1)).toMatchObject({
    spans: [{ foam: inches(1 / 16) }],
    bottom: ticks(5 * half + inches(1 / 16)),
  });
  // Where nothing but the base and the mat lie there are no more than these.
  const edge = cardSection(view, { along: 'x', at: inches(3 / 16) });
  expect(edge.slabs.filter(({ piece }) => piece !== CARD_BASE && piece !== 'liner').map(({ piece }) => piece)).toEqual([
    'panel-mat',
  ]);
});

test('a country of the post brings its own letter with its source', async () => {
  const { root, session } = await lay();
  const facts = root.querySelector('trimwell-card-facts');
  const inside = facts?.shadowRoot;
  expect(inside?.querySelectorAll('li').length).toBeGreaterThan(3);
  const select = inside?.querySelector('select');
  if (!select) throw new Error('there is a choice of countries');
  select.value = 'GB';
  select.dispatchEvent(new Event('change'));
  vi.advanceTimersByTime(200);
  await (facts as BuildElement).updateComplete;
  expect(cardWatchOf(session).post).toBe('GB');
  expect(inside?.querySelectorAll('li')).toHaveLength(1);
  expect(inside?.querySelector('li')?.textContent).toMatch(/Limits of|Limits without a date/);
});
