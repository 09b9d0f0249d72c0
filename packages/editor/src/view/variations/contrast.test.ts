import { afterEach, beforeAll, expect, test } from 'vitest';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import { ContrastElement } from './contrast.js';

beforeAll(() => customElements.define('trimwell-contrast', ContrastElement));
afterEach(() => document.body.replaceChildren());

async function open(selection: readonly string[], sketch = sampleSketch()) {
  const session = new Session(sketch, { onmessage: null, postMessage: () => {}, terminate: () => {} });
  session.dispatch({ event: 'x', edits: [], selection, at: 0 });
  const element = new ContrastElement();
  Object.assign(element, { session, pointing: new Pointing() });
  document.body.append(element);
  await element.updateComplete;
  const root = element.shadowRoot as ShadowRoot;
  const settled = async () => {
    await element.updateComplete;
    await element.updateComplete;
  };
  const press = async (name: string) => {
    const button = [...root.querySelectorAll('button')].find(
      (each) => (each.getAttribute('aria-label') ?? each.textContent ?? '').trim() === name,
    );
    if (!button) throw new Error(`no button ${name}`);
    button.click();
    await settled();
  };
  const words = () => (root.querySelector('dl')?.textContent ?? '').replace(/\s+/g, ' ').trim();
  const told = () => root.querySelector('[role="status"]')?.textContent;
  const turn = () => root.querySelector<HTMLButtonElement>('[role="switch"]');
  const tick = async (...names: string[]) => {
    for (const label of root.querySelectorAll('label'))
      if (names.includes((label.textContent ?? '').trim())) label.querySelector('input')?.click();
    await settled();
  };
  const contrast = () => session.document.batch.contrast;
  return { session, root, press, words, told, turn, tick, contrast, settled };
}

test('nothing selected, nothing shown', async () => {
  const { root } = await open([]);
  expect(root.querySelector('dl')).toBeNull();
});

test('two pieces are kept apart by a switch, and may share again', async () => {
  const { press, turn, contrast, told } = await open(['panel', 'strip']);
  expect(turn()?.getAttribute('aria-checked')).toBe('true');
  await press('Never the same paper on one card');
  expect([turn()?.getAttribute('aria-checked'), contrast()]).toEqual(['false', []]);
  expect(told()).toBe('Panel and Strip may share a paper.');
  await press('Never the same paper on one card');
  expect(contrast()).toEqual([['panel', 'strip']]);
  expect(told()).toBe('Panel and Strip never share a paper on one card.');
});

test('the switch says why it cannot be turned', async () => {
  const { turn, root } = await open(['greeting', 'liner']);
  expect(turn()?.disabled).toBe(true);
  expect(root.querySelector(`#${turn()?.getAttribute('aria-describedby')}`)?.textContent).toBe(
    'Each of them has one paper on all cards. Cut one of them from several papers first.',
  );
  const [strip] = sampleSketch().pieces.slice(2);
  if (!strip) throw new Error('the sample has three pieces');
  const edits = [{ do: 'add-piece', piece: { ...strip, id: 'strip-1', name: 'Upper strip' } } as const];
  const sketch = { ...sampleSketch(), variations: [{ id: 'v', name: 'V', note: '', edits }] };
  const brought = await open([], sketch);
  brought.session.dispatch({ event: 'x', edits: [], on: ['v'], selection: ['strip-1', 'panel'], at: 0 });
  await brought.settled();
  expect(brought.root.querySelector('#why')?.textContent).toBe(
    'Only a variation has Upper strip; what contrasts is said of the card itself.',
  );
});

test('of one piece it says among which papers it takes turns and what it is kept apart from; another is added', async () => {
  const { words, root, press, contrast, told, settled } = await open(['strip']);
  expect(words()).toContain('among Fern sprig and Seed dots');
  expect(words()).toContain('Never the same paper on one card as Panel let them share');
  const list = root.querySelector('select') as HTMLSelectElement;
  list.value = 'greeting';
  list.dispatchEvent(new Event('change'));
  await settled();
  expect(contrast()).toEqual([
    ['panel', 'strip'],
    ['strip', 'greeting'],
  ]);
  expect(told()).toBe('Strip and Greeting never share a paper on one card.');
  await press('Let Strip and Panel share a paper');
  expect(contrast()).toEqual([['strip', 'greeting']]);
  expect(root.activeElement).toBe(root.querySelector('select'));
});

test('it says in words what cannot be kept', async () => {
  const { press, root, tick } = await open(['panel', 'strip', 'liner']);
  await tick('Fern sprig', 'Seed dots');
  await press('Cut them from these');
  await press('Never the same paper on one card');
  const reasons = [...root.querySelectorAll('.reason')].map((each) => each.textContent);
  expect(reasons.length).toBeGreaterThan(0);
  for (const reason of reasons)
    expect(reason).toMatch(/should contrast, but share a paper on .*: there are too few papers\./);
});

test('papers are ticked and the pieces are cut from them in turn', async () => {
  const { press, tick, session, told, root } = await open(['greeting', 'liner']);
  const cut = () => [...root.querySelectorAll('button')].find((each) => each.textContent === 'Cut them from these');
  expect(cut()?.disabled).toBe(true);
  await tick('Moss card');
  expect(session.document.mixes).toHaveLength(1);
  await press('Cut them from these');
  expect(session.document.mixes[1]).toEqual({
    id: 'mix-1',
    name: 'Ivory card and Moss card',
    papers: ['ivory', 'moss'],
  });
  expect(session.document.pieces.filter(({ from }) => from === 'mix-1').map(({ id }) => id)).toEqual([
    'greeting',
    'liner',
  ]);
  expect(told()).toBe('Greeting and Liner take turns among Ivory card and Moss card.');
});
