import { DEFAULT_WORK, planCuts } from '@trimwell/geometry';
import { batchText } from '@trimwell/handout';
import {
  AS_MANY_AS_POSSIBLE,
  batchRecipe,
  batchYield,
  planBatch,
  readSketchText,
  type Sketch,
  writeBatchPlan,
} from '@trimwell/sketch';
import type { ReadText } from './input.js';
import { onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const PLAN_USAGE = `trimwell plan SKETCH.json|- [--cards N|most] [--work N] ${SAVINGS_USAGE} [--json]`;

/** The number of cards asked for, or null for the most that the sheets at hand give. */
function cardsOf(sketch: Sketch, words: Words): number | null {
  if (words.values.get('cards') === 'most') return null;
  const asked = wholeNumber(words, 'cards', 1, 500) ?? sketch.batch.cards;
  return asked === AS_MANY_AS_POSSIBLE ? null : asked;
}

/** `trimwell plan`: the cutting guide of a whole batch. @throws UsageError */
export async function plan(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json', ...SAVING_FLAGS], ['cards', 'work']);
  const file = onlyName(words, 'sketch');
  const work = wholeNumber(words, 'work', 1, Number.MAX_SAFE_INTEGER) ?? DEFAULT_WORK;
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const recipe = batchRecipe(sketch);
  const cards = cardsOf(sketch, words);
  const planOne = (job: Parameters<typeof planCuts>[0]) => planCuts(job, { work });
  const most = cards === null ? batchYield(recipe, { planOne }) : null;
  if (cards === null && most === null)
    throw new UsageError(
      'No paper of this sketch is limited: name the number of cards, or say how many sheets there are.',
    );
  const batch = most?.plan ?? planBatch(recipe, cards ?? 1, planOne);
  const out = words.flags.has('json') ? `${JSON.stringify(writeBatchPlan(batch, most))}\n` : batchText(sketch, batch);
  return printed(out, batch.complete ? MADE : UNMADE);
}
