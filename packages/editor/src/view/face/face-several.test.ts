import { inches } from '@trimwell/geometry';
import { afterEach, expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { selectThese } from '../../state/commands.js';
import { Pointing } from '../pointing.js';
import { FaceElement } from './face.js';

customElements.define('test-face', FaceElement);

async function open() {
  const face = new FaceElement();
  face.session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  face.pointing = new Pointing();
  document.body.append(face);
  await face.updateComplete;
  const root = face.shadowRoot;
  if (!root) throw new Error('no shadow root');
  const option = (id: string): SVGGElement => {
    const found = root.querySelector<SVGGElement>(`[role="option"][data-piece="${id}"]`);
    if (!found) throw new Error(`no piece ${id}`);
    return found;
  };
  const key = async (target: Element, init: KeyboardEventInit) => {
    target.dispatchEvent(new KeyboardEvent('keydown', { bubbles: true, composed: true, cancelable: true, ...init }));
    await face.updateComplete;
    await Promise.resolve();
    await face.updateComplete;
  };
  const press = async (target: Element, shiftKey = false, upToo = true) => {
    const init = { bubbles: true, composed: true, button: 0, shiftKey };
    target.dispatchEvent(new PointerEvent('pointerdown', init));
    if (upToo) target.dispatchEvent(new PointerEvent('pointerup', init));
    await face.updateComplete;
  };
  const clip = (type: string, target: Element, data: Map<string, string>) => {
    const event = new Event(type, { bubbles: true, cancelable: true, composed: true });
    const clipboardData = {
      setData: (kind: string, text: string) => data.set(kind, text),
      getData: (kind: string) => data.get(kind) ?? '',
    };
    Object.assign(event, { clipboardData });
    target.dispatchEvent(event);
    return event.defaultPrevented;
  };
  const said = () => root.querySelector('[role="status"]')?.textContent;
  const selection = () => face.session.state.selection;
  const piece = (id: string) => face.session.state.sketch.pieces.find((one) => one.id === id);
  return { face, root, option, key, press, clip, said, selection, piece };
}

afterEach(() => document.body.replaceChildren());

test('Shift takes one more and puts it back; a plain press of one of several takes it alone when it is let go', async () => {
  const { option, press, selection, said, root } = await open();
  await press(option('strip'));
  await press(option('greeting'), true);
  expect(selection()).toEqual(['strip', 'greeting']);
  expect(said()).toBe('Greeting selected, 2 pieces in all');
  expect(root.querySelectorAll('.frames .selected')).toHaveLength(2);
  expect(root.querySelector('.handles')?.getAttribute('display')).toBe('none');
  await press(option('strip'), true);
  expect(selection()).toEqual(['greeting']);
  await press(option('strip'), true);
  await press(option('greeting'), false, false);
  expect(selection()).toEqual(['greeting', 'strip']);
  window.dispatchEvent(new PointerEvent('pointerup'));
  expect(selection()).toEqual(['greeting']);
});

test('while more are being selected every press takes one more', async () => {
  const { face, option, press, selection } = await open();
  face.pointing.gathering = true;
  await press(option('strip'));
  await press(option('greeting'));
  expect(selection()).toEqual(['strip', 'greeting']);
});

test('arrow keys move all that is taken, and locked pieces say why they stay', async () => {
  const { option, key, piece, said, root } = await open();
  option('strip').focus();
  await key(option('strip'), { key: 'Enter' });
  await key(option('strip'), { key: 'a', ctrlKey: true });
  await key(option('strip'), { key: 'ArrowDown' });
  expect([piece('panel')?.y, piece('strip')?.y]).toEqual([inches(1 / 4 + 1 / 16), inches(3 + 1 / 16)]);
  await key(option('strip'), { key: 'Escape' });
  await key(option('strip'), { key: 'Enter' });
  await key(option('strip'), { key: 'l' });
  expect(said()).toBe('Strip: locked in place');
  expect(option('strip').getAttribute('aria-label')).toContain(', locked');
  expect(root.querySelectorAll('.frames .pin')).toHaveLength(4);
  const before = piece('strip');
  for (const init of [{ key: 'ArrowLeft' }, { key: 'Delete' }, { key: ']' }, { key: 'PageUp' }]) {
    await key(option('strip'), init);
    expect(root.querySelector('.refused')?.textContent).toBe(
      'Strip is locked and stays. Unlock with L, or on the ticket.',
    );
  }
  expect(piece('strip')).toBe(before);
});

test('a hidden piece is off the face, and shown again by a key', async () => {
  const { option, key, root } = await open();
  option('strip').focus();
  await key(option('strip'), { key: 'Enter' });
  await key(option('strip'), { key: 'h' });
  expect(root.querySelector('[data-piece="strip"]')).toBeNull();
  await key(option('panel'), { key: 's' });
  expect(option('strip').getAttribute('aria-label')).toContain('Strip');
});

test('pieces go to the clipboard as text and come back; other text is refused in words', async () => {
  const { face, option, clip, said, selection, root } = await open();
  const data = new Map<string, string>();
  expect(clip('copy', option('strip'), data)).toBe(false);
  expect(said()).toBe('Nothing is selected that could be copied');
  face.take('strip');
  expect(clip('copy', option('strip'), data)).toBe(true);
  expect(data.get('text/plain')).toContain('"trimwellCopy": 1');
  clip('paste', option('strip'), data);
  expect(selection()).toEqual(['strip-1']);
  expect(said()).toContain('Strip 2');
  clip('cut', option('strip'), data);
  expect(face.session.state.sketch.pieces.some(({ id }) => id === 'strip-1')).toBe(false);
  const steps = face.session.state.history.past.length;
  clip('paste', option('strip'), new Map([['text/plain', 'with love']]));
  await face.updateComplete;
  expect(root.querySelector('.refused')?.textContent).toBe(
    'Nothing was pasted. What was copied is no pieces of a card.',
  );
  expect(face.session.state.history.past).toHaveLength(steps);
});

test('pasted into a sketch of the other unit, what is off the ruler is told of', async () => {
  const { face, option, clip, said } = await open();
  const data = new Map<string, string>();
  face.take('strip');
  clip('copy', option('strip'), data);
  clip('paste', option('strip'), data);
  expect(said()).not.toContain('off the ruler');
  face.session.dispatch({ event: 'sketch.unit', edits: [{ do: 'unit', unit: 'mm' }], at: 1 });
  clip('paste', option('strip'), data);
  expect(said()).toMatch(/added; its size is off the ruler, between its marks of 1 millimetre$/);
  face.run(selectThese(['strip', 'greeting']));
  clip('copy', option('strip'), data);
  clip('paste', option('strip'), data);
  expect(said()).toContain('their sizes are off the ruler');
});

test('a piece that is cut beside the card is told of on it', async () => {
  const { face, said } = await open();
  const piece = face.session.state.sketch.pieces.find(({ id }) => id === 'strip');
  if (!piece) throw new Error('the sample has a strip');
  face.session.dispatch({
    event: 'piece.add',
    edits: [{ do: 'add-piece', piece: { ...piece, id: 'new', name: 'New strip' } }],
    selection: ['new'],
    at: 0,
  });
  expect(said()).toContain('New strip');
});
