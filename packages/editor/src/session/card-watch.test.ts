import { inches, ticks } from '@trimwell/geometry';
import { batchRecipe, planBatch } from '@trimwell/sketch';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { AssemblyAnswer, AssemblyPort, AssemblyQuestion } from './assembly-messages.js';
import { assemblySight } from './assembly-sight.js';
import { CardWatch } from './card-watch.js';
import type { PlanAnswer, PlanPort, PlanQuestion } from './plan-messages.js';
import { Session } from './session.js';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A planner that answers when it is told to. */
function planner() {
  const asked: PlanQuestion[] = [];
  const port: PlanPort = { onmessage: null, postMessage: (question) => asked.push(question), terminate: () => {} };
  const answer = (data: PlanAnswer): void => port.onmessage?.({ data });
  return {
    port,
    plan: () => {
      const { revision, recipe } = asked.at(-1) as PlanQuestion;
      answer({ revision, kind: 'plan', batch: planBatch(recipe, 2), done: true });
    },
  };
}

/** What looks at the card, answering when it is told to. */
function looker() {
  const asked: AssemblyQuestion[] = [];
  const state = { ended: 0, refuses: false };
  const port: AssemblyPort = {
    onmessage: null,
    postMessage: (question) => asked.push(question),
    terminate: () => {
      state.ended += 1;
    },
  };
  const say = (data: AssemblyAnswer): void => port.onmessage?.({ data });
  const answer = (): void => {
    const question = asked.at(-1) as AssemblyQuestion;
    say({ number: question.number, kind: 'made', sight: assemblySight(question) });
  };
  const open = (): AssemblyPort => {
    if (state.refuses) throw new Error('this page starts no worker');
    return port;
  };
  return { asked, state, say, answer, open };
}

function laid() {
  const { port, plan } = planner();
  const session = new Session(sampleSketch(), port);
  const look = looker();
  const card = new CardWatch(session, look.open);
  const told = vi.fn();
  const stop = card.subscribe(told);
  return { session, plan, ...look, card, told, stop };
}

const move = (gesture?: string) => ({
  event: 'piece.place',
  edits: [{ do: 'place' as const, piece: 'strip', x: inches(1), y: inches(4) }],
  ...(gesture ? { gesture } : {}),
  at: 1,
});

test('the planner goes first; then the card is looked at with its plan', () => {
  const { asked, plan, card, told, answer, session } = laid();
  vi.runAllTimers();
  expect(asked).toEqual([]);
  plan();
  vi.runAllTimers();
  expect(asked).toHaveLength(1);
  expect(asked[0]?.batch?.sheets).toBe(planBatch(batchRecipe(session.state.sketch), 2).sheets);
  answer();
  expect(told).toHaveBeenCalled();
  expect(card.view?.sketch).toBe(session.state.sketch);
  expect(card.view?.sight.steps).toHaveLength(6);
});

test('nothing is asked while a piece is dragged, and once when it rests', () => {
  const { asked, plan, session, answer } = laid();
  plan();
  vi.runAllTimers();
  answer();
  session.dispatch(move('drag'));
  session.dispatch(move('drag'));
  vi.runAllTimers();
  expect(asked).toHaveLength(1);
  session.settle('drag');
  vi.runAllTimers();
  expect(asked).toHaveLength(2);
  expect(asked[1]?.sketch.pieces.find(({ id }) => id === 'strip')?.y).toBe(inches(4));
});

test('what is asked while something is looked at waits, and only the newest of it is asked', () => {
  const { asked, plan, session, answer, card } = laid();
  plan();
  vi.runAllTimers();
  for (const y of [2, 3, 4]) {
    session.dispatch({ event: 'x', edits: [{ do: 'place', piece: 'strip', x: ticks(0), y: inches(y) }], at: y });
    vi.runAllTimers();
  }
  expect(asked).toHaveLength(1);
  answer();
  expect(asked).toHaveLength(2);
  // The answer was of the sketch before.
  expect(card.view?.sketch).not.toBe(session.state.sketch);
  answer();
  expect(card.view?.sketch).toBe(session.state.sketch);
});

test('another country is asked for at once, and the last watcher ends the worker', () => {
  const { asked, plan, answer, card, stop, state } = laid();
  plan();
  vi.runAllTimers();
  answer();
  expect(card.view?.sight.post.length).toBeGreaterThan(3);
  card.post = 'GB';
  answer();
  expect(asked.at(-1)?.post).toBe('GB');
  expect(card.view?.sight.post.map(({ country }) => country.code)).toEqual(['GB']);
  stop();
  expect(state.ended).toBe(1);
});

test('what goes wrong is told in words, and tried anew at the next change', () => {
  const { plan, card, state, session, say, asked, answer } = laid();
  state.refuses = true;
  plan();
  vi.runAllTimers();
  expect(card.failure).toBe('this page starts no worker');
  state.refuses = false;
  session.dispatch(move());
  vi.runAllTimers();
  say({ number: 1, kind: 'failed', message: 'it fell over' });
  expect(card.failure).toBe('it fell over');
  session.undo();
  vi.runAllTimers();
  expect(asked).toHaveLength(2);
  answer();
  expect(card.failure).toBeNull();
});
