import type { KeptSketch } from './kept-sketch.js';

/**
 * What may be done with a document that was worked out from revision `startedFrom` (0: never kept), when the database
 * holds `stored`:
 * - `same`: the very same document is there already, whoever wrote it;
 * - `write`: nobody wrote in between;
 * - `anew`: it is there no more; what is on the table is kept again, for losing it would be worse;
 * - `conflict`: somebody wrote another one in between; nothing may be overwritten.
 */
export type KeepDecision = 'write' | 'same' | 'anew' | 'conflict';

export function decideKeep(
  startedFrom: number,
  stored: Pick<KeptSketch, 'revision' | 'document'> | undefined,
  document: string,
): KeepDecision {
  if (!stored) return 'anew';
  if (stored.document === document) return 'same';
  return stored.revision === startedFrom ? 'write' : 'conflict';
}
