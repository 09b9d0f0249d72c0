import { sheetGuides } from '@trimwell/handout';
import { AS_MANY_AS_POSSIBLE, batchRecipe, batchYield, planBatch, readSketchText } from '@trimwell/sketch';
import type { ReadText, WriteText } from './input.js';
import { onlyName, sortWords, UsageError, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const GUIDES_USAGE = `trimwell guides SKETCH.json|- --into FOLDER [--cards N] ${SAVINGS_USAGE}`;

/** `trimwell guides`: the cutting guide of each sheet layout as an SVG file at true size. @throws UsageError */
export async function guides(args: readonly string[], readText: ReadText, writeText: WriteText): Promise<Outcome> {
  const words = sortWords(args, SAVING_FLAGS, ['cards', 'into']);
  const file = onlyName(words, 'sketch');
  const folder = words.values.get('into');
  if (folder === undefined) throw new UsageError('--into names the folder for the guides.');
  const asked = wholeNumber(words, 'cards', 1, 500);
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const recipe = batchRecipe(sketch);
  const cards = asked ?? sketch.batch.cards;
  const batch = cards === AS_MANY_AS_POSSIBLE ? batchYield(recipe)?.plan : planBatch(recipe, cards);
  if (!batch) throw new UsageError('No paper of this sketch is limited: name the number of cards.');
  const files = sheetGuides(sketch, batch);
  for (const { name, text } of files) await writeText(`${folder}/${name}`, text);
  return printed(files.map(({ name }) => `${folder}/${name}\n`).join(''), batch.complete ? MADE : UNMADE);
}
