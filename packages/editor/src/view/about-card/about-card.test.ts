import { inches } from '@trimwell/geometry';
import type { LitElement } from 'lit';
import { afterEach, expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import { LengthField } from '../table/length-field.js';
import type { AboutCardElement } from './about-card.js';
import './define.js';

if (!customElements.get('trimwell-length')) customElements.define('trimwell-length', LengthField);

async function open() {
  const tray = document.createElement('trimwell-about-card') as AboutCardElement;
  tray.session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  tray.pointing = new Pointing();
  document.body.append(tray);
  const part = (tag: string): LitElement => {
    const found = tag === '' ? tray : tray.shadowRoot?.querySelector<LitElement>(tag);
    if (!found) throw new Error(`no ${tag}`);
    return found;
  };
  const settled = async () => {
    await tray.updateComplete;
    for (const tag of ['trimwell-closing-lines', 'trimwell-card-form', 'trimwell-supplies'])
      await part(tag).updateComplete;
  };
  await settled();
  const named = <T extends HTMLElement = HTMLInputElement>(tag: string, label: string): T => {
    const found = part(tag).shadowRoot?.querySelector<T>(`[aria-label="${label}"]`);
    if (!found) throw new Error(`no ${label}`);
    return found;
  };
  const type = async (box: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement, text: string) => {
    box.value = text;
    box.dispatchEvent(new Event('change', { bubbles: true }));
    await settled();
  };
  const press = async (button: HTMLElement) => {
    button.click();
    await settled();
  };
  const submit = async (tag: string) => {
    const form = part(tag).shadowRoot?.querySelector('form');
    form?.dispatchEvent(new SubmitEvent('submit', { cancelable: true }));
    await settled();
  };
  const alert = (tag: string) => part(tag).shadowRoot?.querySelector('[role="alert"]')?.textContent ?? null;
  const byId = (id: string) => {
    const found = tray.shadowRoot?.querySelector<HTMLInputElement>(`#${id}`);
    if (!found) throw new Error(`no ${id}`);
    return found;
  };
  const sketch = () => tray.session.state.sketch;
  const steps = () => tray.session.state.history.past.map(({ event }) => event);
  return { tray, named, type, press, submit, alert, byId, sketch, steps, part, settled };
}

afterEach(() => document.body.replaceChildren());

test('words are written in place, each a step; a title is never taken away', async () => {
  const { byId, type, sketch, steps, alert, tray } = await open();
  await type(byId('title'), '  Fern corner ');
  await type(byId('notes'), 'Score first.\nThen fold.');
  expect(sketch()).toMatchObject({ title: 'Fern corner', notes: 'Score first.\nThen fold.' });
  expect(steps()).toEqual(['sketch.describe', 'sketch.describe']);
  await type(byId('title'), ' ');
  expect(alert('')).toBe('A sketch needs a title.');
  expect(byId('title').getAttribute('aria-invalid')).toBe('true');
  expect(sketch().title).toBe('Fern corner');
  tray.session.undo();
  tray.session.undo();
  await tray.updateComplete;
  expect(byId('notes').value).toBe('');
});

test('closing lines: a wrong address is refused in place and kept to be mended; lines are ordered and taken away', async () => {
  const tag = 'trimwell-closing-lines';
  const { named, type, press, submit, alert, sketch, steps } = await open();
  named(tag, 'What it says, new line').value = 'Club notes';
  named(tag, 'Where it leads, new line').value = 'http://fernhollow.example';
  await submit(tag);
  expect(alert(tag)).toContain('begins with https://');
  expect(named(tag, 'Where it leads, new line').getAttribute('aria-invalid')).toBe('true');
  expect(named(tag, 'What it says, new line').getAttribute('aria-invalid')).toBe('false');
  expect(named(tag, 'Where it leads, new line').value).toBe('http://fernhollow.example');
  expect(sketch().links).toEqual([]);
  named(tag, 'Where it leads, new line').value = 'https://fernhollow.example/notes';
  await submit(tag);
  expect(alert(tag)).toBeNull();
  expect(named(tag, 'What it says, new line').value).toBe('');
  named(tag, 'What it says, new line').value = 'Next sketch';
  named(tag, 'Where it leads, new line').value = 'https://fernhollow.example/next';
  await submit(tag);
  await press(named(tag, 'Move up: Next sketch'));
  expect(sketch().links.map(({ text }) => text)).toEqual(['Next sketch', 'Club notes']);
  await type(named(tag, 'Where it leads, line 1'), 'no address');
  expect(alert(tag)).toContain('begins with https://');
  expect(sketch().links[0]?.address).toBe('https://fernhollow.example/next');
  await press(named(tag, 'Take away: Club notes'));
  expect(sketch().links).toHaveLength(1);
  expect(new Set(steps())).toEqual(new Set(['links.change']));
});

test('supplies: added, once only; changed, ordered, emptied away', async () => {
  const tag = 'trimwell-supplies';
  const { named, type, press, submit, alert, sketch, part } = await open();
  for (const supply of ['Foam pads', 'Bone folder', 'Foam pads']) {
    named(tag, 'New supply').value = supply;
    await submit(tag);
  }
  expect(alert(tag)).toBe('This stands in the list already.');
  expect(sketch().supplies).toEqual(['Foam pads', 'Bone folder']);
  const offered = [...(part(tag).shadowRoot?.querySelectorAll('datalist option') ?? [])].map((option) =>
    option.getAttribute('value'),
  );
  expect(offered).not.toContain('Bone folder');
  expect(offered).toContain('Craft knife and cutting mat');
  await press(named(tag, 'Move down: Foam pads'));
  await type(named(tag, 'Supply 1'), 'Score board');
  expect(sketch().supplies).toEqual(['Score board', 'Foam pads']);
  await type(named(tag, 'Supply 2'), 'Score board');
  expect(named(tag, 'Supply 2').value).toBe('Foam pads');
  await type(named(tag, 'Supply 1'), '');
  expect(sketch().supplies).toEqual(['Foam pads']);
});

test('another size fits the pieces or leaves them; fold, base and envelope follow their fields', async () => {
  const tag = 'trimwell-card-form';
  const { named, type, press, sketch, steps, part } = await open();
  const panel = () => sketch().pieces.find(({ id }) => id === 'panel');
  await type(named<HTMLSelectElement>(tag, 'Usual size'), 'us-a7');
  expect(sketch().card).toMatchObject({ width: inches(5), height: inches(7) });
  expect(panel()).toMatchObject({ x: inches(1 / 4), width: inches(4.5), height: inches(6.5) });
  const radio = (label: string) => {
    const found = [...(part(tag).shadowRoot?.querySelectorAll<HTMLLabelElement>('label.pick') ?? [])].find(
      (one) => one.textContent?.trim() === label,
    );
    if (!found) throw new Error(`no ${label}`);
    return found;
  };
  await press(radio('leave them where they are'));
  const turn = [...(part(tag).shadowRoot?.querySelectorAll('button') ?? [])].find(
    (button) => button.textContent === 'Turn it',
  );
  if (!turn) throw new Error('no Turn it');
  await press(turn);
  expect(sketch().card).toMatchObject({ width: inches(7), height: inches(5) });
  expect(panel()).toMatchObject({ x: inches(1 / 4), width: inches(4.5), height: inches(6.5) });
  await press(radio('along the top'));
  await type(named<HTMLSelectElement>(tag, 'Paper of the card base'), 'moss');
  await type(named<HTMLSelectElement>(tag, 'Usual envelope'), 'us-a7');
  expect(sketch().card).toMatchObject({ fold: 'top', base: 'moss', envelope: { name: 'US A7', width: inches(5.25) } });
  const says = () => part(tag).shadowRoot?.querySelector('[role="status"]')?.textContent;
  expect(says()).toBe('1⁄4 in and 1⁄4 in to spare.');
  await type(named<HTMLSelectElement>(tag, 'Usual envelope'), 'us-a2');
  expect(says()).toBe('The card is 1 1⁄4 in too large for it.');
  await type(named<HTMLSelectElement>(tag, 'Usual envelope'), 'own');
  expect(sketch().card.envelope).toMatchObject({ name: 'own envelope', width: inches(7.25), height: inches(5.25) });
  await type(named<HTMLSelectElement>(tag, 'Usual envelope'), 'none');
  expect(sketch().card.envelope).toBeUndefined();
  expect(steps()).toEqual(['card.size', 'card.size', 'card.fold', 'card.base', ...Array(4).fill('card.envelope')]);
});
