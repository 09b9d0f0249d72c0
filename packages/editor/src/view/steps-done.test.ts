import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { Session } from '../session/session.js';
import { Pointing } from './pointing.js';
import { StepsDoneElement } from './steps-done.js';

customElements.define('trimwell-steps-done', StepsDoneElement);

test('a press on a step goes back to it, or forward again', async () => {
  const session = new Session(sampleSketch(), { onmessage: null, postMessage: () => {}, terminate: () => {} });
  const list = new StepsDoneElement();
  Object.assign(list, { session, pointing: new Pointing() });
  document.body.append(list);
  await list.updateComplete;
  expect(list.renderRoot.textContent).toContain('Nothing was done yet');
  for (const title of ['A', 'B', 'C'])
    session.dispatch({ event: 'sketch.rename', edits: [{ do: 'describe', title }], at: 0 });
  const press = async (row: number) => {
    await list.updateComplete;
    list.renderRoot.querySelectorAll('button')[row]?.click();
    await list.updateComplete;
  };
  const current = () =>
    [...list.renderRoot.querySelectorAll('button')].findIndex((button) => button.hasAttribute('aria-current'));
  await press(2);
  expect(session.document.title).toBe('A');
  expect(current()).toBe(2);
  await press(3);
  expect(session.document).toEqual(sampleSketch());
  expect(current()).toBe(3);
  await press(0);
  expect(session.document.title).toBe('C');
  expect(current()).toBe(0);
  list.remove();
});
