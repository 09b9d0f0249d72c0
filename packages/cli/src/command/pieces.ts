import { LIST_ARRANGEMENTS, LIST_FORMATS, type PieceList, writePieceList } from '@trimwell/handout';
import { AS_MANY_AS_POSSIBLE, readSketchText, type Sketch } from '@trimwell/sketch';
import { batchOf } from './batch-of.js';
import type { ReadText } from './input.js';
import { oneOf, onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const PIECES_USAGE =
  'trimwell pieces SKETCH.json|- [--cards N|most] [--format csv|json|markdown|text] ' +
  `[--arrange card|batch|paper|setting] [--work N] ${SAVINGS_USAGE} [--json]`;

/** The arrangement asked for; lists by paper and by setting need the plan of the batch. @throws UsageError */
function listOf(sketch: Sketch, words: Words): PieceList {
  const arrange = oneOf(words, 'arrange', LIST_ARRANGEMENTS) ?? 'batch';
  const asked = words.values.get('cards') === 'most' ? null : wholeNumber(words, 'cards', 1, 500);
  if (arrange === 'card') return { arrange };
  const given = asked ?? sketch.batch.cards;
  if (arrange === 'batch' && asked !== null && given !== AS_MANY_AS_POSSIBLE) return { arrange, cards: given };
  const plan = batchOf(sketch, words);
  const { cards } = plan;
  if (arrange === 'batch') return { arrange, cards };
  return arrange === 'paper' ? { arrange, cards, plan } : { arrange, plan };
}

/**
 * `trimwell pieces`: the piece list of one card, of a batch, by paper, or by setting of the trimmer. Ends with 1 when the
 * plan behind it cannot make everything. @throws UsageError
 */
export async function pieces(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json', ...SAVING_FLAGS], ['cards', 'format', 'arrange', 'work']);
  const file = onlyName(words, 'sketch');
  const format = oneOf(words, 'format', LIST_FORMATS);
  const json = words.flags.has('json');
  if (json && format !== undefined && format !== 'json')
    throw new UsageError(`--json and --format ${format} ask for two formats; name one.`);
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const list = listOf(sketch, words);
  const complete = !('plan' in list) || list.plan === undefined || list.plan.complete;
  return printed(writePieceList(sketch, list, format ?? (json ? 'json' : 'csv')).text, complete ? MADE : UNMADE);
}
