import { type Length, readLength, type Unit } from '@trimwell/geometry';
import { AS_MANY_AS_POSSIBLE, batchRecipe, batchYield, readSketchText, type Sketch } from '@trimwell/sketch';
import type { ReadText, WriteBytes, WriteText } from './input.js';
import { oneOf, onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, UNMADE } from './outcome.js';

export const CUT_FILES_USAGE =
  'trimwell cut-files SKETCH.json|- [--format svg|dxf] [--by sheet|piece] [--gap LEN] [--margin LEN] [--cards N] ' +
  '[--out FOLDER|FILE.zip] [--unit in|mm]';

const VALUES = ['format', 'by', 'gap', 'margin', 'cards', 'out', 'unit'] as const;

/** A length of 0 to `most`, or undefined when the option was not given; a bare number is in `unit`. @throws UsageError */
function lengthOf(words: Words, name: string, unit: Unit, most: Length): Length | undefined {
  const text = words.values.get(name);
  if (text === undefined) return undefined;
  const reading = readLength(text, unit);
  if (!reading.ok || reading.length < 0 || reading.length > most)
    throw new UsageError(
      `--${name} is ${JSON.stringify(text)}; allowed: a length from 0 to 4 in, such as 1/8 in or 3 mm.`,
    );
  return reading.length;
}

/** The cards asked for, those of the sketch, or the most that straight cuts give from the sheets at hand. @throws UsageError */
function cardsOf(sketch: Sketch, words: Words): number {
  const asked = wholeNumber(words, 'cards', 1, 500);
  if (asked !== undefined) return asked;
  if (sketch.batch.cards !== AS_MANY_AS_POSSIBLE) return sketch.batch.cards;
  const most = batchYield({ ...batchRecipe(sketch), centres: [] });
  if (!most) throw new UsageError('No paper of this sketch is limited: name the number of cards.');
  return Math.max(1, most.plan.cards);
}

/** `trimwell cut-files`: outlines for a cutting machine, into a folder or a zip. Prints what was written. @throws UsageError */
export async function cutFilesOf(
  args: readonly string[],
  readText: ReadText,
  writeText: WriteText,
  writeBytes: WriteBytes,
): Promise<Outcome> {
  const words = sortWords(args, [], VALUES);
  const file = onlyName(words, 'sketch');
  const { CUT_FILE_FORMATS, CUT_FILE_GROUPS, cutFiles, WIDEST_GAP, zipCutFiles } = await import(
    '@trimwell/handout/cut-files'
  );
  const format = oneOf(words, 'format', CUT_FILE_FORMATS) ?? 'svg';
  const each = oneOf(words, 'by', CUT_FILE_GROUPS) ?? 'sheet';
  const unit = oneOf(words, 'unit', ['in', 'mm'] as const);
  const out = words.values.get('out') ?? (file === '-' ? 'cut-files' : `${file.replace(/\.json$/i, '')}-cut-files`);
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const { sketch } = reading;
  const measure = unit ?? sketch.unit;
  const gap = lengthOf(words, 'gap', measure, WIDEST_GAP);
  const margin = lengthOf(words, 'margin', measure, WIDEST_GAP);
  const made = cutFiles(sketch, {
    ...{ format, each, unit: measure, cards: cardsOf(sketch, words) },
    ...(gap === undefined ? {} : { gap }),
    ...(margin === undefined ? {} : { margin }),
  });
  const texts = [...made.files, made.readMe];
  const zipped = /\.zip$/i.test(out);
  if (zipped) await writeBytes(out, zipCutFiles(made));
  else for (const { name, text } of texts) await writeText(`${out}/${name}`, text);
  const missing = made.papers.flatMap(({ name, unmade }) =>
    unmade.map(({ name: piece, quantity, reason }) => `${name}: ${quantity} of ${piece} not cut: ${reason}.\n`),
  );
  return {
    code: made.complete ? MADE : UNMADE,
    out: zipped ? `${out}\n` : texts.map(({ name }) => `${out}/${name}\n`).join(''),
    error: missing.join(''),
  };
}
