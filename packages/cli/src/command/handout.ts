import { planCuts } from '@trimwell/geometry';
import { LANGUAGES, layOutHandout, PAGE_PAPERS } from '@trimwell/handout';
import {
  AS_MANY_AS_POSSIBLE,
  type BatchPlan,
  type BatchYield,
  batchRecipe,
  batchYield,
  planBatch,
  readSketchText,
  type Sketch,
} from '@trimwell/sketch';
import type { ReadText, WriteBytes, WriteText } from './input.js';
import { oneOf, onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { badInput, MADE, type Outcome, UNMADE } from './outcome.js';
import { SAVING_FLAGS, SAVINGS_USAGE, withSavings } from './savings.js';

export const HANDOUT_USAGE =
  'trimwell handout SKETCH.json|- [--out FILE.pdf] [--paper letter|a4] [--language en|de] [--unit in|mm] [--templates] ' +
  `[--cards N|most] [--password-file PATH] [--date YYYY-MM-DD] ${SAVINGS_USAGE}`;

const VALUES = ['out', 'paper', 'language', 'unit', 'cards', 'password-file', 'date'] as const;

/** The day asked for as YYYY-MM-DD, with the moment that is written into the file. @throws UsageError */
function dayOf(words: Words, now: Date): { readonly date: string; readonly created: Date } {
  const given = words.values.get('date');
  if (given === undefined) return { date: now.toISOString().slice(0, 10), created: now };
  const created = new Date(`${given}T00:00:00Z`);
  // A month takes no 31st day that it does not have, though the parser would.
  if (
    !/^\d{4}-\d\d-\d\d$/.test(given) ||
    Number.isNaN(created.getTime()) ||
    created.toISOString().slice(0, 10) !== given
  )
    throw new UsageError(`--date is ${JSON.stringify(given)}; allowed: a day as YYYY-MM-DD.`);
  return { date: given, created };
}

/** The password is the first line of its file, so that it stands in no list of processes and in no history. */
async function passwordOf(words: Words, readText: ReadText): Promise<string | undefined> {
  const file = words.values.get('password-file');
  if (file === undefined) return undefined;
  const [password = ''] = (await readText(file)).split(/\r?\n/, 1);
  const bytes = new TextEncoder().encode(password).length;
  if (bytes === 0 || bytes > 127)
    throw new UsageError(`The first line of ${file} has ${bytes} bytes; allowed for a password: 1 to 127.`);
  return password;
}

function plansOf(sketch: Sketch, words: Words): { readonly batch: BatchPlan; readonly most: BatchYield | null } {
  const recipe = batchRecipe(sketch);
  const planOne = (job: Parameters<typeof planCuts>[0]) => planCuts(job);
  const most = batchYield(recipe, { planOne });
  const asked = words.values.get('cards') === 'most' ? AS_MANY_AS_POSSIBLE : wholeNumber(words, 'cards', 1, 500);
  const cards = asked ?? sketch.batch.cards;
  if (cards !== AS_MANY_AS_POSSIBLE) return { batch: planBatch(recipe, cards, planOne), most };
  if (most) return { batch: most.plan, most };
  throw new UsageError(
    'No paper of this sketch is limited: name the number of cards, or say how many sheets there are.',
  );
}

/** `trimwell handout`: the printable of a sketch as a PDF. Prints where it went. @throws UsageError */
export async function handout(
  args: readonly string[],
  readText: ReadText,
  _writeText: WriteText,
  writeBytes: WriteBytes,
): Promise<Outcome> {
  const words = sortWords(args, ['templates', ...SAVING_FLAGS], VALUES);
  const file = onlyName(words, 'sketch');
  const unit = oneOf(words, 'unit', ['in', 'mm'] as const);
  const [paper, language] = [oneOf(words, 'paper', PAGE_PAPERS), oneOf(words, 'language', LANGUAGES) ?? 'en'];
  const { date, created } = dayOf(words, new Date());
  const out = words.values.get('out') ?? (file === '-' ? 'handout.pdf' : `${file.replace(/\.json$/i, '')}.pdf`);
  const password = await passwordOf(words, readText);
  const reading = readSketchText(await readText(file));
  if (!reading.ok) return badInput(reading.problems, file);
  const sketch = withSavings(reading.sketch, words);
  const { batch, most } = plansOf(sketch, words);
  const { loadTextMeasure, unprintableNote, writePdf } = await import('@trimwell/handout/pdf');
  const pages = layOutHandout(sketch, batch, {
    ...{ language, date, most, templates: words.flags.has('templates'), measure: await loadTextMeasure() },
    paper: paper ?? (sketch.unit === 'mm' ? 'a4' : 'letter'),
    ...(unit ? { unit } : {}),
  });
  const told: Parameters<typeof unprintableNote>[0][number][] = [];
  const report = (text: (typeof told)[number]) => told.push(text);
  await writeBytes(out, await writePdf(pages, { created, report, ...(password === undefined ? {} : { password }) }));
  const note = unprintableNote(told);
  return { code: batch.complete ? MADE : UNMADE, out: `${out}\n`, error: note === null ? '' : `${note}\n` };
}
