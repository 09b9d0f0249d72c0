import { problemAt } from '../model/problem.js';

/** Thrown when a new card cannot be begun as wanted; the message names what was wanted, and what is allowed. */
export class BeginError extends RangeError {
  override readonly name = 'BeginError';
}

export function refuseBeginning(path: string, value: unknown, allowed: string): never {
  throw new BeginError(problemAt('begin-refused', [path], value, allowed).message);
}
