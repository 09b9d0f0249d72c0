import { expectSketch } from '@trimwell/sketch';
import { writeShareCode } from '@trimwell/sketch/share-code';
import { afterEach, expect, test, vi } from 'vitest';
import { sampleDocument } from '../../../../tests/kit/sample-document.js';
import '../define.js';
import { PATIENCE } from '../../../../tests/kit/patience.js';
import { readChoicesCode } from '../state/choices.js';

afterEach(() => {
  document.body.replaceChildren();
  localStorage.clear();
  location.hash = '';
});

/** Puts the element into the page with `inside`, and waits for its answer. */
async function shown(inside: string, attributes: Readonly<Record<string, string>> = {}): Promise<HTMLElement> {
  const element = document.createElement('trimwell-sketch');
  element.innerHTML = inside;
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
  const answered = new Promise((resolve) => {
    element.addEventListener('sketch-read', resolve);
    element.addEventListener('sketch-refused', resolve);
  });
  document.body.append(element);
  await answered;
  return element;
}

const script = (document: object): string =>
  `<script type="application/json">${JSON.stringify(document).replaceAll('<', '\\u003c')}</script>`;

function root(element: Element): ShadowRoot {
  if (!element.shadowRoot) throw new Error('the element has a shadow root');
  return element.shadowRoot;
}

function cells(element: Element): readonly (string | undefined)[] {
  return [...root(element).querySelectorAll('tbody td.size')].map((cell) =>
    cell.textContent?.replaceAll('\u00a0', ' '),
  );
}

function pick(element: Element, value: string): void {
  const select = root(element).querySelector<HTMLSelectElement>('.bar select');
  if (!select) throw new Error('there is a choice of units');
  select.value = value;
  select.dispatchEvent(new Event('change'));
}

test('the card is drawn and every piece has its row of sizes', async () => {
  const element = await shown(script(sampleDocument()));
  expect(root(element).querySelectorAll('g[data-piece]')).toHaveLength(4);
  const rows = [...root(element).querySelectorAll('tbody tr')].map((row) =>
    row.textContent?.replace(/\s+/g, ' ').trim(),
  );
  // 4 1/4 in wide and folded at the left: twice as wide when it lies open.
  expect(rows[0]).toBe('A Card base8 1⁄2 × 5 1⁄2 inIvory card');
  expect(rows).toHaveLength(6);
  expect(root(element).querySelectorAll('thead th')).toHaveLength(3);
  expect(root(element).querySelector<HTMLSlotElement>('slot')?.hidden).toBe(true);
});

test('what a card has several of is told in a column of its own', async () => {
  const sample = sampleDocument();
  const [first, second, ...others] = sample.pieces;
  const element = await shown(script({ ...sample, pieces: [first, { ...second, perCard: 3 }, ...others] }));
  expect([...root(element).querySelectorAll('thead th')].map(({ textContent }) => textContent)).toEqual([
    'Piece',
    'How many',
    'Cut',
    'From',
  ]);
  const counts = [...root(element).querySelectorAll('tbody td.few')].map(({ textContent }) => textContent);
  expect(counts.filter((count) => count === '3')).toHaveLength(1);
  expect(counts).toHaveLength(6);
});

test('a sketch comes by its share code, and its property is what is shown', async () => {
  const sketch = expectSketch(sampleDocument());
  const element = await shown('', { code: writeShareCode(sketch) });
  expect(Reflect.get(element, 'sketch')).toEqual(sketch);
});

test('all text of a sketch is text', async () => {
  const element = await shown(script({ ...sampleDocument(), title: '<img src=x onerror=alert(1)>' }));
  expect(root(element).querySelector('img')).toBeNull();
  expect(root(element).querySelector('[role=heading]')?.textContent).toContain('<img');
});

test.each([
  ['an unknown version', script({ trimwell: 9 }), {}],
  ['no sketch at all', '', {}],
  ['a code that was cut short', '', { code: 'aXYZ' }],
  ['an address that is no page', '', { src: 'javascript:alert(1)' }],
])('%s leaves what the page put there, and a quiet word', async (_, inside, attributes) => {
  const element = await shown(`<p>the static card</p>${inside}`, attributes as Record<string, string>);
  expect(root(element).querySelector<HTMLSlotElement>('slot')?.hidden).toBe(false);
  expect(root(element).textContent).toContain('could not be read');
  expect(Reflect.get(element, 'sketch')).toBeNull();
});

test('the attribute says the first unit; the reader’s own goes before it, is told, and is kept only then', async () => {
  const element = await shown(script(sampleDocument()), { unit: 'mm' });
  expect(cells(element)[0]).toBe('215.9 × 139.7 mm');
  expect(localStorage).toHaveLength(0);
  const told = new Promise<CustomEvent<{ code: string }>>((resolve) =>
    element.addEventListener('choices-change', (event) => resolve(event as CustomEvent), { once: true }),
  );
  pick(element, 'in decimal');
  expect(cells(element)[0]).toBe('8.5 × 5.5 in');
  const { code } = (await told).detail;
  expect(readChoicesCode(code)).toMatchObject({ ok: true, choices: { unit: 'in', form: 'decimal' } });
  expect(Object.keys(localStorage)).toEqual(['trimwell-sketch:fern-sampler']);
});

test('a link brings a version back, and one for another sketch or of nonsense leaves the designer’s', async () => {
  const first = await shown(script(sampleDocument()));
  const told = new Promise<CustomEvent<{ code: string }>>((resolve) =>
    first.addEventListener('choices-change', (event) => resolve(event as CustomEvent), { once: true }),
  );
  pick(first, 'mm fraction');
  const { code } = (await told).detail;
  first.remove();
  localStorage.clear();
  location.hash = `trimwell=${code}`;
  const again = await shown(script(sampleDocument()));
  await vi.waitFor(() => expect(cells(again)[0]).toBe('215.9 × 139.7 mm'), PATIENCE);
  const other = await shown(script({ ...sampleDocument(), id: 'another' }));
  location.hash = 'trimwell=cNonsense';
  await vi.waitFor(() => expect(root(other).textContent).toContain('could not be read'), PATIENCE);
  expect(cells(other)[0]).toBe('8 1⁄2 × 5 1⁄2 in');
});

test('the desk opens by its button; where no planner can run it says so', async () => {
  const element = await shown(script(sampleDocument()));
  const button = root(element).querySelector<HTMLButtonElement>('button.main');
  button?.click();
  expect(button?.getAttribute('aria-expanded')).toBe('true');
  // There are no workers in this environment, as on a page that forbids them.
  await vi.waitFor(
    () => expect(root(element).querySelector('[role=status]')?.textContent).toContain('could not be worked out'),
    PATIENCE,
  );
  const boxes = [...root(element).querySelectorAll('.desk summary')].map((summary) => summary.textContent);
  expect(boxes).toEqual([
    'Other ways to make it',
    'The paper I have',
    'Cutting guide',
    'Every card',
    'Steps',
    'Print, save, keep',
  ]);
  button?.click();
  expect(root(element).querySelector('.desk')).toBeNull();
});
