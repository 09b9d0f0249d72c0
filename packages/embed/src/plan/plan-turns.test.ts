import type { Sketch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { PLAN_PARTS } from './plan-batch.js';
import type { PlanAnswer } from './plan-messages.js';
import { PlanTurns } from './plan-turns.js';

/** The sample with all pieces from papers of their own. */
function plainJobSketch(): Sketch {
  const sketch = sampleSketch();
  return {
    ...sketch,
    pieces: sketch.pieces.map((piece) => (piece.from === 'prints' ? { ...piece, from: 'dots' } : piece)),
  };
}

function turns(parts = PLAN_PARTS): { readonly answers: PlanAnswer[]; readonly desk: PlanTurns } {
  const answers: PlanAnswer[] = [];
  const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
  return { answers, desk: new PlanTurns((answer) => void answers.push(answer), pause, parts) };
}

test('a first plan comes at once and the last one is done; a sketch without mixes and centres loads neither part', async () => {
  const loaded: string[] = [];
  const parts = {
    centres: () => {
      loaded.push('centres');
      return PLAN_PARTS.centres();
    },
    mixes: () => {
      loaded.push('mixes');
      return PLAN_PARTS.mixes();
    },
    thorough: () => {
      loaded.push('thorough');
      return PLAN_PARTS.thorough();
    },
  };
  const { answers, desk } = turns(parts);
  await desk.hear({ asker: 1, question: 1, sketch: plainJobSketch() });
  expect(loaded).toEqual(['thorough']);
  expect(answers[0]).toMatchObject({ asker: 1, question: 1, kind: 'plan', done: false });
  expect(answers.at(-1)).toMatchObject({ kind: 'plan', done: true, batch: { complete: true } });
  expect(answers.filter((answer) => answer.kind === 'plan' && answer.done)).toHaveLength(1);
});

test('of one asker only the newest question is answered to its end', async () => {
  const { answers, desk } = turns();
  const first = desk.hear({ asker: 1, question: 1, sketch: sampleSketch() });
  void desk.hear({ asker: 1, question: 2, sketch: plainJobSketch() });
  void desk.hear({ asker: 2, question: 1, sketch: plainJobSketch() });
  await first;
  const done = answers.flatMap((answer) =>
    answer.kind === 'plan' && answer.done ? [`${answer.asker} ${answer.question}`] : [],
  );
  expect(done.sort()).toEqual(['1 2', '2 1']);
});

test('a sketch that cannot be planned is answered in words, and the next one is planned', async () => {
  const { answers, desk } = turns({ ...PLAN_PARTS, mixes: () => Promise.reject(new Error('that part is missing')) });
  await desk.hear({ asker: 1, question: 1, sketch: sampleSketch() });
  expect(answers).toEqual([{ asker: 1, question: 1, kind: 'failed', message: 'that part is missing' }]);
  await desk.hear({ asker: 1, question: 2, sketch: plainJobSketch() });
  expect(answers.at(-1)).toMatchObject({ question: 2, kind: 'plan', done: true });
});
