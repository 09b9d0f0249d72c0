import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { PlanAnswer, PlanLeave, PlanPort, PlanQuestion } from './plan-messages.js';
import { Planner } from './planner.js';

function fakePort(): PlanPort & { readonly posted: (PlanQuestion | PlanLeave)[] } {
  const posted: (PlanQuestion | PlanLeave)[] = [];
  return { posted, onmessage: null, onerror: null, postMessage: (message) => void posted.push(message) };
}

const failed = (asker: number, question: number): PlanAnswer => ({ asker, question, kind: 'failed', message: 'no' });

test('all askers share one port, and each hears only the answer to its newest question', () => {
  let opened = 0;
  const port = fakePort();
  const planner = new Planner(() => {
    opened += 1;
    return port;
  });
  const heard: string[] = [];
  const one = planner.asker(({ question }) => heard.push(`one ${question}`));
  const two = planner.asker(({ question }) => heard.push(`two ${question}`));
  one.ask(sampleSketch());
  one.ask(sampleSketch());
  two.ask(sampleSketch());
  expect(opened).toBe(1);
  port.onmessage?.({ data: failed(1, 1) });
  port.onmessage?.({ data: failed(1, 2) });
  port.onmessage?.({ data: failed(2, 1) });
  expect(heard).toEqual(['one 2', 'two 1']);
  one.leave();
  port.onmessage?.({ data: failed(1, 2) });
  expect(heard).toHaveLength(2);
  expect(port.posted.at(-1)).toEqual({ asker: 1, leave: true });
});

test('a page that allows no worker is told so, and a worker that fell over is started anew', async () => {
  const port = fakePort();
  let allowed = false;
  const planner = new Planner(() => {
    if (!allowed) throw new Error('not here');
    return port;
  });
  const heard: string[] = [];
  const one = planner.asker((answer) => heard.push(answer.kind === 'failed' ? answer.message : 'plan'));
  one.ask(sampleSketch());
  await Promise.resolve();
  expect(heard).toEqual(['not here']);
  allowed = true;
  one.ask(sampleSketch());
  port.onerror?.('it fell over');
  expect(heard).toEqual(['not here', 'it fell over']);
  one.ask(sampleSketch());
  expect(port.posted).toHaveLength(2);
});
