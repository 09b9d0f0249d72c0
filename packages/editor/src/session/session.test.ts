import { inches } from '@trimwell/geometry';
import { expect, test } from 'vitest';
import { taggedSketch } from '../../../../tests/kit/centre-sketch.js';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import type { PlanAnswer, PlanPort, PlanQuestion } from './plan-messages.js';
import { Session, type SessionChange } from './session.js';

const EMPTY = {
  cards: 6,
  papers: [],
  complete: true,
  sheets: 0,
  lowerBound: 0,
  fewestSheets: true,
  mixed: false,
  work: 0,
};

function start() {
  const asked: PlanQuestion[] = [];
  const port: PlanPort = { onmessage: null, postMessage: (question) => asked.push(question), terminate: () => {} };
  const session = new Session(sampleSketch(), port);
  const changes: SessionChange[] = [];
  session.subscribe((change) => changes.push(change));
  const answer = (message: PlanAnswer) => port.onmessage?.({ data: message });
  const plan = (done: boolean) => answer({ revision: asked.length, kind: 'plan', batch: EMPTY, done });
  const drag = (x: number, gesture = 'g') =>
    session.dispatch({
      event: 'piece.move',
      edits: [{ do: 'place', piece: 'panel', x: inches(x), y: inches(1) }],
      gesture,
      at: 0,
    });
  const pull = (width: number, gesture = 'g') =>
    session.dispatch({
      event: 'piece.resize',
      edits: [{ do: 'resize', piece: 'panel', x: inches(0), y: inches(0), width: inches(width), height: inches(2) }],
      gesture,
      at: 0,
    });
  return { session, asked, changes, answer, plan, drag, pull };
}

test('that another sketch was opened is told, even the same one again', () => {
  const { session, changes, drag } = start();
  drag(1);
  expect([changes.at(-1)?.opened, session.openings]).toEqual([false, 0]);
  session.open(session.document);
  expect([changes.at(-1)?.opened, session.openings]).toEqual([true, 1]);
  expect(session.gesture).toBeNull();
});

test('opening a sketch asks for its plan; moving a piece asks for none', () => {
  const { asked, plan, drag, session } = start();
  expect(asked).toHaveLength(1);
  plan(true);
  drag(1);
  session.settle('g');
  expect(asked).toHaveLength(1);
  expect(session.plan).toMatchObject({ stale: false, searching: false });
});

test('resizing asks quickly while dragging and fully when it settles; the last plan stays, marked as stale', () => {
  const { asked, plan, pull, session } = start();
  plan(true);
  pull(2);
  expect(asked.at(-1)?.pace).toBe('quick');
  expect(session.plan).toMatchObject({ stale: true, batch: EMPTY });
  plan(true);
  expect(session.plan.stale).toBe(false);
  session.settle('g');
  expect(asked.at(-1)?.pace).toBe('full');
  plan(false);
  expect(session.plan).toMatchObject({ stale: false, searching: true });
});

test('cancelling puts the very sketch back and asks for its plan again', () => {
  const { asked, plan, pull, session } = start();
  const before = session.state.sketch;
  plan(true);
  pull(2);
  plan(true);
  session.cancel('g');
  expect(session.state.sketch).toBe(before);
  expect(session.state.history.past).toHaveLength(0);
  expect(asked.at(-1)).toMatchObject({ pace: 'full' });
});

test('watchers hear what changed, and whether it is settled', () => {
  const { changes, drag, session, plan } = start();
  plan(true);
  changes.length = 0;
  drag(2);
  session.settle('g');
  session.undo();
  session.dispatch({ event: 'piece.select', edits: [], selection: ['panel'], at: 0 });
  expect(changes.map(({ sketch, selection, settled, ended }) => [sketch, selection, settled, ended])).toEqual([
    [true, false, false, false],
    [false, false, true, true],
    [true, false, true, false],
    [false, true, true, false],
  ]);
});

test('a press that changed nothing is not told when it ends', () => {
  const { session, changes } = start();
  session.settle('never-moved');
  session.cancel('never-moved');
  expect(changes).toEqual([]);
});

test('a failed plan says why and takes the old one away; limits and curves come as they are found', () => {
  const { answer, session } = start();
  answer({ revision: 1, kind: 'limit', limit: { cards: 9, proven: true, runsOut: ['moss'] } });
  answer({ revision: 1, kind: 'curve', curve: [1, 2, 2] });
  expect(session.plan).toMatchObject({ limit: { cards: 9 }, curve: [1, 2, 2] });
  answer({ revision: 1, kind: 'failed', message: 'too large' });
  expect(session.plan).toMatchObject({ batch: null, failure: 'too large', searching: false });
});

test('opening the very sketch that lies there asks for its plan again', () => {
  const { session, asked, plan } = start();
  plan(true);
  session.open(session.state.sketch);
  expect(asked).toHaveLength(2);
  plan(true);
  expect(session.plan).toMatchObject({ batch: EMPTY, stale: false });
});

test('another sketch starts anew, and the end of a session is silent', () => {
  const { session, changes, asked, drag } = start();
  drag(2);
  session.open(sampleSketch());
  expect(session.state.history.past).toHaveLength(0);
  expect(session.plan).toMatchObject({ batch: null, limit: null, curve: [], searching: true });
  session.dispose();
  const heard = changes.length;
  session.undo();
  drag(1);
  expect(changes).toHaveLength(heard);
  expect(asked.length).toBeGreaterThan(0);
});

test('nothing from before is shown beside what contradicts it: neither bands nor what one more sheet gave', () => {
  const { session, asked, answer, plan, pull } = start();
  plan(true);
  const told = { cards: 9, proven: true, runsOut: ['moss'] };
  answer({ revision: 1, kind: 'limit', limit: told });
  answer({ revision: 1, kind: 'curve', curve: [1, 1, 1, 1, 1, 0] });
  answer({ revision: 1, kind: 'one more', oneMore: [{ paper: 'moss', cards: 12, proven: true }] });
  pull(2);
  plan(true);
  session.settle('g');
  answer({ revision: asked.length, kind: 'plan', batch: EMPTY, done: true });
  answer({ revision: asked.length, kind: 'limit', limit: { ...told } });
  expect([session.plan.curve.length, session.plan.oneMore.length]).toEqual([6, 1]);
  pull(3, 'h');
  answer({ revision: asked.length, kind: 'plan', batch: { ...EMPTY, sheets: 2 }, done: true });
  expect(session.plan.curve).toHaveLength(6);
  session.settle('h');
  answer({ revision: asked.length, kind: 'plan', batch: { ...EMPTY, sheets: 2 }, done: true });
  expect(session.plan.curve).toEqual([]);
  answer({ revision: asked.length, kind: 'limit', limit: { ...told, cards: 10 } });
  expect(session.plan.oneMore).toEqual([]);
});

test('where hidden centres are counted, a drag of what covers one asks for another plan while it goes on', () => {
  const asked: PlanQuestion[] = [];
  const port: PlanPort = { onmessage: null, postMessage: (question) => asked.push(question), terminate: () => {} };
  const session = new Session(taggedSketch(), port);
  port.onmessage?.({ data: { revision: 1, kind: 'plan', batch: EMPTY, done: true } });
  const edit = { do: 'place', piece: 'panel', x: inches(2), y: inches(2) } as const;
  session.dispatch({ event: 'piece.move', edits: [edit], gesture: 'g', at: 0 });
  expect(asked.map(({ pace }) => pace)).toEqual(['full', 'quick']);
});
