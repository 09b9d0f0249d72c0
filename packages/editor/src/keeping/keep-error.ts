/**
 * Why nothing can be kept: the storage is full; the browser gives none to this page; another tab holds an older version of
 * the database open; anything else, in the browser's own words.
 */
export type KeepTrouble = 'full' | 'refused' | 'blocked' | 'failed';

/** A trouble with the browser's database. */
export class KeepError extends Error {
  override readonly name = 'KeepError';
  constructor(
    readonly trouble: KeepTrouble,
    cause: unknown,
  ) {
    super(cause instanceof Error ? cause.message : String(cause), { cause });
  }
}

const REFUSED: ReadonlySet<string> = new Set([
  'SecurityError',
  'NotAllowedError',
  'InvalidAccessError',
  'UnknownError',
]);

/** The trouble behind an error of IndexedDB, by the names of its specification; a trouble stays as it is. */
export function asKeepError(error: unknown): KeepError {
  if (error instanceof KeepError) return error;
  const name = error instanceof Error || error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') return new KeepError('full', error);
  return new KeepError(REFUSED.has(name) ? 'refused' : 'failed', error);
}
