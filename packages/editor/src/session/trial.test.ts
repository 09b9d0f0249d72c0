import { inches } from '@trimwell/geometry';
import { nearMisses } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { undoEvent } from '../state/history.js';
import type { PlanAnswer, PlanPort, PlanQuestion } from './plan-messages.js';
import { Session } from './session.js';

const EMPTY = {
  cards: 12,
  papers: [],
  complete: true,
  sheets: 9,
  lowerBound: 9,
  fewestSheets: true,
  mixed: false,
  work: 0,
};

/** A session on which the one near miss of twelve strips is offered, see `stripSketch`. */
function offered() {
  const asked: PlanQuestion[] = [];
  const port: PlanPort = { onmessage: null, postMessage: (question) => asked.push(question), terminate: () => {} };
  const sketch = stripSketch('2 1/8 in');
  const session = new Session(sketch, port);
  const answer = (message: PlanAnswer) => port.onmessage?.({ data: message });
  const plan = () => answer({ revision: asked.length, kind: 'plan', batch: EMPTY, done: true });
  const slices = nearMisses(sketch);
  let slice = slices.next();
  while (!slice.done) slice = slices.next();
  const found = slice.value;
  plan();
  answer({ revision: 1, kind: 'near misses', found });
  const [miss] = found.misses;
  if (!miss) throw new Error('the strip is a near miss');
  const move = (y: number) =>
    session.dispatch({
      event: 'piece.move',
      edits: [{ do: 'place', piece: 'strip', x: inches(0), y: inches(y) }],
      at: 0,
    });
  const strip = () => session.state.sketch.pieces.find(({ id }) => id === 'strip');
  return { session, sketch, miss, found, plan, move, strip, asked };
}

test('what is tried on is one named step, put back as the very sketch from before', () => {
  const { session, sketch, miss, strip, plan } = offered();
  expect(session.plan.offer?.found.misses).toEqual([miss]);
  session.tryOn(miss, 1);
  expect(strip()?.height).toBe(inches(2));
  expect(undoEvent(session.state)).toBe('near-miss.try-on');
  expect(session.trial).toMatchObject({ miss, before: sketch });
  expect(session.plan.offer).toBeNull();
  plan();
  session.putBack();
  expect(session.state.sketch).toBe(sketch);
  expect(session.state.history.past).toHaveLength(0);
  expect(session.trial).toBeNull();
  // The slip is there again at once, before the planner has answered.
  expect(session.plan.offer?.found.misses).toEqual([miss]);
});

test('what is kept stays, and is undone as any other step', () => {
  const { session, sketch, miss, strip } = offered();
  session.tryOn(miss, 1);
  session.keep();
  expect(session.trial).toBeNull();
  expect(strip()?.height).toBe(inches(2));
  session.putBack();
  expect(strip()?.height).toBe(inches(2));
  session.undo();
  expect(session.state.sketch).toBe(sketch);
});

test('undo takes the trial away, and any further change keeps it', () => {
  const { session, miss, move } = offered();
  session.tryOn(miss, 1);
  session.undo();
  expect(session.trial).toBeNull();
  session.tryOn(miss, 2);
  move(3);
  expect(session.trial).toBeNull();
});

test('a piece that was moved since is tried on where it lies', () => {
  const { session, miss, move, strip, asked } = offered();
  move(3);
  expect(asked).toHaveLength(1);
  session.tryOn(miss, 1);
  expect(strip()).toMatchObject({ x: inches(0), y: inches(3 + 1 / 16), height: inches(2) });
});

test('only what is offered can be tried on', () => {
  const { session, miss, sketch } = offered();
  expect(() => session.tryOn({ ...miss }, 1)).toThrow(RangeError);
  expect(session.state.sketch).toBe(sketch);
});
