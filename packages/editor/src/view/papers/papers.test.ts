import { inches, ticks } from '@trimwell/geometry';
import type { LitElement } from 'lit';
import { afterEach, expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import { DrawingElement } from '../table/drawing-element.js';
import type { LengthField } from '../table/length-field.js';
import { ANOTHER_PAPER } from './another-paper.js';
import './define.js';
import { PapersElement } from './papers.js';

customElements.define('trimwell-drawing', DrawingElement);

function rootOf(element: Element | null | undefined): ShadowRoot {
  if (!element?.shadowRoot) throw new Error('no shadow root');
  return element.shadowRoot;
}

/** The tray's content, open at `about`; `part` gives the root of one of its parts. */
async function open(about: string | null = null) {
  const papers = new PapersElement();
  papers.session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  papers.pointing = new Pointing();
  papers.about = about;
  document.body.append(papers);
  const settled = async (): Promise<void> => {
    for (let turn = 0; turn < 4; turn += 1) {
      await papers.updateComplete;
      const parts = rootOf(papers).querySelectorAll<LitElement>(
        'trimwell-paper-form, trimwell-paper-look, trimwell-mixes',
      );
      await Promise.all([...parts].map((part) => part.updateComplete));
    }
  };
  await settled();
  const root = rootOf(papers);
  const part = (tag: string): ShadowRoot => rootOf(root.querySelector(tag));
  const paper = (id: string) => papers.session.state.sketch.papers.find((one) => one.id === id);
  const find = <T extends Element>(within: ParentNode, selector: string): T => {
    const found = within.querySelector<T>(selector);
    if (!found) throw new Error(`nothing is ${selector}`);
    return found;
  };
  const change = async (box: HTMLInputElement | HTMLSelectElement, value: string): Promise<void> => {
    box.value = value;
    box.dispatchEvent(new Event('change', { bubbles: true }));
    await settled();
  };
  return { papers, root, part, paper, find, change, settled };
}

afterEach(() => document.body.replaceChildren());

test('every paper lies there with its size, its sheets and what is cut from it, in one proportion', async () => {
  const { root } = await open('moss');
  const sheets = [...root.querySelectorAll<HTMLElement>('.sheet')];
  const words = sheets.map((sheet) => [...sheet.querySelectorAll('b, span')].map((word) => word.textContent));
  expect(words[0]).toEqual([
    'Ivory card',
    '8 1⁄2 × 11 in',
    'as many as needed',
    expect.stringContaining('the card base'),
  ]);
  expect(words.map(([name]) => name)).toEqual(['Ivory card', 'Moss card', 'Fern sprig', 'Seed dots']);
  expect(words[2]?.[3]).toBe('for 1 mix');
  const widths = sheets.map((sheet) =>
    Number.parseFloat(sheet.querySelector<HTMLElement>('trimwell-drawing')?.style.width ?? ''),
  );
  expect((widths[0] ?? 0) / (widths[1] ?? 1)).toBeCloseTo(8.5 / 12, 6);
  expect(sheets.map((sheet) => sheet.getAttribute('aria-pressed'))).toEqual(['false', 'true', 'false', 'false']);
});

test('sizes of the trade come in the unit of the sketch first, and set both sides; another size is its own', async () => {
  const { part, paper, find, change, papers, settled } = await open('moss');
  const size = () => find<HTMLSelectElement>(part('trimwell-paper-form'), '[aria-label="Usual size"]');
  expect([...size().options].map(({ value }) => value)[0]).toBe('12 × 12 in');
  await change(size(), 'A4, 210 × 297 mm');
  expect(paper('moss')).toMatchObject({ width: 210 * 640, height: 297 * 640 });
  const width = find<LengthField>(part('trimwell-paper-form'), '[label="Width of the sheet"]');
  width.dispatchEvent(new CustomEvent('length-change', { detail: { value: inches(7) } }));
  await settled();
  expect(size().value).toBe('custom');
  papers.session.dispatch({ event: 'sketch.unit', edits: [{ do: 'unit', unit: 'mm' }], at: 1 });
  await settled();
  expect([...size().options].map(({ value }) => value)[0]).toBe('A4, 210 × 297 mm');
});

test('figures that are not known stay empty; what is not allowed is said and changes nothing', async () => {
  const { part, paper, find, change } = await open('moss');
  const box = (label: string) => find<HTMLInputElement>(part('trimwell-paper-form'), `[aria-label="${label}"]`);
  const problem = () => part('trimwell-paper-form').querySelector('[role="alert"]')?.textContent;
  const before = paper('moss');
  await change(box('Weight in grams per square metre'), '2001');
  expect(problem()).toBe('Allowed: 10 to 2000.');
  await change(box('Thickness of a sheet'), '3 in');
  expect(problem()).toContain('up to 20 mm');
  expect(paper('moss')).toBe(before);
  await change(box('Price of a sheet'), '0.85');
  await change(box('Thickness of a sheet'), '0.3 mm');
  expect(paper('moss')).toMatchObject({ price: 0.85, caliper: ticks(192) });
  expect(problem()).toBeUndefined();
  await change(box('Price of a sheet'), '');
  expect(paper('moss')).not.toHaveProperty('price');
});

test('a colour is shown while the box is open, and is one step of the history', async () => {
  const { part, paper, find, papers, settled } = await open('moss');
  const ground = find<HTMLInputElement>(part('trimwell-paper-look'), 'input[type="color"]');
  for (const colour of ['#102030', '#203040', '#304050']) {
    ground.value = colour;
    ground.dispatchEvent(new Event('input'));
    expect(paper('moss')?.look.ground).toBe(colour);
  }
  ground.dispatchEvent(new Event('change'));
  await settled();
  expect(papers.session.state.history.past).toHaveLength(1);
  expect(papers.session.gesture).toBeNull();
  ground.value = '#405060';
  ground.dispatchEvent(new Event('input'));
  expect(papers.session.state.history.past).toHaveLength(2);
});

test('as many inks can be set as the print has; a print with an up offers to mark the sheet', async () => {
  const { part, paper, find, settled } = await open('moss');
  const look = () => part('trimwell-paper-look');
  expect(look().querySelectorAll('input[type="color"]')).toHaveLength(1);
  find<HTMLInputElement>(look(), 'input[value="blossom"]').click();
  await settled();
  expect(look().querySelectorAll('input[type="color"]')).toHaveLength(5);
  const third = [...look().querySelectorAll<HTMLInputElement>('input[type="color"]')].at(3);
  if (!third) throw new Error('no third ink');
  third.value = '#aa2200';
  third.dispatchEvent(new Event('input'));
  expect(paper('moss')?.look.inks).toHaveLength(3);
  expect(paper('moss')?.look.inks[2]).toBe('#aa2200');
  await settled();
  find<HTMLButtonElement>(look(), 'p .act').click();
  await settled();
  expect(paper('moss')?.directional).toBe(true);
  expect(look().querySelector('p .act')).toBeNull();
});

test('a wish for another paper adds one, opens it and puts the focus on its name', async () => {
  const { papers, part, find } = await open(ANOTHER_PAPER);
  expect(papers.session.state.sketch.papers.map(({ name }) => name)).toContain('New paper');
  const name = find<HTMLInputElement>(part('trimwell-paper-form'), '.name');
  expect(name.value).toBe('New paper');
  expect(part('trimwell-paper-form').activeElement).toBe(name);
});

test('what has gone by an undo is closed; the first paper is opened instead', async () => {
  const { papers, root, settled } = await open(ANOTHER_PAPER);
  papers.session.undo();
  await settled();
  expect(root.querySelector('[aria-pressed="true"] b')?.textContent).toBe('Ivory card');
});

test('taking away a paper in use names all that needs it, and takes another for it in the same step', async () => {
  const { papers, root, find, settled } = await open('ivory');
  find<HTMLButtonElement>(root, '.leave').click();
  await settled();
  const asks = rootOf(root.querySelector('trimwell-remove-form'));
  expect(asks.querySelector('[role="alert"]')?.textContent).toMatch(
    /^Ivory card is in use: the card base.*cut from it/,
  );
  find<HTMLSelectElement>(asks, 'select').value = 'moss';
  find<HTMLButtonElement>(asks, '.act').click();
  await settled();
  expect(papers.session.state.sketch.papers.map(({ id }) => id)).toEqual(['moss', 'sprig', 'dots']);
  expect(papers.session.state.sketch.card.base).toBe('moss');
  expect(papers.session.state.history.past).toHaveLength(1);
  expect(root.activeElement?.getAttribute('data-paper')).toBe('moss');
});

test('a mix says in which pieces its papers take turns', async () => {
  const { part } = await open();
  expect(part('trimwell-mixes').querySelector('[data-mix="prints"] p')?.textContent).toMatch(
    /^2 papers take turns in Panel and Strip, so that no two cards look alike/,
  );
});

test('a sheet is turned with its margins and its grain', async () => {
  const { part, paper, settled, papers } = await open('ivory');
  const [first] = papers.session.state.sketch.papers.filter(({ id }) => id === 'ivory');
  if (!first) throw new Error('the sample has ivory card');
  const [none, some] = [ticks(0), inches(1 / 4)];
  const margins = { top: some, right: none, bottom: none, left: none };
  const set = { ...first, width: inches(8.5), height: inches(11), grain: 'height' as const, margins };
  papers.session.dispatch({ event: 'paper.change', edits: [{ do: 'set-paper', paper: set }], at: 1 });
  await settled();
  [...part('trimwell-paper-form').querySelectorAll('button')]
    .find(({ textContent }) => textContent === 'Turn the sheet')
    ?.click();
  await settled();
  // By a quarter to the right: what was at the top is at the right.
  expect(paper('ivory')).toMatchObject({
    width: inches(11),
    height: inches(8.5),
    grain: 'width',
    margins: { top: none, right: some, bottom: none, left: none },
  });
});
