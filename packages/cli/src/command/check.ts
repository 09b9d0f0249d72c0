import { checkText } from '@trimwell/handout/check';
import {
  AS_MANY_AS_POSSIBLE,
  type BatchPlan,
  batchRecipe,
  isLimited,
  planBatch,
  readSketchText,
  type Sketch,
} from '@trimwell/sketch';
import { assembly, letterLimits, safeFindings, writeAssembly } from '@trimwell/sketch/assembly';
import { batchOf } from './batch-of.js';
import type { ReadText } from './input.js';
import { oneOf, onlyName, sortWords, type Words } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const CHECK_USAGE = `trimwell check SKETCH.json|- [--post COUNTRY] [--cards N|most] [--work N] ${SAVINGS_USAGE} [--json]`;

/**
 * The plan that tells what cannot be cut: of the cards asked for, or of the most that there can be. Where that is none, and where no paper
 * limits them, of one card, so that a piece which no sheet gives is told; null where that lacks nothing, since then it says nothing.
 */
function plannedBatch(sketch: Sketch, words: Words): BatchPlan | null {
  const open = sketch.batch.cards === AS_MANY_AS_POSSIBLE && !words.values.has('cards');
  const recipe = batchRecipe(sketch);
  if (!open || isLimited(recipe)) {
    const asked = batchOf(sketch, words);
    if (asked.cards > 0) return asked;
  }
  const one = planBatch(recipe, 1);
  return one.papers.some(({ plan }) => plan.unmade.length > 0) ? one : null;
}

/**
 * `trimwell check`: whether the card can be cut, built, folded, slipped into its envelope and posted. Ends with 1 where something
 * stops the build. @throws UsageError
 */
export async function check(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json', ...SAVING_FLAGS], ['post', 'cards', 'work']);
  const file = onlyName(words, 'sketch');
  const countries = letterLimits().countries.map(({ code }) => code);
  const post = oneOf(words, 'post', countries);
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const batch = plannedBatch(sketch, words);
  const found = assembly(sketch, { ...(post === undefined ? {} : { post }), ...(batch ? { batch } : {}) });
  const pieces = safeFindings(found);
  const out = words.flags.has('json')
    ? `${JSON.stringify(writeAssembly(found, pieces))}\n`
    : checkText(sketch, found, pieces);
  const stops = [...found.findings, ...pieces].some(({ severity }) => severity === 'stops the build');
  return printed(out, stops ? UNMADE : MADE);
}
