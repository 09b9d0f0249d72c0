import { inches } from '@trimwell/geometry';
import type { NearMisses } from '@trimwell/sketch';
import { afterEach, beforeAll, expect, test, vi } from 'vitest';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import type { PlanAnswer, PlanPort } from '../../session/plan-messages.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import { VariationSlipElement } from './variation-slip.js';
import { VariationsElement } from './variations-panel.js';
import { WritingBandElement } from './writing-band.js';

const scrolled = vi.fn();

beforeAll(() => {
  // There is no layout here to scroll in.
  Element.prototype.scrollIntoView = scrolled;
  customElements.define('trimwell-variations', VariationsElement);
  customElements.define('trimwell-writing-band', WritingBandElement);
  customElements.define('trimwell-variation-slip', VariationSlipElement);
});

afterEach(() => document.body.replaceChildren());

const BATCH = { papers: [], complete: true, lowerBound: 0, fewestSheets: true, mixed: false, work: 0 };

/** In place of a worker: a sheet for every card, and for every 40 square inches of one. */
function desk(): PlanPort {
  const port: PlanPort = {
    onmessage: null,
    postMessage: ({ revision, recipe, sketch }) => {
      const area = recipe.parts.reduce((sum, { width, height }) => sum + width * height, 0);
      const cards = Number(recipe.cards);
      const batch = { ...BATCH, cards, sheets: cards * Math.ceil(area / inches(40) / inches(1)) };
      const say = (data: PlanAnswer): void => port.onmessage?.({ data });
      setTimeout(() => {
        say({ revision, kind: 'plan', batch, done: true });
        say({ revision, kind: 'limit', limit: null });
        const found = { cards, sheets: batch.sheets, misses: [] } as unknown as NearMisses;
        if (sketch) say({ revision, kind: 'near misses', found });
      });
    },
    terminate: () => {},
  };
  return port;
}

async function open(port: PlanPort = { onmessage: null, postMessage: () => {}, terminate: () => {} }) {
  const sketch = { ...sampleSketch(), batch: { ...sampleSketch().batch, cards: 2 } };
  const session = new Session(sketch, port);
  const panel = new VariationsElement();
  const band = new WritingBandElement();
  const pointing = new Pointing();
  panel.openPort = desk;
  for (const part of [panel, band]) Object.assign(part, { session, pointing });
  document.body.append(band, panel);
  await panel.updateComplete;
  const root = panel.shadowRoot as ShadowRoot;
  const settled = async (): Promise<void> => {
    await panel.updateComplete;
    await band.updateComplete;
    await new Promise((resolve) => setTimeout(resolve));
    await panel.updateComplete;
  };
  const press = async (within: ParentNode, name: string): Promise<void> => {
    const button = [...within.querySelectorAll('button')].find(
      (each) => (each.getAttribute('aria-label') ?? each.textContent ?? '').trim() === name,
    );
    if (!button) throw new Error(`no button ${name}`);
    button.click();
    await settled();
  };
  const slip = async () => {
    const element = await vi.waitFor(() => {
      const found = root.querySelector<VariationSlipElement>('trimwell-variation-slip');
      if (!found?.shadowRoot?.querySelector('section')) throw new Error('no slip');
      return found;
    }, PATIENCE);
    return element.shadowRoot as ShadowRoot;
  };
  const told = (): string => root.querySelector('[role="status"]')?.textContent ?? '';
  const bandRoot = band.shadowRoot as ShadowRoot;
  return { session, panel, band, bandRoot, root, press, settled, slip, told };
}

test('each variation is a checkbox of its name, put on and taken off', async () => {
  const { root, session, press, told } = await open();
  const box = () => root.querySelector('[role="checkbox"]');
  expect(box()?.getAttribute('aria-label')).toBe('Square corners');
  expect(box()?.getAttribute('aria-checked')).toBe('false');
  await press(root, 'Square corners');
  expect(box()?.getAttribute('aria-checked')).toBe('true');
  expect(session.state.on).toEqual(['square']);
  expect(told()).toContain('Square corners is put on.');
  await press(root, 'Square corners');
  expect(session.state.sketch).toBe(session.document);
  expect(told()).toBe('Square corners is taken off.');
});

test('another is started, named in the band, written on the card, and ended', async () => {
  const { root, bandRoot, band, session, press, settled, told } = await open();
  const { pieces } = session.document;
  expect(band.hasAttribute('writing')).toBe(false);
  await press(root, 'Start another');
  expect(band.hasAttribute('writing')).toBe(true);
  const box = bandRoot.querySelector('input') as HTMLInputElement;
  expect(bandRoot.activeElement).toBe(box);
  expect(told()).toBe('Changes to the card go into a new variation from now on.');
  box.value = 'Low strip';
  box.dispatchEvent(new Event('change'));
  session.dispatch({ event: 'x', edits: [{ do: 'place', piece: 'strip', x: inches(1), y: inches(4) }], at: 0 });
  await settled();
  expect(bandRoot.querySelector('.count')?.textContent).toBe('1 change');
  expect(session.document.pieces).toBe(pieces);
  expect(root.querySelectorAll('.says')[1]?.textContent).toBe('Being written.');
  await press(bandRoot, 'Done');
  expect(session.state.writing).toBeNull();
  expect(session.document.variations[1]).toMatchObject({ name: 'Low strip', edits: [{ do: 'place', piece: 'strip' }] });
  expect(band.hasAttribute('writing')).toBe(false);
  expect(told()).toBe('Changes go to the card again. Low strip is put on.');
  expect(root.activeElement?.getAttribute('aria-label')).toBe('Low strip');
});

test('Escape in the band puts the name back and goes no further', async () => {
  const { root, bandRoot, session, press } = await open();
  await press(root, 'Start another');
  const heard = vi.fn();
  document.body.addEventListener('keydown', heard);
  const box = bandRoot.querySelector('input') as HTMLInputElement;
  box.value = 'Half a na';
  box.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, composed: true }));
  document.body.removeEventListener('keydown', heard);
  expect(box.value).toBe('Another way');
  expect(heard).not.toHaveBeenCalled();
  expect(session.state.writing).toBe('variation-1');
  box.value = '   ';
  box.dispatchEvent(new Event('change'));
  expect(box.value).toBe('Another way');
});

test('the slip tells every change, leaves one out, and is put away by Escape with the focus back', async () => {
  const { root, session, press, settled, slip, told } = await open();
  await press(root, 'Open Square corners');
  const inside = await slip();
  await settled();
  expect([...inside.querySelectorAll('li')].map((line) => line.textContent?.replace(/\s+/g, ' ').trim())).toEqual([
    'Greeting: corners square leave out',
  ]);
  expect(inside.activeElement).toBe(inside.querySelector('input'));
  expect(scrolled).toHaveBeenCalledOnce();
  await press(inside, 'Leave out: Greeting: corners square');
  expect(session.document.variations[0]?.edits).toEqual([]);
  expect(told()).toBe('Left out: Greeting: corners square.');
  await settled();
  expect(inside.activeElement).toBe(inside.querySelector('h3'));
  inside.activeElement?.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, composed: true }));
  await settled();
  expect(root.querySelector('trimwell-variation-slip')).toBeNull();
  expect(root.activeElement?.getAttribute('aria-label')).toBe('Open Square corners');
});

test('in the slip a variation is copied, moved, made part of the card, and taken away', async () => {
  const { root, session, press, slip, settled, told } = await open();
  const names = () => session.document.variations.map(({ name }) => name);
  await press(root, 'Open Square corners');
  let inside = await slip();
  await press(inside, 'Copy');
  expect(names()).toEqual(['Square corners', 'Square corners 2']);
  await press(inside, 'Later');
  expect(names()).toEqual(['Square corners 2', 'Square corners']);
  expect(told()).toBe('Square corners is number 2 of 2 now.');
  await press(inside, 'Make it part of the card');
  expect(names()).toEqual(['Square corners 2']);
  expect(session.document.pieces.find(({ id }) => id === 'greeting')?.corners.tl).toBe(0);
  await press(root, 'Open Square corners 2');
  inside = await slip();
  await press(inside, 'Change it on the card');
  expect(session.state.writing).toBe('variation-1');
  await press(inside, 'Take away');
  await settled();
  expect([names(), session.state.writing]).toEqual([[], null]);
  expect(root.querySelector('trimwell-variation-slip')).toBeNull();
});

test('what comes after the one that is written cannot be put on, and says why', async () => {
  const { root, session, press, settled } = await open();
  await press(root, 'Start another');
  session.dispatch({ event: 'x', edits: [], writing: 'square', at: 0 });
  await settled();
  const later = root.querySelectorAll('[role="checkbox"]')[1];
  expect(later?.getAttribute('aria-disabled')).toBe('true');
  expect(root.querySelectorAll('.says')[1]?.textContent).toBe('Comes after Square corners, which is being written.');
  (later as HTMLElement).click();
  expect(session.state.on).toEqual(['square']);
});

test('a change of what is put on goes into it, and is told of', async () => {
  const { root, session, press, settled, told } = await open();
  await press(root, 'Square corners');
  const quarter = inches(1 / 4);
  const corners = { tl: quarter, tr: quarter, br: quarter, bl: quarter };
  session.dispatch({ event: 'x', edits: [{ do: 'round', piece: 'greeting', corners }], at: 0 });
  await settled();
  expect(told()).toBe('What Square corners brings or sets was changed in it; the card keeps its own.');
});

test('the figures come when the planner rests; ready ones are offered, counted when looked at, and added', async () => {
  const { root, session, press, settled } = await open(desk());
  const says = () => root.querySelector('#says-square')?.textContent;
  await vi.waitFor(() => expect(says()).toBe('As many sheets'), PATIENCE);
  const ready = root.querySelector('details') as HTMLDetailsElement;
  const names = () => [...ready.querySelectorAll('li span')].map((line) => line.textContent);
  const lines = () => [...ready.querySelectorAll('.says')].map((line) => line.textContent);
  expect(names()).toEqual([]);
  ready.open = true;
  ready.dispatchEvent(new Event('toggle'));
  await vi.waitFor(() => expect(names()).toEqual(['Plain edges', 'Glued flat', 'Another card size']), PATIENCE);
  expect(lines()[1]).toBe('As many sheets');
  expect(lines()[2]).toMatch(/^Card 5 × 7 in/);
  await vi.waitFor(() => expect(lines().join()).not.toContain('Counting'), PATIENCE);
  await press(root, 'Add Plain edges');
  await settled();
  expect(session.document.variations.map(({ name }) => name)).toEqual(['Square corners', 'Plain edges']);
  expect(session.state.on).toEqual(['plain-edges']);
  expect(root.activeElement?.getAttribute('aria-label')).toBe('Plain edges');
});

test('a panel that is taken off the page ends its worker', async () => {
  const { panel, root } = await open(desk());
  let ended = 0;
  panel.openPort = () => {
    const port = desk();
    return {
      postMessage: (question) => port.postMessage(question),
      terminate: () => {
        ended += 1;
        port.terminate();
      },
      get onmessage() {
        return port.onmessage;
      },
      set onmessage(listener) {
        port.onmessage = listener;
      },
    };
  };
  panel.remove();
  panel.session = new Session(sampleSketch(), desk());
  document.body.append(panel);
  await vi.waitFor(() => expect(root.querySelector('#says-square')?.textContent).toBe('As many sheets'), PATIENCE);
  panel.remove();
  expect(ended).toBe(1);
});
