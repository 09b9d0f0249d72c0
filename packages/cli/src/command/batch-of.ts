import { DEFAULT_WORK, planCuts } from '@trimwell/geometry';
import { AS_MANY_AS_POSSIBLE, type BatchPlan, batchRecipe, batchYield, planBatch, type Sketch } from '@trimwell/sketch';
import { UsageError, type Words, wholeNumber } from './options.js';

/** The plan for the cards asked for, or for the most that the sheets at hand give. @throws UsageError */
export function batchOf(sketch: Sketch, words: Words): BatchPlan {
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
