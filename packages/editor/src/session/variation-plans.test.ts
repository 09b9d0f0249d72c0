import { type BatchRecipe, batchRecipe, batchYield, planBatch } from '@trimwell/sketch';
import { expect, test } from 'vitest';
import { sampleSketch } from '../../../../tests/kit/sample-sketch.js';
import { PlanDesk } from './plan-desk.js';
import type { PlanAnswer, PlanPort, PlanQuestion } from './plan-messages.js';
import { VariationPlans } from './variation-plans.js';

const recipe = batchRecipe(sampleSketch());
const cards = (count: BatchRecipe['cards']): BatchRecipe => ({ ...recipe, cards: count });

const BATCH = { papers: [], complete: true, lowerBound: 0, fewestSheets: true, mixed: false, work: 0 };

function start() {
  const asked: PlanQuestion[] = [];
  const ports: (PlanPort & { ended: boolean })[] = [];
  let told = 0;
  const plans = new VariationPlans(
    () => {
      const port = {
        ended: false,
        onmessage: null,
        postMessage: (question: PlanQuestion) => void asked.push(question),
        terminate() {
          this.ended = true;
        },
      };
      ports.push(port);
      return port;
    },
    () => {
      told += 1;
    },
  );
  const say = (answer: Record<string, unknown>, revision = asked.at(-1)?.revision) =>
    ports[0]?.onmessage?.({ data: { revision, ...answer } as unknown as PlanAnswer });
  const answer = (sheets: number, most: number | null, done = true) => {
    const { revision, recipe: question } = asked.at(-1) as PlanQuestion;
    say({ kind: 'plan', batch: { ...BATCH, cards: question.cards, sheets }, done }, revision);
    say({ kind: 'limit', limit: most === null ? null : { cards: most, proven: true, runsOut: [] } }, revision);
  };
  const open = () =>
    asked.filter(({ recipe: question }) => question.parts.length > 0).map(({ recipe: question }) => question.cards);
  return { plans, ports, asked, say, answer, open, told: () => told };
}

test('no worker is started before something is wanted and the table rests', () => {
  const { plans, ports } = start();
  plans.rest(true);
  plans.rest(false);
  plans.want([cards(6)]);
  expect(ports).toHaveLength(0);
  plans.rest(true);
  expect(ports).toHaveLength(1);
});

test('ways are planned one after the other, most wanted first, each only once', () => {
  const { plans, answer, open, told } = start();
  plans.rest(true);
  plans.want([cards(6), cards(7), cards(6)]);
  expect(open()).toEqual([6]);
  answer(4, 20);
  expect(open()).toEqual([6, 7]);
  answer(5, null);
  expect(open()).toEqual([6, 7]);
  expect(plans.figures(cards(6))).toEqual({ cards: 6, sheets: 4, complete: true, most: 20 });
  expect(plans.figures(cards(7))).toEqual({ cards: 7, sheets: 5, complete: true, most: null });
  expect(plans.figures(cards(8))).toBeNull();
  expect(told()).toBe(2);
  plans.want([cards(7)]);
  expect(open()).toEqual([6, 7]);
});

test('the worker is given nothing to do when the table plans, and begins again when it rests', () => {
  const { plans, asked, answer, say, open } = start();
  plans.rest(true);
  plans.want([cards(6)]);
  const first = asked.at(-1)?.revision;
  plans.rest(false);
  expect(asked.at(-1)?.recipe.parts).toEqual([]);
  say({ kind: 'limit', limit: null }, first);
  expect(plans.figures(cards(6))).toBeNull();
  plans.rest(true);
  expect(open()).toEqual([6, 6]);
  answer(4, null);
  expect(plans.figures(cards(6))?.sheets).toBe(4);
  expect(asked.at(-1)?.recipe.parts).toEqual([]);
});

test('what is not wanted any more is dropped', () => {
  const { plans, asked, open } = start();
  plans.rest(true);
  plans.want([cards(6)]);
  plans.want([cards(7)]);
  expect(open()).toEqual([6, 7]);
  plans.want([]);
  expect(asked.at(-1)?.recipe.parts).toEqual([]);
});

test('a way that cannot be planned says so, and the next one is planned', () => {
  const { plans, say, open } = start();
  plans.rest(true);
  plans.want([cards(6), cards(7)]);
  say({ kind: 'failed', message: 'no' });
  expect(plans.figures(cards(6))).toMatchObject({ complete: false });
  expect(open()).toEqual([6, 7]);
});

test('its worker ends with it, and nothing is planned afterwards', () => {
  const { plans, ports, asked } = start();
  plans.rest(true);
  plans.want([cards(6)]);
  plans.dispose();
  expect(ports[0]).toMatchObject({ ended: true, onmessage: null });
  const before = asked.length;
  plans.rest(false);
  plans.rest(true);
  expect(asked).toHaveLength(before);
});

test('with the real planner the figures are those of the plan on the table', async () => {
  const limited = {
    ...cards(2),
    parts: recipe.parts.slice(-1),
    contrast: [],
    papers: recipe.papers.map((paper) => ({ ...paper, sheets: 3 })),
  };
  const desk = new PlanDesk();
  let newest = 0;
  const port: PlanPort = {
    onmessage: null,
    postMessage: (question) => {
      newest = question.revision;
      setTimeout(() => {
        const work = desk.answer(question, (data) => port.onmessage?.({ data }));
        while (question.revision === newest && !work.next().done);
      });
    },
    terminate: () => {},
  };
  const figures = await new Promise<unknown>((resolve) => {
    const plans: VariationPlans = new VariationPlans(
      () => port,
      () => resolve(plans.figures(limited)),
    );
    plans.rest(true);
    plans.want([limited]);
  });
  expect(figures).toEqual({
    cards: 2,
    sheets: planBatch(limited, 2).sheets,
    complete: true,
    most: batchYield(limited)?.cards,
  });
});
