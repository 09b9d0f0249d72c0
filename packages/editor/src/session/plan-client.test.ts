import { inches } from '@trimwell/geometry';
import { batchRecipe } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { PlanClient } from './plan-client.js';
import type { PlanAnswer, PlanPort, PlanQuestion } from './plan-messages.js';

/** A port whose other end is this test. */
class TestPort implements PlanPort {
  onmessage: PlanPort['onmessage'] = null;
  readonly asked: PlanQuestion[] = [];
  ended = false;
  postMessage(question: PlanQuestion): void {
    this.asked.push(question);
  }
  terminate(): void {
    this.ended = true;
  }
  answer(answer: Partial<PlanAnswer> & { revision: number }): void {
    this.onmessage?.({ data: { kind: 'curve', curve: [], ...answer } as PlanAnswer });
  }
}

const recipe = batchRecipe(sampleSketch());
const batch = {
  cards: 1,
  papers: [],
  complete: true,
  sheets: 0,
  lowerBound: 0,
  fewestSheets: true,
  mixed: false,
  work: 0,
};

function start() {
  const port = new TestPort();
  const heard: (readonly [string, boolean])[] = [];
  const client = new PlanClient(port, (answer, newest) => heard.push([`${answer.kind} ${answer.revision}`, newest]));
  return { port, heard, client };
}

test('the same question is asked once, and not again at a lower pace', () => {
  const { port, client } = start();
  expect(client.ask(recipe, 'quick')).toBe(true);
  expect(client.ask({ ...recipe }, 'quick')).toBe(false);
  expect(client.ask(recipe, 'full')).toBe(true);
  expect(client.ask(recipe, 'quick')).toBe(false);
  expect(client.ask({ ...recipe, cards: 7 }, 'quick')).toBe(true);
  expect(port.asked).toHaveLength(1);
});

test('while the first plan is under way only the newest question waits, and its turn comes with the answer', () => {
  const { port, heard, client } = start();
  for (const cards of [1, 2, 3, 4]) client.ask({ ...recipe, cards }, 'quick');
  expect(port.asked.map((question) => question.recipe.cards)).toEqual([1]);
  port.answer({ revision: 1, kind: 'plan', batch, done: true });
  expect(port.asked.map((question) => question.recipe.cards)).toEqual([1, 4]);
  expect(heard).toEqual([['plan 1', false]]);
  port.answer({ revision: 2, kind: 'plan', batch, done: true });
  expect(heard.at(-1)).toEqual(['plan 2', true]);
});

test('answers to an earlier question are dropped', () => {
  const { port, heard, client } = start();
  client.ask({ ...recipe, cards: 1 }, 'full');
  port.answer({ revision: 1, kind: 'plan', batch, done: false });
  client.ask({ ...recipe, cards: 2 }, 'full');
  port.answer({ revision: 1, kind: 'curve', curve: [1] });
  expect(heard).toEqual([['plan 1', true]]);
});

test('a failure lets the next question through, and the end ends the worker', () => {
  const { port, client } = start();
  client.ask({ ...recipe, cards: 1 }, 'full');
  client.ask({ ...recipe, cards: 2 }, 'full');
  port.answer({ revision: 1, kind: 'failed', message: 'no' });
  expect(port.asked).toHaveLength(2);
  client.dispose();
  expect(port.ended).toBe(true);
  expect(port.onmessage).toBeNull();
});

test('a sketch goes along at the full pace only; moving a piece asks nothing, another mat does', () => {
  const { port, client } = start();
  const sketch = sampleSketch();
  const moved = { ...sketch, pieces: sketch.pieces.map((piece) => ({ ...piece, x: inches(1) })) };
  const freed = { ...sketch, pieces: sketch.pieces.map(({ mats: _mats, ...piece }) => piece) };
  expect(client.ask(recipe, 'quick', sketch)).toBe(true);
  port.answer({ revision: 1, kind: 'plan', batch, done: true });
  expect(client.ask(recipe, 'full', sketch)).toBe(true);
  port.answer({ revision: 2, kind: 'plan', batch, done: true });
  expect(port.asked.map((question) => question.sketch)).toEqual([undefined, sketch]);
  expect(client.ask(recipe, 'full', moved)).toBe(false);
  const { key } = client;
  expect(client.ask(recipe, 'full', freed)).toBe(true);
  expect(client.key).not.toBe(key);
});
