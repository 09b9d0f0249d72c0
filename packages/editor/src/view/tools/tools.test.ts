import { inches, ticks } from '@trimwell/geometry';
import type { Edge, Piece } from '@trimwell/sketch';
import { afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { applyTransaction } from '../../state/transaction.js';
import { Pointing } from '../pointing.js';
import type { SessionElement } from '../session-element.js';
import { LengthField } from '../table/length-field.js';
import { CornersElement } from './corners.js';
import { EdgeSlipElement } from './edge-slip.js';
import { EdgesElement } from './edges.js';
import { ownTools } from './own-tools.js';
import { PunchFormElement } from './punch-form.js';
import { ToolsElement } from './tools.js';

const TAGS = {
  'trimwell-length': LengthField,
  'trimwell-corners': CornersElement,
  'trimwell-edges': EdgesElement,
  'trimwell-edge-slip': EdgeSlipElement,
  'trimwell-punch-form': PunchFormElement,
  'trimwell-tools': ToolsElement,
};

beforeAll(() => {
  for (const [tag, element] of Object.entries(TAGS)) customElements.define(tag, element);
  // What jsdom has not: a dialog that opens.
  HTMLDialogElement.prototype.showModal = function showModal() {
    this.open = true;
  };
  HTMLDialogElement.prototype.close = function close() {
    this.open = false;
    this.dispatchEvent(new Event('close'));
  };
});

/** Each test begins with an empty drawer, which lasts as long as the page here. */
beforeEach(async () => {
  await ownTools.load();
  for (const radius of [...ownTools.radii]) await ownTools.setRadius(radius, false);
  for (const punch of [...ownTools.punches]) await ownTools.setPunch(punch, false);
});
afterEach(() => document.body.replaceChildren());

function newSession(selected: string | null = 'strip'): Session {
  const session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  if (selected) session.dispatch({ event: 'piece.select', edits: [], selection: [selected], at: 0 });
  return session;
}

async function show<T extends SessionElement>(tag: keyof typeof TAGS, session: Session, more: Partial<T> = {}) {
  const element = document.createElement(tag) as T;
  Object.assign(element, { session, pointing: new Pointing(), ...more });
  document.body.append(element);
  await element.updateComplete;
  const root = element.shadowRoot;
  if (!root) throw new Error('no shadow root');
  const button = (name: string): HTMLButtonElement => {
    const said = (one: Element): string =>
      (one.getAttribute('aria-label') ?? one.textContent ?? '').replace(/\s+/g, ' ').trim();
    const found = [...root.querySelectorAll('button')].find((one) => said(one) === name);
    if (!found) throw new Error(`no button ${name}`);
    return found;
  };
  const press = async (name: string) => {
    button(name).click();
    await element.updateComplete;
  };
  const piece = (id: string): Piece => {
    const found = session.state.sketch.pieces.find((one) => one.id === id);
    if (!found) throw new Error(`no piece ${id}`);
    return found;
  };
  return { element, root, button, press, piece };
}

/** Types a length into the field with this label and commits it. */
async function type(root: ShadowRoot, label: string, text: string): Promise<string> {
  const field = [...root.querySelectorAll<LengthField>('trimwell-length')].find((one) => one.label === label);
  const box = field?.shadowRoot?.querySelector('input');
  if (!field || !box) throw new Error(`no field ${label}`);
  box.value = text;
  box.dispatchEvent(new Event('change'));
  await field.updateComplete;
  return field.shadowRoot?.querySelector('.error')?.textContent ?? '';
}

test('corners are rounded all at once by a press, or one by one by typing', async () => {
  const { root, press, button, piece, element } = await show('trimwell-corners', newSession());
  await press('Round by 1⁄4 in');
  expect(piece('strip').corners).toEqual({
    tl: inches(1 / 4),
    tr: inches(1 / 4),
    br: inches(1 / 4),
    bl: inches(1 / 4),
  });
  expect(button('Round by 1⁄4 in').getAttribute('aria-pressed')).toBe('true');
  await type(root, 'Radius, top right', '1/2 - 1/8');
  await element.updateComplete;
  expect(piece('strip').corners.tr).toBe(inches(3 / 8));
  expect(root.querySelector('details')?.open).toBe(true);
  await press('0, square corners');
  expect(piece('strip').corners.tr).toBe(0);
});

test('a radius that no rounder makes gets a quiet word, once rounders are named', async () => {
  const { root, press, element } = await show('trimwell-corners', newSession());
  await press('Round by 3⁄16 in');
  expect(root.querySelector('.word')).toBeNull();
  await ownTools.setRadius(inches(1 / 8), true);
  await element.updateComplete;
  expect(root.querySelector('.word')?.textContent).toContain('No rounder of yours makes 3⁄16 in');
  expect(root.querySelectorAll('.radii button')).toHaveLength(2);
  const wishes: unknown[] = [];
  document.body.addEventListener('tray-wish', (event) => wishes.push((event as CustomEvent).detail), { once: true });
  await press('Your tools');
  expect(wishes).toEqual([{ tray: 'tools' }]);
  await press('Round by 1⁄8 in');
  expect(root.querySelector('.word')).toBeNull();
});

test('a mat is made concentric by its box, and then refuses radii within its reveal, in place', async () => {
  const session = newSession('panel');
  await show('trimwell-corners', session).then(({ press }) => press('Round by 1⁄4 in'));
  session.dispatch({ event: 'piece.select', edits: [], selection: ['panel-mat'], at: 0 });
  const { root, piece, button, element } = await show('trimwell-corners', session);
  const box = root.querySelector<HTMLInputElement>('input[type="checkbox"]');
  if (!box) throw new Error('no box');
  box.click();
  await element.updateComplete;
  expect(piece('panel-mat').corners.tl).toBe(inches(3 / 8));
  expect(await type(root, 'Radius of all corners', '1/8')).toContain('more than its reveal of 1⁄8 in');
  expect(button('Round by 1⁄8 in').disabled).toBe(true);
  expect(await type(root, 'Radius of all corners', '1/2')).toBe('');
  expect(piece('panel').corners.tl).toBe(inches(3 / 8));
});

test('a piece that lies on a rounded one evenly is rounded to suit it', async () => {
  const session = newSession('panel');
  session.dispatch({
    event: 'piece.round',
    edits: [
      { do: 'round', piece: 'panel-mat', corners: { tl: inches(1 / 4), tr: ticks(0), br: ticks(0), bl: ticks(0) } },
    ],
    at: 0,
  });
  const { press, piece, root } = await show('trimwell-corners', session);
  await press(`Round to suit ${piece('panel-mat').name}`);
  expect(piece('panel').corners).toEqual({ tl: inches(1 / 8), tr: 0, br: 0, bl: 0 });
  expect([...root.querySelectorAll('button')].some((one) => one.textContent?.includes('Round to suit'))).toBe(false);
});

test('each edge says what it is, and its slip punches it from pictures', async () => {
  const session = newSession();
  const { root, button } = await show('trimwell-edges', session);
  expect([...root.querySelectorAll('button')].map((one) => one.textContent?.trim())).toEqual([
    'topplain',
    'rightplain',
    expect.stringMatching(/^bottom\s+Small scallops$/),
    'leftplain',
  ]);
  button('topplain').click();
  const slip = await shownSlip(root);
  expect(slip.edge).toBe('top');
  const choice = (name: string): HTMLButtonElement => {
    const found = [...(slip.shadowRoot?.querySelectorAll<HTMLButtonElement>('.choice') ?? [])].find(
      (one) => one.textContent?.trim() === name,
    );
    if (!found) throw new Error(`no choice ${name}`);
    return found;
  };
  expect(choice('Plain').getAttribute('aria-pressed')).toBe('true');
  choice('Wave').click();
  await slip.updateComplete;
  expect(session.state.sketch.pieces.find(({ id }) => id === 'strip')?.punched.top).toBe('wave-1');
  expect(choice('Wave').getAttribute('aria-pressed')).toBe('true');
  expect(choice('Wave').querySelector('.edge')?.getAttribute('d')).toContain('C');
  choice('Plain').click();
  await slip.updateComplete;
  expect(session.state.sketch.pieces.find(({ id }) => id === 'strip')?.punched.top).toBeUndefined();
  slip.shadowRoot?.querySelector('dialog')?.close();
  expect(root.querySelector('trimwell-edge-slip')).toBeNull();
});

/** The slip of an edge, which is loaded when it is first wanted. */
function shownSlip(root: ShadowRoot): Promise<EdgeSlipElement> {
  return vi.waitFor(() => {
    const slip = root.querySelector<EdgeSlipElement>('trimwell-edge-slip');
    if (!slip?.shadowRoot?.querySelector('dialog')?.open) throw new Error('no slip');
    return slip;
  }, PATIENCE);
}

test('repeats that do not end whole are told, and made whole by a press', async () => {
  const session = newSession();
  const wide = {
    do: 'resize',
    piece: 'strip',
    x: ticks(0),
    y: ticks(0),
    width: inches(3.8125),
    height: inches(1),
  } as const;
  session.dispatch({ event: 'piece.resize', edits: [wide], at: 0 });
  const { root, press, piece, element } = await show<EdgeSlipElement>('trimwell-edge-slip', session, {
    edge: 'bottom' as Edge,
  });
  expect(root.querySelector('.hint')?.textContent).toContain('of one at both ends');
  const label = [...root.querySelectorAll('button')].find((one) => one.textContent?.startsWith('Make it'))?.textContent;
  await press(label ?? '');
  await element.updateComplete;
  expect(piece('strip').width % (session.state.sketch.punches[0]?.repeat ?? 1)).toBe(0);
  expect(root.querySelector('.hint')?.textContent).toContain('ending whole at both corners');
});

test('the tray takes a punch away only after saying which edges use it', async () => {
  const session = newSession(null);
  const before = session.state;
  const { root, press } = await show('trimwell-tools', session);
  const name = session.state.sketch.punches[0]?.name;
  await press(`Take away, ${name}`);
  expect(root.querySelector('.asked')?.textContent).toContain('bottom of Strip');
  expect(session.state).toBe(before);
  await press('Take it away');
  expect(session.state.sketch.punches).toEqual([]);
  expect(session.state.history.past).toHaveLength(1);
  expect(root.querySelector('[role="status"]')?.textContent).toBe(`${name} taken away`);
});

test('the tray puts a usual punch in, once, and an unused one goes without a question', async () => {
  const session = newSession(null);
  const { press, root } = await show('trimwell-tools', session);
  await press('Arch repeat 1⁄2 in');
  expect(session.state.sketch.punches.at(-1)).toMatchObject({ id: 'arch-1', profile: 'arch' });
  expect(root.querySelector('.more')?.textContent).not.toContain('Arch');
  await press('Take away, Arch');
  expect(session.state.sketch.punches).toHaveLength(1);
});

test('rounders are named by a press or by typing any radius', async () => {
  const { press, button, root, element } = await show('trimwell-tools', newSession(null));
  expect(button('Corner rounder, 1⁄4 in').getAttribute('aria-pressed')).toBe('false');
  await press('Corner rounder, 1⁄4 in');
  await element.updateComplete;
  expect(button('Corner rounder, 1⁄4 in').getAttribute('aria-pressed')).toBe('true');
  await type(root, 'Radius of another rounder you have', '4 mm + 0.5 mm');
  await element.updateComplete;
  expect(ownTools.radii).toEqual([2880, inches(1 / 4)]);
});

test('an own punch is measured with sums, drawn as it is, and goes into the sketch and the drawer', async () => {
  const session = newSession(null);
  const { root, press, element } = await show<ToolsElement>('trimwell-tools', session, { about: 'measure' });
  const form = root.querySelector<PunchFormElement>('trimwell-punch-form');
  const inside = form?.shadowRoot;
  if (!form || !inside) throw new Error('no form');
  await form.updateComplete;
  await type(inside, 'Repeat of the punch', '4 in / 8 + 1/16');
  await type(inside, 'Bite of the punch', '2 in - 1 15/16');
  inside.querySelectorAll<HTMLInputElement>('input[type="radio"]')[2]?.click();
  const name = inside.querySelector<HTMLInputElement>('input[name="name"]');
  if (!name) throw new Error('no name');
  name.value = ' ';
  name.dispatchEvent(new Event('input'));
  await form.updateComplete;
  inside.querySelector<HTMLButtonElement>('button[type="submit"]')?.click();
  await form.updateComplete;
  expect(inside.querySelector('.problem')?.textContent).toContain('needs a name');
  expect(inside.querySelector('.drawing')?.getAttribute('aria-label')).toContain('repeat 9/16 in');
  name.value = 'Saw tooth';
  name.dispatchEvent(new Event('input'));
  await form.updateComplete;
  inside.querySelector<HTMLButtonElement>('button[type="submit"]')?.click();
  await element.updateComplete;
  const punch = { name: 'Saw tooth', profile: 'zigzag', repeat: inches(9 / 16), bite: inches(1 / 16) };
  expect(session.state.sketch.punches.at(-1)).toMatchObject({ ...punch, id: 'zigzag-1' });
  expect(ownTools.punches).toMatchObject([punch]);
  await press('Take away, Saw tooth');
  expect(root.querySelector('.more')?.textContent).toContain('Saw tooth');
});

test('a changed punch changes every edge that it is used on, and the one in the drawer with it', async () => {
  const session = newSession(null);
  const [scallops] = session.state.sketch.punches;
  if (!scallops) throw new Error('the sample has a punch');
  await ownTools.setPunch(scallops, true);
  const { root, press } = await show('trimwell-tools', session);
  await press(`Change, ${scallops.name}`);
  const inside = root.querySelector<PunchFormElement>('trimwell-punch-form')?.shadowRoot;
  if (!inside) throw new Error('no form');
  await type(inside, 'Depth of the punch', '3/16');
  inside.querySelector<HTMLButtonElement>('button[type="submit"]')?.click();
  expect(session.state.sketch.punches[0]?.depth).toBe(inches(3 / 16));
  await expect.poll(() => ownTools.punches.map(({ depth }) => depth), PATIENCE).toEqual([inches(3 / 16)]);
  expect(applyTransaction(session.state, { event: 'x', edits: [], at: 0 }).sketch).toBe(session.state.sketch);
});
