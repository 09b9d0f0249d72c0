import { inches, type Length } from '@trimwell/geometry';
import { afterEach, expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { clearSelection, select } from '../../state/commands.js';
import { Pointing } from '../pointing.js';
import { LengthField } from '../table/length-field.js';
import type { CornersElement } from '../tools/corners.js';
import './define.js';
import { TicketElement } from './ticket.js';

async function open(...selection: string[]) {
  const ticket = new TicketElement();
  ticket.session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  ticket.pointing = new Pointing();
  ticket.session.dispatch({ event: 'piece.select', edits: [], selection, at: 1 });
  document.body.append(ticket);
  const settled = async () => {
    await ticket.updateComplete;
    for (const field of ticket.renderRoot.querySelectorAll<LengthField>('trimwell-length')) await field.updateComplete;
  };
  await settled();
  const box = (label: string): HTMLInputElement => {
    const found = [...ticket.renderRoot.querySelectorAll<HTMLElement>('trimwell-length, input')].find(
      (field) => (field.getAttribute('label') ?? field.getAttribute('aria-label')) === label,
    );
    const input = found instanceof LengthField ? found.renderRoot.querySelector('input') : found;
    if (!(input instanceof HTMLInputElement)) throw new Error(`no field ${label}`);
    return input;
  };
  /** Types as a user does, without committing. */
  const type = (label: string, text: string): HTMLInputElement => {
    const input = box(label);
    input.focus();
    input.value = text;
    input.dispatchEvent(new Event('input', { bubbles: true }));
    return input;
  };
  const piece = (id: string) => {
    const found = ticket.session.state.sketch.pieces.find((one) => one.id === id);
    if (!found) throw new Error(`no piece ${id}`);
    return found;
  };
  return { ticket, box, type, piece, settled };
}

/** What leaving a field does in a browser. */
const leave = (input: HTMLInputElement) => input.dispatchEvent(new Event('change', { bubbles: true }));
const press = (target: EventTarget) =>
  target.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true, composed: true }));

afterEach(() => document.body.replaceChildren());

test('what was typed for a piece is of that piece, though another one has been taken meanwhile', async () => {
  const { ticket, type, piece, settled } = await open('strip');
  const before = piece('greeting');
  const steps = () => ticket.session.state.history.past.map(({ event }) => event);
  for (const [label, text] of [
    ['Width', '2 1/8'],
    ['Name of the piece', 'Band'],
    ['Tilt in degrees', '7'],
    ['Radius of all corners', '1/8'],
  ] as const) {
    ticket.run(select('strip'));
    await settled();
    const corners = ticket.renderRoot.querySelector<CornersElement>('trimwell-corners');
    const field = label.startsWith('Radius') ? corners?.renderRoot.querySelector<LengthField>('trimwell-length') : null;
    const input = field?.renderRoot.querySelector('input') ?? type(label, text);
    input.value = text;
    ticket.run(select('greeting'));
    leave(input);
    await settled();
    expect(ticket.session.state.selection).toEqual(['greeting']);
  }
  const eighth = inches(1 / 8);
  expect(piece('strip')).toMatchObject({ name: 'Band', width: inches(2.125), tilt: 7, corners: { tl: eighth } });
  expect(piece('greeting')).toEqual(before);
  expect(steps()).toEqual(['piece.resize', 'piece.name', 'piece.tilt', 'piece.round']);
});

test('a press beside the ticket commits first: before what it takes, and where it moves no focus', async () => {
  const { ticket, type, piece, settled } = await open('strip');
  let width: Length | null = null;
  const beside = document.createElement('div');
  beside.addEventListener('pointerdown', () => {
    width = piece('strip').width;
    ticket.run(clearSelection);
  });
  document.body.append(beside);
  const input = type('Width', '2 1/8');
  press(input);
  expect(piece('strip').width).toBe(inches(3.75));
  press(beside);
  expect(width).toBe(inches(2.125));
  await settled();
  expect(ticket.session.state.history.past).toHaveLength(1);
});

test('nothing half typed is left for the piece that is taken next, even of the same size', async () => {
  const { ticket, type, box, settled } = await open('strip');
  const { pieces } = ticket.session.state.sketch;
  const twin = { ...pieces.find(({ id }) => id === 'strip'), id: 'twin', name: 'Twin' } as (typeof pieces)[number];
  ticket.session.dispatch({ event: 'piece.add', edits: [{ do: 'add-piece', piece: twin }], at: 1 });
  await settled();
  leave(type('Width', 'wide'));
  ticket.run(select('twin'));
  await settled();
  expect(box('Width').value).toBe('3 3⁄4 in');
  expect(box('Width').getAttribute('aria-invalid')).toBe('false');
});

test('what was typed for one sketch does not change another one with the same pieces', async () => {
  const { ticket, type, piece, settled } = await open('strip');
  const input = type('Width', '2 1/8');
  ticket.session.open(sampleSketch());
  leave(input);
  await settled();
  expect(piece('strip').width).toBe(inches(3.75));
  expect(ticket.session.state.history.past).toEqual([]);
});

test('Escape puts back a name and a number; the next one is for the table', async () => {
  const { type, piece } = await open('strip');
  for (const [label, text, shown] of [
    ['Name of the piece', 'Band', 'Strip'],
    ['Tilt in degrees', '7', '0'],
  ] as const) {
    const input = type(label, text);
    const pressed = () => new KeyboardEvent('keydown', { key: 'Escape', bubbles: true, cancelable: true });
    const first = pressed();
    input.dispatchEvent(first);
    expect([input.value, first.defaultPrevented]).toEqual([shown, true]);
    leave(input);
    const second = pressed();
    input.dispatchEvent(second);
    expect(second.defaultPrevented).toBe(false);
  }
  expect(piece('strip')).toMatchObject({ name: 'Strip', tilt: 0 });
});

test('what a press beside the ticket takes is shown when the pointer goes up, so that a drag begins without waiting', async () => {
  const { ticket, box, piece, settled } = await open('strip');
  const name = () => box('Name of the piece').value;
  press(document.body);
  select('greeting')(ticket.session.state, ticket.session.dispatch, 2);
  await settled();
  expect(name()).toBe(piece('strip').name);
  window.dispatchEvent(new PointerEvent('pointerup'));
  await settled();
  expect(name()).toBe(piece('greeting').name);
  select('strip')(ticket.session.state, ticket.session.dispatch, 3);
  await settled();
  expect(name()).toBe(piece('strip').name);
});

test('pieces that the pointer runs over do not make the ticket render; gathering does', async () => {
  const { ticket, settled } = await open('strip');
  const gather = () => [...ticket.renderRoot.querySelectorAll('[aria-pressed]')].map((one) => one.ariaPressed);
  ticket.pointing.piece = 'greeting';
  expect(ticket.isUpdatePending).toBe(false);
  ticket.pointing.gathering = true;
  expect(ticket.isUpdatePending).toBe(true);
  await settled();
  expect(gather()).toContain('true');
});
