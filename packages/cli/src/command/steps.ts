import { DEFAULT_WORK, planCuts } from '@trimwell/geometry';
import { stepsText, writeSteps } from '@trimwell/handout';
import {
  AS_MANY_AS_POSSIBLE,
  type BatchPlan,
  batchRecipe,
  batchYield,
  planBatch,
  readSketchText,
  type Sketch,
} from '@trimwell/sketch';
import type { ReadText } from './input.js';
import { onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const STEPS_USAGE = `trimwell steps SKETCH.json|- [--cards N|most] [--work N] [--stack N] ${SAVINGS_USAGE} [--json]`;

/** No blade goes through more sheets than this (common practice, no source). */
const MOST_AT_ONCE = 20;

/** The plan for the cards asked for, or for the most that the sheets at hand give. @throws UsageError */
function batchOf(sketch: Sketch, words: Words): BatchPlan {
  const work = wholeNumber(words, 'work', 1, Number.MAX_SAFE_INTEGER) ?? DEFAULT_WORK;
  const recipe = batchRecipe(sketch);
  const planOne = (job: Parameters<typeof planCuts>[0]) => planCuts(job, { work });
  const most = words.values.get('cards') === 'most';
  const cards = most ? AS_MANY_AS_POSSIBLE : (wholeNumber(words, 'cards', 1, 500) ?? sketch.batch.cards);
  if (cards !== AS_MANY_AS_POSSIBLE) return planBatch(recipe, cards, planOne);
  const found = batchYield(recipe, { planOne });
  if (!found)
    throw new UsageError(
      'No paper of this sketch is limited: name the number of cards, or say how many sheets there are.',
    );
  return found.plan;
}

/** `trimwell steps`: the cuts of a whole batch in the order in which a person makes them. @throws UsageError */
export async function steps(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json', ...SAVING_FLAGS], ['cards', 'work', 'stack']);
  const file = onlyName(words, 'sketch');
  const stack = wholeNumber(words, 'stack', 1, MOST_AT_ONCE) ?? 2;
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const batch = batchOf(sketch, words);
  const out = words.flags.has('json')
    ? `${JSON.stringify(writeSteps(sketch, batch, { stack }))}\n`
    : stepsText(sketch, batch, { stack });
  return printed(out, batch.complete ? MADE : UNMADE);
}
