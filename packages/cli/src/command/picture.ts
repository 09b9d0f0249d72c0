import { fileStem } from '@trimwell/handout';
import {
  guideSheets,
  PICTURE_SIZES,
  PICTURE_SIZES_ALLOWED,
  PICTURE_SUBJECTS,
  type PictureSize,
  type PictureSubject,
  readPictureSize,
  writePicture,
} from '@trimwell/handout/picture';
import { AS_MANY_AS_POSSIBLE, readSketchText, type Sketch } from '@trimwell/sketch';
import { batchOf } from './batch-of.js';
import type { ReadText, WriteBytes, WriteText } from './input.js';
import { oneOf, onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, UNMADE } from './outcome.js';
import { paintPng } from './paint-png.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const PICTURE_USAGE =
  'trimwell picture SKETCH.json|- [--of card|inside|batch|guide] [--sheet N] [--cards N|most] [--size NAME|WxH] ' +
  `[--format png|svg] [--title T] [--work N] ${SAVINGS_USAGE} [--out FILE]`;

const VALUES = ['of', 'sheet', 'cards', 'size', 'format', 'title', 'work', 'out'] as const;

function sizeOf(words: Words): PictureSize {
  const asked = words.values.get('size');
  const size = asked === undefined ? PICTURE_SIZES.post : readPictureSize(asked);
  if (size) return size;
  throw new UsageError(`--size is ${JSON.stringify(asked)}; allowed: ${PICTURE_SIZES_ALLOWED}.`);
}

/** What is to be seen; a guide is planned first, and a batch of as many cards as there can be. @throws UsageError */
function subjectOf(sketch: Sketch, words: Words): PictureSubject {
  const of = oneOf(words, 'of', PICTURE_SUBJECTS) ?? 'card';
  if (of === 'card' || of === 'inside') return { of };
  const most = words.values.get('cards') === 'most';
  const cards = most ? AS_MANY_AS_POSSIBLE : (wholeNumber(words, 'cards', 1, 500) ?? sketch.batch.cards);
  if (of === 'batch' && cards !== AS_MANY_AS_POSSIBLE) return { of, cards };
  const plan = batchOf(sketch, words);
  if (of === 'batch') return { of, cards: plan.cards };
  const sheets = guideSheets(plan).length;
  if (sheets === 0) throw new UsageError('No sheet is cut in this plan, so there is no guide.');
  return { of, plan, sheet: wholeNumber(words, 'sheet', 1, sheets) ?? 1 };
}

/**
 * `trimwell picture`: a card, a batch or a cutting guide as a picture for a page or a post. Ends with 1 when the plan of a
 * guide leaves something out. @throws UsageError
 */
export async function picture(
  args: readonly string[],
  readText: ReadText,
  writeText: WriteText,
  writeBytes: WriteBytes,
): Promise<Outcome> {
  const words = sortWords(args, SAVING_FLAGS, VALUES);
  const file = onlyName(words, 'sketch');
  const format = oneOf(words, 'format', ['png', 'svg'] as const) ?? 'png';
  const size = sizeOf(words);
  const title = words.values.get('title');
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const subject = subjectOf(sketch, words);
  if (subject.of === 'batch' && subject.cards === 0) throw new UsageError('Not a single card can be made.');
  const svg = writePicture(sketch, subject, { size, ...(title === undefined ? {} : { title }) });
  const name = subject.of === 'guide' ? `guide-${subject.sheet}` : subject.of;
  const out = words.values.get('out') ?? `${fileStem(sketch.title)}-${name}.${format}`;
  if (format === 'svg') await writeText(out, svg);
  else await writeBytes(out, await paintPng(svg));
  const complete = subject.of !== 'guide' || subject.plan.complete;
  return { code: complete ? MADE : UNMADE, out: `${out}\n`, error: '' };
}
