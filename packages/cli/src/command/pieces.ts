import { writePieceListCsv, writePieceListJson } from '@trimwell/handout';
import { AS_MANY_AS_POSSIBLE, readSketchText } from '@trimwell/sketch';
import type { ReadText } from './input.js';
import { onlyName, sortWords, wholeNumber } from './options.js';
import { badInput, type Outcome, printed } from './outcome.js';

export const PIECES_USAGE = 'trimwell pieces SKETCH.json|- [--cards N] [--json]';

/** `trimwell pieces`: the piece list of a batch (or of one card with `--cards 1`) as CSV, or JSON. @throws UsageError */
export async function pieces(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json'], ['cards']);
  const file = onlyName(words, 'sketch');
  const asked = wholeNumber(words, 'cards', 1, 500);
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const { sketch } = reading;
  const cards = asked ?? (sketch.batch.cards === AS_MANY_AS_POSSIBLE ? 1 : sketch.batch.cards);
  return printed(
    words.flags.has('json') ? writePieceListJson(sketch, { cards }) : writePieceListCsv(sketch, { cards }),
  );
}
