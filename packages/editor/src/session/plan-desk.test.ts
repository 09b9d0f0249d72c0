import { checkPlan } from '@trimwell/geometry';
import { batchRecipe, planBatch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
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
