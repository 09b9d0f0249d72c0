import { inches } from '@trimwell/geometry';
import { afterEach, expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
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
  const options = () => [...root.querySelectorAll<SVGGElement>('[role="option"]')];
  const settled = async () => {
    await face.updateComplete;
    await Promise.resolve();
    await face.updateComplete;
  };
  const key = async (target: Element, init: KeyboardEventInit) => {
    target.dispatchEvent(
      new KeyboardEvent('keydown', { bubbles: true, composed: true, cancelable: true, code: init.key ?? '', ...init }),
    );
    await settled();
  };
  const up = async (target: Element, init: KeyboardEventInit) => {
    target.dispatchEvent(new KeyboardEvent('keyup', { bubbles: true, composed: true, code: init.key ?? '', ...init }));
    await settled();
  };
  const said = () => root.querySelector('[role="status"]')?.textContent;
  const piece = (id: string) => face.session.state.sketch.pieces.find((one) => one.id === id);
  return { face, root, option, options, key, up, said, piece, settled };
}

afterEach(() => document.body.replaceChildren());

test('every piece of the face is an option with a name that says all of it, one of them a stop of the Tab key', async () => {
  const { options, option, root } = await open();
  expect(options().map((group) => group.dataset['piece'])).toEqual(['panel-mat', 'panel', 'strip', 'greeting']);
  expect(option('strip').getAttribute('aria-label')).toBe(
    'Strip, 3 3/4 by 1 inches, 1/4 from left, 3 from top, cut from Prints',
  );
  expect(option('greeting').getAttribute('aria-label')).toContain('tilted 6 degrees to the left, cut from Ivory card');
  expect(options().map((group) => group.getAttribute('tabindex'))).toEqual(['0', '-1', '-1', '-1']);
  expect(root.querySelector('[role="listbox"]')?.getAttribute('aria-label')).toBe('Fern sampler, card face');
  expect(root.querySelector('.overlay')?.getAttribute('aria-hidden')).toBe('true');
  const unnamed = [...(root.querySelector('[role="listbox"]')?.children ?? [])].filter(
    (child) => child.getAttribute('role') !== 'option',
  );
  expect(unnamed.every((child) => child.getAttribute('aria-hidden') === 'true')).toBe(true);
});

test('moving a piece draws it elsewhere without a transform, and keeps every element', async () => {
  const { face, option, options, settled, root } = await open();
  const before = options();
  const others = () => options().filter((group) => group !== option('strip'));
  const paths = others().map((group) => group.innerHTML);
  const outline = () => option('strip').querySelector('[data-role="outline"]')?.getAttribute('d');
  const drawn = outline();
  const list = root.querySelector('[role="listbox"]');
  if (!list) throw new Error('no list');
  const moved: MutationRecord[] = [];
  new MutationObserver((records) => moved.push(...records)).observe(list, { childList: true, subtree: true });
  face.session.dispatch({
    event: 'piece.move',
    edits: [{ do: 'place', piece: 'strip', x: inches(1), y: inches(1) }],
    at: 0,
  });
  await settled();
  // Nothing was taken out, put in or moved: only attributes changed.
  expect(moved).toEqual([]);
  expect(options().every((group, index) => group === before[index])).toBe(true);
  expect(others().map((group) => group.innerHTML)).toEqual(paths);
  expect(outline()).toMatch(/^M254 254/);
  expect(outline()).not.toBe(drawn);
  const turned = options().filter((group) => group.hasAttribute('transform'));
  expect(turned.map((group) => group.dataset['piece'])).toEqual(
    face.session.state.sketch.pieces.filter(({ tilt }) => tilt !== 0).map(({ id }) => id),
  );
});

test('a new order moves elements, a removed piece goes, an added one comes, the other face is another list', async () => {
  const { face, option, options, settled } = await open();
  const strip = option('strip');
  face.session.dispatch({ event: 'order', edits: [{ do: 'order', piece: 'strip', to: 0 }], at: 0 });
  await settled();
  expect(options()[0]).toBe(strip);
  face.session.dispatch({ event: 'piece.remove', edits: [{ do: 'remove-piece', piece: 'panel' }], at: 0 });
  await settled();
  expect(options().map((group) => group.dataset['piece'])).toEqual(['strip', 'panel-mat', 'greeting']);
  face.session.undo();
  await settled();
  expect(options()).toHaveLength(4);
  face.session.dispatch({ event: 'card.turn', edits: [], face: 'inside', selection: [], at: 0 });
  await settled();
  expect(options().map((group) => group.dataset['piece'])).toEqual(['liner']);
});

test('with nothing taken the arrows go from piece to piece; Enter takes one; then they move it', async () => {
  const { face, option, key, up, said, piece, root } = await open();
  option('panel-mat').focus();
  await key(option('panel-mat'), { key: 'ArrowUp' });
  expect(root.activeElement).toBe(option('panel'));
  expect(face.pointing.piece).toBe('panel');
  await key(option('panel'), { key: 'ArrowUp' });
  await key(option('strip'), { key: 'Enter' });
  expect(option('strip').getAttribute('aria-selected')).toBe('true');
  expect(option('strip').getAttribute('tabindex')).toBe('0');
  expect(said()).toBe('Strip selected');
  await key(option('strip'), { key: 'ArrowRight' });
  await key(option('strip'), { key: 'ArrowRight', repeat: true });
  await up(option('strip'), { key: 'ArrowRight' });
  await key(option('strip'), { key: 'ArrowDown' });
  await up(option('strip'), { key: 'ArrowDown' });
  expect(piece('strip')).toMatchObject({ x: inches(3 / 8), y: inches(3 + 1 / 16) });
  expect(said()).toBe('Strip: 3/8 from left, 3 1/16 from top; lines up with Panel mat');
  expect(face.session.state.history.past).toHaveLength(2);
  await key(option('strip'), { key: 'z', ctrlKey: true });
  await key(option('strip'), { key: 'z', ctrlKey: true });
  expect(piece('strip')).toMatchObject({ x: inches(1 / 4), y: inches(3) });
  await key(option('strip'), { key: 'ArrowRight', ctrlKey: true });
  expect(piece('strip')?.width).toBe(inches(3.75 + 1 / 16));
  await key(option('strip'), { key: 'Escape' });
  expect(face.session.state.selection).toEqual([]);
});

test('the focus stays on a piece whose element moves, and goes to a piece that is made', async () => {
  const { option, key, root } = await open();
  option('strip').focus();
  await key(option('strip'), { key: 'Enter' });
  await key(option('strip'), { key: 'PageDown' });
  await key(option('strip'), { key: 'PageUp' });
  expect(root.activeElement).toBe(option('strip'));
  await key(option('strip'), { key: 'd', ctrlKey: true });
  expect(root.activeElement).toBe(option('strip-1'));
  await key(option('strip-1'), { key: 'Delete' });
  expect(root.activeElement).toBe(root.querySelector('[role="listbox"]'));
});

test('the selected piece has its frame, eight handles and a pin; a pointed one has a frame', async () => {
  const { face, root, settled } = await open();
  // The last group of handles is of size and tilt.
  const handles = () => [...root.querySelectorAll('.handles')].at(-1);
  expect(handles()?.getAttribute('display')).toBe('none');
  face.session.dispatch({ event: 'piece.select', edits: [], selection: ['strip'], at: 0 });
  face.pointing.piece = 'greeting';
  await settled();
  expect(handles()?.hasAttribute('display')).toBe(false);
  expect(handles()?.querySelectorAll('.handle')).toHaveLength(9);
  expect(
    [...root.querySelectorAll('.handle .target')].every((target) => Number(target.getAttribute('width')) >= 24),
  ).toBe(true);
  expect(root.querySelectorAll('.frames .selected, .frames .pointed')).toHaveLength(2);
  expect([...root.querySelectorAll('.overlay .figure')].map((text) => text.textContent)).toEqual([
    '1⁄4',
    '3 3⁄4',
    '1⁄4',
    '3',
    '1',
    '1 1⁄2',
  ]);
});

test('an element that is taken out and put back watches its session again', async () => {
  const { face, options, settled } = await open();
  face.remove();
  face.session.dispatch({ event: 'piece.remove', edits: [{ do: 'remove-piece', piece: 'strip' }], at: 0 });
  await settled();
  document.body.append(face);
  await settled();
  expect(options()).toHaveLength(3);
});
