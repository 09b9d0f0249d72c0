import { DEFAULT_WORK, runToEnd } from '@trimwell/geometry';
import { yieldText } from '@trimwell/handout';
import {
  batchRecipe,
  batchYield,
  planForSheets,
  readSketchText,
  rememberPlans,
  writeYield,
  yieldCurve,
} from '@trimwell/sketch';
import type { ReadText } from './input.js';
import { onlyName, sortWords, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const YIELD_USAGE = `trimwell yield SKETCH.json|- [--up-to N] [--work N] ${SAVINGS_USAGE} [--json]`;

/**
 * `trimwell yield`: the most cards that the sheets at hand give, what one more sheet would give, and the sheets for each
 * number of cards. Ends with 1 when not a single card can be made. @throws UsageError
 */
export async function yieldOf(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json', ...SAVING_FLAGS], ['up-to', 'work']);
  const file = onlyName(words, 'sketch');
  const upTo = wholeNumber(words, 'up-to', 1, 500) ?? 36;
  const work = wholeNumber(words, 'work', 1, Number.MAX_SAFE_INTEGER) ?? DEFAULT_WORK;
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const recipe = batchRecipe(sketch);
  const planOne = rememberPlans(planForSheets(work));
  const most = batchYield(recipe, { planOne, oneMore: true });
  const curve = runToEnd(yieldCurve(recipe, { upTo, planOne }));
  const out = words.flags.has('json') ? `${JSON.stringify(writeYield(most, curve))}\n` : yieldText(sketch, most, curve);
  return printed(out, curve.length > 0 && most?.cards !== 0 ? MADE : UNMADE);
}
