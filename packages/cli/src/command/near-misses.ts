import { DEFAULT_WORK, type Length, readLength, runToEnd, type Unit } from '@trimwell/geometry';
import { nearMissText } from '@trimwell/handout';
import {
  AS_MANY_AS_POSSIBLE,
  nearMisses,
  nearMissTolerance,
  planForSheets,
  readSketchText,
  writeNearMisses,
} from '@trimwell/sketch';
import type { ReadText } from './input.js';
import { onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { badInput, type Outcome, printed } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const NEAR_MISSES_USAGE = `trimwell near-misses SKETCH.json|- [--cards N|most] [--tolerance LENGTH] [--work N] ${SAVINGS_USAGE} [--json]`;

function toleranceOf(words: Words, unit: Unit): Length {
  const text = words.values.get('tolerance');
  if (text === undefined) return nearMissTolerance(unit);
  const reading = readLength(text, unit);
  if (!reading.ok || reading.length <= 0)
    throw new UsageError(
      `--tolerance is ${JSON.stringify(text)}; allowed: ${reading.ok ? 'a length above 0' : reading.allowed}.`,
    );
  return reading.length;
}

/** `trimwell near-misses`: small changes of size that save a sheet or add a card. @throws UsageError */
export async function nearMissesOf(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json', ...SAVING_FLAGS], ['cards', 'tolerance', 'work']);
  const file = onlyName(words, 'sketch');
  const most = words.values.get('cards') === 'most';
  const asked = most ? AS_MANY_AS_POSSIBLE : wholeNumber(words, 'cards', 1, 500);
  const work = wholeNumber(words, 'work', 1, Number.MAX_SAFE_INTEGER) ?? DEFAULT_WORK;
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const found = runToEnd(
    nearMisses(sketch, {
      cards: asked ?? sketch.batch.cards,
      tolerance: toleranceOf(words, sketch.unit),
      planOne: planForSheets(work),
    }),
  );
  if (found.cards === null)
    throw new UsageError(
      'No paper of this sketch is limited: name the number of cards, or say how many sheets there are.',
    );
  return printed(
    words.flags.has('json') ? `${JSON.stringify(writeNearMisses(found, sketch.unit))}\n` : nearMissText(sketch, found),
  );
}
