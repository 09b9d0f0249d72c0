import type { Problem } from '@trimwell/sketch';

/** Everything made. */
export const MADE = 0;
/** Something cannot be made. */
export const UNMADE = 1;
/** Bad input; each problem stands on a line of standard error. */
export const BAD_INPUT = 2;

/** What a command prints and how it ends. Texts end with a line feed or are empty. */
export interface Outcome {
  readonly code: number;
  readonly out: string;
  readonly error: string;
}

/** An outcome that says what is wrong with the input, a line for each problem, with its path. */
export function badInput(problems: readonly Problem[], file?: string): Outcome {
  const lines = problems.map(
    ({ message }) => `${file === undefined ? '' : `${file}: `}${message.replaceAll('\n', ' ')}\n`,
  );
  return { code: BAD_INPUT, out: '', error: lines.join('') };
}

/** An outcome that says how the command is used, after what was wrong. */
export function misused(what: string, usage: string): Outcome {
  return { code: BAD_INPUT, out: '', error: `${what}\nUsage: ${usage}\n` };
}

/** An outcome that prints `out`. */
export function printed(out: string, code = MADE): Outcome {
  return { code, out, error: '' };
}
