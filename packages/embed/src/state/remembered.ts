import { type Choices, readChoices } from './choices.js';

/** What a browser keeps of one sketch for its reader. */
export interface Remembered {
  readonly choices: Choices | null;
  /** Which plan the checklist is of, and the places of what is done, from 0. */
  readonly done: { readonly of: string; readonly steps: readonly number[] } | null;
}

export const NOTHING_REMEMBERED: Remembered = { choices: null, done: null };

/** Most steps of a checklist that are kept. */
const MOST_STEPS = 5_000;

function isDone(value: unknown): value is NonNullable<Remembered['done']> {
  if (typeof value !== 'object' || value === null) return false;
  const { of, steps } = value as { of?: unknown; steps?: unknown };
  return (
    typeof of === 'string' &&
    Array.isArray(steps) &&
    steps.length <= MOST_STEPS &&
    steps.every((step) => Number.isSafeInteger(step) && step >= 0)
  );
}

/** What `text`, as it was kept, says; what is none of ours counts as nothing. */
export function readRemembered(text: string | null): Remembered {
  if (text === null) return NOTHING_REMEMBERED;
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== 'object' || value === null) return NOTHING_REMEMBERED;
    const { choices, done } = value as { choices?: unknown; done?: unknown };
    const reading = readChoices(choices);
    return { choices: reading.ok ? reading.choices : null, done: isDone(done) ? done : null };
  } catch (error) {
    if (error instanceof SyntaxError) return NOTHING_REMEMBERED;
    throw error;
  }
}

/** As it is kept. */
export function writeRemembered(remembered: Remembered): string {
  return JSON.stringify(remembered);
}
