import { checkPlan } from '@trimwell/geometry';
import { batchRecipe, batchYield, planBatch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { stripSketch } from '../../../../tests/kit/strip-sketch.js';
import { PlanDesk } from './plan-desk.js';
import { type Pace, type PlanAnswer, RULER_CARDS } from './plan-messages.js';

const recipe = batchRecipe(sampleSketch());

function answers(desk: PlanDesk, asked: typeof recipe, pace: Pace): readonly PlanAnswer[] {
  const heard: PlanAnswer[] = [];
  for (const _slice of desk.answer({ revision: 7, recipe: asked, pace }, (answer) => heard.push(answer)));
  return heard;
}

const limited = {
  ...recipe,
  papers: recipe.papers.map((paper) => (paper.id === 'moss' ? { ...paper, sheets: 2 } : paper)),
};

test('a quick question has one answer: a valid plan of all papers', () => {
  const heard = answers(new PlanDesk(), recipe, 'quick');
  expect(heard.map(({ kind, revision }) => [kind, revision])).toEqual([['plan', 7]]);
  const [first] = heard;
  if (first?.kind !== 'plan') throw new Error('the first answer is a plan');
  expect(first.done).toBe(true);
  for (const { job, plan } of first.batch.papers) expect(checkPlan(job, plan)).toEqual([]);
});

test('a full question ends with the very plan that the command line gives, then the limit, then the curve', () => {
  const heard = answers(new PlanDesk(), recipe, 'full');
  const plans = heard.flatMap((answer) => (answer.kind === 'plan' ? [answer] : []));
  expect(plans.map(({ done }) => done)).toEqual([...plans.slice(1).map(() => false), true]);
  expect(plans.at(-1)?.batch).toEqual(planBatch(recipe, 6));
  const sheets = plans.map(({ batch }) => batch.sheets);
  expect(sheets).toEqual([...sheets].sort((a, b) => b - a));
  expect(heard.slice(-2).map(({ kind }) => kind)).toEqual(['limit', 'curve']);
  const curve = heard.at(-1);
  const bands = curve?.kind === 'curve' ? curve.curve : [];
  expect(bands).toHaveLength(RULER_CARDS);
  expect(bands).toEqual([...bands].sort((a, b) => a - b));
});

test('as many as possible is found, whatever was asked before', () => {
  const desk = new PlanDesk();
  for (const cards of [6, 'as many as possible', 2, 'as many as possible'] as const) {
    const [first] = answers(desk, { ...limited, cards }, 'quick');
    expect(first?.kind === 'plan' && first.batch.cards).toBe(cards === 'as many as possible' ? 12 : cards);
  }
  const limit = answers(desk, limited, 'full').find(({ kind }) => kind === 'limit');
  expect(limit).toMatchObject({ limit: { cards: 12, proven: true, runsOut: ['moss'] } });
});

test('where not even one card can be made, the plan of one says what is missing', () => {
  const none = {
    ...recipe,
    cards: 'as many as possible' as const,
    papers: recipe.papers.map((paper) => ({ ...paper, sheets: 0 })),
  };
  const [first] = answers(new PlanDesk(), none, 'quick');
  expect(first?.kind === 'plan' && [first.batch.cards, first.batch.complete]).toEqual([1, false]);
});

test('at rest a full question ends with what one more sheet gives, as the yield tells it, and with the near misses', () => {
  const sketch = stripSketch('2 1/8 in', { moss: 2 }, { batch: { cards: 'as many as possible' } });
  const heard: PlanAnswer[] = [];
  const asked = batchRecipe(sketch);
  const question = { revision: 7, recipe: asked, pace: 'full', sketch } as const;
  for (const _slice of new PlanDesk().answer(question, (answer) => heard.push(answer)));
  expect(heard.slice(-4).map(({ kind }) => kind)).toEqual(['limit', 'curve', 'one more', 'near misses']);
  const oneMore = heard.flatMap((answer) => (answer.kind === 'one more' ? answer.oneMore : []));
  // Five strips from a sheet (by hand): two sheets give ten cards, three fifteen.
  expect(oneMore).toEqual([{ paper: 'moss', cards: 15, proven: true }]);
  expect(oneMore).toEqual(batchYield(asked, { oneMore: true })?.oneMore);
  const last = heard.at(-1);
  expect(last?.kind === 'near misses' && last.found).toMatchObject({
    cards: 10,
    misses: [{ piece: 'strip', adds: 2 }],
  });
});

test('near misses are not looked for when no sketch comes with the question, nor at the quick pace', () => {
  expect(answers(new PlanDesk(), recipe, 'full').map(({ kind }) => kind)).not.toContain('near misses');
  const heard: PlanAnswer[] = [];
  const question = { revision: 7, recipe, pace: 'quick', sketch: sampleSketch() } as const;
  for (const _slice of new PlanDesk().answer(question, (answer) => heard.push(answer)));
  expect(heard.map(({ kind }) => kind)).toEqual(['plan']);
});
