import { type Problem, problemAt } from '../model/problem.js';

type Document = Readonly<Record<string, unknown>>;

/** The version that this package reads and writes. */
export const SKETCH_VERSION = 1;

/** `MIGRATIONS[n]` makes a document of version n + 1 from one of version n: small, pure, never changed once published. */
const MIGRATIONS: Readonly<Record<number, (document: Document) => Document>> = {};

export type Migrated =
  | { readonly ok: true; readonly document: Document }
  | { readonly ok: false; readonly problem: Problem };

/**
 * Brings a document of any known version to `SKETCH_VERSION`, one step at a time. A gap in `steps` is a mistake of
 * ours and throws; an unknown version is the document's and is reported.
 */
export function migrate(document: unknown, steps = MIGRATIONS, newest = SKETCH_VERSION): Migrated {
  const allowed = newest === 1 ? 'a sketch with "trimwell": 1' : `a sketch with "trimwell" from 1 to ${newest}`;
  if (typeof document !== 'object' || document === null || Array.isArray(document)) {
    return { ok: false, problem: problemAt('not-a-sketch', [], document, allowed) };
  }
  let current = document as Document;
  const version = current['trimwell'];
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1 || version > newest) {
    return { ok: false, problem: problemAt('unknown-version', ['trimwell'], version, allowed) };
  }
  for (let at = version; at < newest; at += 1) {
    const step = steps[at];
    if (!step) throw new Error(`There is no migration from version ${at} to ${at + 1}.`);
    current = { ...step(current), trimwell: at + 1 };
  }
  return { ok: true, document: current };
}
