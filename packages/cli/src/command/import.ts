import { type PieceListWish, readPieceList, writeSketchText } from '@trimwell/sketch';
import type { ReadText, WriteText } from './input.js';
import { oneOf, onlyName, sortWords } from './options.js';
import { badInput, MADE, type Outcome } from './outcome.js';

export const IMPORT_USAGE =
  'trimwell import PIECES.csv|- [--card "W x H"] [--fold left|top|none] [--unit in|mm] [--title T] [--out FILE]';

/**
 * `trimwell import`: begins a sketch from a piece list as CSV. Prints the sketch, or where it went; how the list was read
 * stands on standard error. @throws UsageError
 */
export async function importPieces(
  args: readonly string[],
  readText: ReadText,
  writeText: WriteText,
): Promise<Outcome> {
  const words = sortWords(args, [], ['card', 'fold', 'unit', 'title', 'out']);
  const file = onlyName(words, 'piece list');
  const [card, title, out] = ['card', 'title', 'out'].map((name) => words.values.get(name));
  const fold = oneOf(words, 'fold', ['left', 'top', 'none'] as const);
  const unit = oneOf(words, 'unit', ['in', 'mm'] as const);
  const wish: PieceListWish = {
    ...(card === undefined ? {} : { card }),
    ...(title === undefined ? {} : { title }),
    ...(fold ? { fold } : {}),
    ...(unit ? { unit } : {}),
  };
  const reading = readPieceList(await readText(file), wish);
  if (!reading.ok) return badInput(reading.problems, file);
  const text = writeSketchText(reading.sketch);
  if (out !== undefined) await writeText(out, text);
  const error = reading.told.map((sentence) => `${file}: ${sentence}\n`).join('');
  return { code: MADE, out: out === undefined ? text : `${out}\n`, error };
}
