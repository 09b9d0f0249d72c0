import { stepsText, writeSteps } from '@trimwell/handout';
import { readSketchText } from '@trimwell/sketch';
import { batchOf } from './batch-of.js';
import type { ReadText } from './input.js';
import { onlyName, sortWords, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const STEPS_USAGE = `trimwell steps SKETCH.json|- [--cards N|most] [--work N] [--stack N] ${SAVINGS_USAGE} [--json]`;

/** No blade goes through more sheets than this (common practice, no source). */
const MOST_AT_ONCE = 20;

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
