import { mixText } from '@trimwell/handout';
import { AS_MANY_AS_POSSIBLE, batchRecipe, batchYield, mixPlan, readSketchText, writeMixPlan } from '@trimwell/sketch';
import type { ReadText } from './input.js';
import { onlyName, sortWords, UsageError, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';

export const MIX_USAGE = 'trimwell mix SKETCH.json|- [--cards N] [--json]';

/**
 * `trimwell mix`: which paper of a mix each card gets in each role. Ends with 1 when pieces that should contrast share a
 * paper. A sketch that asks for as many cards as possible is dealt for its yield. @throws UsageError
 */
export async function mix(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json'], ['cards']);
  const file = onlyName(words, 'sketch');
  const asked = wholeNumber(words, 'cards', 1, 500);
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const { sketch } = reading;
  const recipe = batchRecipe(sketch);
  const given = asked ?? sketch.batch.cards;
  const cards = given === AS_MANY_AS_POSSIBLE ? batchYield(recipe)?.cards : given;
  if (cards === undefined) {
    throw new UsageError('No paper of this sketch is limited: name the number of cards.');
  }
  const plan = mixPlan(recipe, cards);
  const out = words.flags.has('json') ? `${JSON.stringify(writeMixPlan(plan))}\n` : mixText(sketch, plan);
  return printed(out, plan.clashes.length === 0 ? MADE : UNMADE);
}
