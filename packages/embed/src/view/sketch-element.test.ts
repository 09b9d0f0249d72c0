import { expect, test } from 'vitest';
import { sampleDocument } from '../../../../tests/kit/sample-document.js';
import '../define.js';

/** Puts the element into the page with `inside`, and waits for its answer. */
async function shown(inside: string): Promise<Element> {
  const element = document.createElement('trimwell-sketch');
  element.innerHTML = inside;
  const answered = new Promise((resolve) => {
    element.addEventListener('sketch-read', resolve);
    element.addEventListener('sketch-refused', resolve);
  });
  document.body.append(element);
  await answered;
  await Reflect.get(element, 'updateComplete');
  return element;
}

const script = (document: object): string =>
  `<script type="application/json">${JSON.stringify(document).replaceAll('<', '\\u003c')}</script>`;

test('the card is drawn and every piece has its row of sizes', async () => {
  const element = await shown(script(sampleDocument()));
  const root = element.shadowRoot;
  expect(root?.querySelectorAll('g[data-piece]')).toHaveLength(4);
  const rows = [...(root?.querySelectorAll('tbody tr') ?? [])].map((row) =>
    row.textContent?.replace(/\s+/g, ' ').trim(),
  );
  expect(rows[0]).toBe('A Card base8 1⁄2 × 5 1⁄2 inIvory card');
  expect(rows).toHaveLength(6);
});

test('all text of a sketch is text', async () => {
  const element = await shown(script({ ...sampleDocument(), title: '<img src=x onerror=alert(1)>' }));
  expect(element.shadowRoot?.querySelector('img')).toBeNull();
  expect(element.shadowRoot?.querySelector('caption')?.textContent).toContain('<img');
});

test('a sketch that cannot be read leaves what the page put there, and a quiet word', async () => {
  const element = await shown(`<p>the static card</p>${script({ trimwell: 9 })}`);
  expect(element.shadowRoot?.querySelector('slot')).not.toBeNull();
  expect(element.shadowRoot?.textContent).toContain('could not be read');
});
