import { inches, millimetres } from '@trimwell/geometry';
import { BEGINNINGS, CARD_SIZES, checkSketch, type Sketch } from '@trimwell/sketch';
import { afterEach, expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import { LengthField } from '../table/length-field.js';
import { NewCardElement } from './new-card.js';

customElements.define('test-new-card', NewCardElement);
if (!customElements.get('trimwell-length')) customElements.define('trimwell-length', LengthField);

async function open(sketch: Sketch = sampleSketch()) {
  const tray = new NewCardElement();
  tray.session = new Session(sketch, { onmessage: null, postMessage: () => {}, terminate: () => {} });
  tray.pointing = new Pointing();
  const begun: Sketch[] = [];
  document.body.addEventListener('sketch-begin', (event) =>
    begun.push((event as CustomEvent<{ sketch: Sketch }>).detail.sketch),
  );
  document.body.append(tray);
  await tray.updateComplete;
  const root = tray.shadowRoot;
  if (!root) throw new Error('no shadow root');
  const radios = (name: string) => [...root.querySelectorAll<HTMLInputElement>(`input[name="${name}"]`)];
  const said = (radio: HTMLInputElement) =>
    radio.getAttribute('aria-label') ?? radio.closest('label')?.textContent?.trim() ?? '';
  const choose = async (name: string, label: string) => {
    const found = radios(name).find((radio) => said(radio).startsWith(label));
    if (!found) throw new Error(`no ${name} ${label} among ${radios(name).map(said).join('; ')}`);
    found.checked = true;
    found.dispatchEvent(new Event('change'));
    await tray.updateComplete;
  };
  const chosen = (name: string) =>
    radios(name)
      .filter(({ checked }) => checked)
      .map(said);
  const lay = () => {
    root.querySelector<HTMLButtonElement>('.lay')?.click();
    const [sketch] = begun.splice(0);
    if (!sketch) throw new Error('nothing was begun');
    return sketch;
  };
  const status = () => root.querySelector('[role="status"]')?.textContent;
  return { tray, root, radios, choose, chosen, lay, status };
}

afterEach(() => document.body.replaceChildren());

test('it begins with an A2 card in inches, each group a group of radio buttons with one chosen', async () => {
  const { radios, chosen, status } = await open();
  expect(radios('size')).toHaveLength(CARD_SIZES.filter(({ unit }) => unit === 'in').length + 1);
  expect(radios('layout')).toHaveLength(BEGINNINGS.length);
  expect(chosen('size')).toEqual(['US A2, 4 1⁄4 × 5 1⁄2 in']);
  expect(chosen('fold')).toEqual(['at the left']);
  expect(status()).toBe('Window and mat, 4 1⁄4 × 5 1⁄2 in, folded at the left');
});

test('sizes are drawn to true proportion among each other', async () => {
  const { root } = await open();
  const figures = [...root.querySelectorAll<SVGElement>('.size svg')].map((svg) => ({
    width: Number(svg.getAttribute('width')),
    height: Number(svg.getAttribute('height')),
  }));
  const sizes = CARD_SIZES.filter(({ unit }) => unit === 'in');
  const [first] = figures;
  const scale = (first?.width ?? 0) / (sizes[0]?.width ?? 1);
  for (const [index, size] of sizes.entries()) {
    expect(figures[index]?.width).toBeCloseTo(size.width * scale, 6);
    expect(figures[index]?.height).toBeCloseTo(size.height * scale, 6);
  }
});

test('what is chosen is laid out, with the envelope of its size and an id of its own', async () => {
  const { choose, lay } = await open();
  await choose('unit', 'millimetres');
  await choose('size', 'ISO A6');
  await choose('way', 'lying');
  await choose('layout', 'Quilt of four');
  const sketch = lay();
  expect(sketch).toMatchObject({
    title: 'Quilt of four',
    unit: 'mm',
    card: {
      width: millimetres(148),
      height: millimetres(105),
      fold: 'top',
      envelope: { name: 'ISO C6', width: millimetres(114), height: millimetres(162) },
    },
  });
  expect(sketch.id).toMatch(/^quilt-of-four-[a-z0-9]+$/);
  expect(checkSketch(sketch)).toEqual([]);
});

test('a fold that no sheet is long enough for cannot be chosen, and says why', async () => {
  const { choose, radios, chosen, lay } = await open();
  await choose('fold', 'along the top');
  await choose('size', 'Slimline');
  const top = radios('fold')[1];
  expect(top?.disabled).toBe(true);
  expect(top?.closest('label')?.textContent).toContain('opened, the base would be 17 in long, more than a sheet has');
  expect(chosen('fold')).toEqual(['at the left']);
  expect(lay().card).toMatchObject({ fold: 'left', width: inches(3.5) });
});

test('a size of one’s own comes from two length fields; what is out of bounds is refused there', async () => {
  const { root, tray, choose, lay, status } = await open();
  await choose('size', 'Another size');
  const [width] = [...root.querySelectorAll<LengthField>('trimwell-length')];
  await width?.updateComplete;
  const box = width?.shadowRoot?.querySelector('input');
  if (!width || !box) throw new Error('no field');
  const type = async (text: string) => {
    box.value = text;
    box.dispatchEvent(new Event('change'));
    await width.updateComplete;
    await tray.updateComplete;
  };
  await type('7 1/2');
  expect(status()).toContain('7 1⁄2 × 6 in, folded along the top');
  await type('13 in');
  expect(width.shadowRoot?.querySelector('[role="alert"]')?.textContent).toContain('Allowed: 2 in to 12 in');
  expect(lay().card).toMatchObject({ width: inches(7.5), height: inches(6), fold: 'top' });
  await choose('unit', 'millimetres');
  await type('50 mm');
  await choose('unit', 'inches');
  expect(lay().card.width).toBe(inches(2));
});

test('a metric sketch on the table begins metric; a card without a fold has no inside and no envelope', async () => {
  const { choose, lay, chosen } = await open({ ...sampleSketch(), unit: 'mm' });
  expect(chosen('size')).toEqual(['ISO A6, 105 × 148 mm, ISO 216:2007']);
  await choose('fold', 'not at all');
  await choose('layout', 'Words inside');
  const sketch = lay();
  expect(sketch.pieces.every(({ face }) => face === 'front')).toBe(true);
  expect(sketch.card.envelope).toBeUndefined();
});
