import { CutJobError, mostSets, planCuts } from '@trimwell/geometry';
import { planText } from '@trimwell/handout';
import { type Problem, readCutJobText, writePlan } from '@trimwell/sketch';
import type { ReadText } from './input.js';
import { onlyName, sortWords, UsageError, type Words, wholeNumber } from './options.js';
import { BAD_INPUT, badInput, MADE, type Outcome, printed, UNMADE } from './outcome.js';

export const CUT_USAGE = 'trimwell cut JOB.json|JOBS.jsonl|- [--lines] [--sets N|most] [--work N] [--json]';

type Planned =
  | { readonly ok: true; readonly complete: boolean; readonly plan: object; readonly text: string }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function setsOf(words: Words): number | 'most' {
  return words.values.get('sets') === 'most' ? 'most' : (wholeNumber(words, 'sets', 1, 1_000_000) ?? 1);
}

function planOne(text: string, words: Words): Planned {
  const reading = readCutJobText(text);
  if (!reading.ok) return reading;
  const work = wholeNumber(words, 'work', 1, Number.MAX_SAFE_INTEGER);
  try {
    const sets = setsOf(words);
    const budget = work === undefined ? {} : { work };
    const plan = sets === 'most' ? mostSets(reading.job, budget) : planCuts(reading.job, { ...budget, sets });
    return {
      ok: true,
      complete: plan.complete,
      plan: writePlan(plan),
      text: planText(plan, reading.job, reading.unit),
    };
  } catch (error) {
    if (error instanceof CutJobError) return { ok: false, problems: error.problems };
    throw error;
  }
}

/** One job: the plan as text, or as JSON with `--json`. */
function cutOne(file: string, text: string, words: Words): Outcome {
  const planned = planOne(text, words);
  if (!planned.ok) return badInput(planned.problems, file);
  const out = words.flags.has('json') ? `${JSON.stringify(planned.plan)}\n` : planned.text;
  return printed(out, planned.complete ? MADE : UNMADE);
}

/** One job a line: one plan JSON a line, in order; a bad job is an error in its place. */
function cutLines(text: string, words: Words): Outcome {
  const lines = text.split('\n').filter((line) => line.trim() !== '');
  const planned = lines.map((line) => planOne(line, words));
  const out = planned.map((one) => `${JSON.stringify(one.ok ? one.plan : { error: one.problems })}\n`).join('');
  const bad = planned.some((one) => !one.ok);
  const unmade = planned.some((one) => one.ok && !one.complete);
  return printed(out, bad ? BAD_INPUT : unmade ? UNMADE : MADE);
}

/** `trimwell cut`: plans a cut job document, or a file of one job a line. @throws UsageError */
export async function cut(args: readonly string[], readText: ReadText): Promise<Outcome> {
  const words = sortWords(args, ['json', 'lines'], ['sets', 'work']);
  const file = onlyName(words, 'file with a cut job');
  const lines = words.flags.has('lines') || file.endsWith('.jsonl');
  if (words.flags.has('lines') && file !== '-' && !file.endsWith('.jsonl'))
    throw new UsageError('--lines goes with - or a .jsonl file.');
  const text = await readText(file);
  return lines ? cutLines(text, words) : cutOne(file, text, words);
}
