import { afterEach, beforeAll, expect, test, vi } from 'vitest';
import { AssemblyWorker, planningPort } from '../../../../../tests/kit/assembly-worker.js';
import { PATIENCE } from '../../../../../tests/kit/patience.js';
import { sampleSketch } from '../../../../../tests/kit/sample-sketch.js';
import type { PlanPort } from '../../session/plan-messages.js';
import { Session } from '../../session/session.js';
import { Pointing } from '../pointing.js';
import { StackElement } from './stack-panel.js';

const silent: PlanPort = { onmessage: null, postMessage: () => {}, terminate: () => {} };

beforeAll(() => customElements.define('trimwell-stack', StackElement));
afterEach(() => document.body.replaceChildren());

async function lay(
  port = silent,
): Promise<{ element: StackElement; session: Session; pointing: Pointing; root: ShadowRoot }> {
  const element = document.createElement('trimwell-stack') as StackElement;
  const session = new Session(sampleSketch(), port);
  const pointing = new Pointing();
  Object.assign(element, { session, pointing });
  document.body.append(element);
  await element.updateComplete;
  return { element, session, pointing, root: element.renderRoot as ShadowRoot };
}

const order = (session: Session): string => session.state.sketch.pieces.map(({ id }) => id).join(' ');

test('the rows lie topmost first, the base last, with the foam in figures', async () => {
  const { root } = await lay();
  const rows = [...root.querySelectorAll('[role="row"]')].map((row) => row.textContent?.replace(/\s+/g, ' ').trim());
  expect(rows).toEqual(
    ['EGreetingon foam, 1⁄16 in', 'DStrip', 'CPanel', 'BPanel mat', 'ACard base'].map((words) =>
      expect.stringContaining(words.slice(0, 6)),
    ),
  );
  expect(rows[0]).toContain('1⁄16');
  // Nobody knows yet how thick it is: the line is kept free.
  expect(root.querySelector('.thick')?.textContent).toBe('\u00a0');
});

test('how thick it is comes when the card has been looked at', async () => {
  vi.stubGlobal('Worker', AssemblyWorker);
  const { element, root } = await lay(planningPort());
  await vi.waitUntil(() => root.querySelector('.thick')?.textContent !== '\u00a0', PATIENCE);
  await element.updateComplete;
  expect(root.querySelector('.thick')?.textContent).toMatch(
    /^About 0\.\d\d\d in at the thickest, at Greeting; 0\.\d\d\d in with the card closed\.$/,
  );
  vi.unstubAllGlobals();
});

test('one stop of the Tab key; keys go along, take, and change the gluing order, which is said', async () => {
  const { element, session, root } = await lay();
  expect(root.querySelectorAll('[role="grid"] [tabindex="0"]')).toHaveLength(1);
  const press = async (key: string, more: KeyboardEventInit = {}): Promise<void> => {
    root
      .querySelector('[role="grid"] [tabindex="0"]')
      ?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more }));
    await element.updateComplete;
  };
  await press('ArrowDown');
  await press(' ');
  expect(session.state.selection).toEqual(['strip']);
  await press('PageDown');
  expect(order(session)).toBe('panel-mat strip panel greeting liner');
  expect(root.querySelector('[role="status"]')?.textContent).toBe(
    'Strip: right over Panel mat, 2 of 4 from the card up',
  );
  await press('PageUp', { shiftKey: true });
  expect(order(session)).toBe('panel-mat panel greeting strip liner');
  await press('ArrowUp', { shiftKey: true });
  await press('End');
  await press('ArrowUp');
  await press('Enter', { ctrlKey: true });
  expect(session.state.selection).toEqual(['strip', 'panel-mat']);
});

test('a piece is locked and hidden by its own marks, and a locked one says why it stays', async () => {
  const { element, session, root } = await lay();
  const mark = (label: string): HTMLElement => {
    const found = root.querySelector<HTMLElement>(`[aria-label="${label}"]`);
    if (!found) throw new Error(`no ${label}`);
    return found;
  };
  mark('Lock Strip').click();
  mark('Hide Panel').click();
  await element.updateComplete;
  expect(session.state.sketch.pieces.filter((piece) => piece.locked).map(({ id }) => id)).toEqual(['strip']);
  expect(session.state.sketch.pieces.filter((piece) => piece.hidden).map(({ id }) => id)).toEqual(['panel']);
  expect(mark('Lock Strip').getAttribute('aria-pressed')).toBe('true');
  root.querySelector<HTMLElement>('.pick[data-row="strip"]')?.click();
  await element.updateComplete;
  expect(root.querySelector('.order button')?.getAttribute('aria-disabled')).toBe('true');
  root
    .querySelector('.pick[data-row="strip"]')
    ?.dispatchEvent(new KeyboardEvent('keydown', { key: 'PageUp', bubbles: true }));
  await element.updateComplete;
  expect(root.querySelector('.refused')?.textContent).toBe('Strip is locked in its place.');
});

test('pointing lights a row and its slip up, both ways', async () => {
  const { element, pointing, root } = await lay();
  pointing.piece = 'strip';
  await element.updateComplete;
  expect(root.querySelector('[role="row"].lit .pick')?.getAttribute('data-row')).toBe('strip');
  expect(root.querySelector('.picture g.lit')?.getAttribute('data-piece')).toBe('strip');
  root.querySelector('.pick[data-row="panel"]')?.dispatchEvent(new FocusEvent('focus'));
  expect(pointing.piece).toBe('panel');
});
