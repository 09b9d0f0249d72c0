import type { CutJob, Unit } from '@trimwell/geometry';
import * as z from 'zod/mini';
import { type CutJobDocument, cutJobSchema } from '../model/cut-document.js';
import type { Problem } from '../model/problem.js';
import { parseJson } from './parse-json.js';
import { scanDocument } from './scan-document.js';
import { schemaProblems } from './schema-problems.js';

export type CutJobReading =
  | { readonly ok: true; readonly job: CutJob; readonly unit: Unit }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function refused(...problems: Problem[]): CutJobReading {
  return { ok: false, problems };
}

/**
 * Reads a cut job document (`"trimwellJob": 1`): lengths as texts or bare numbers in its unit. What is left out takes
 * the defaults of a job, not those of a sketch: no limits of a trimmer, any number of sheets.
 */
export function readCutJob(document: unknown): CutJobReading {
  const hostile = scanDocument(document);
  if (hostile) return refused(hostile);
  const unit =
    typeof document === 'object' && document !== null && Reflect.get(document, 'unit') === 'mm' ? 'mm' : 'in';
  const read = z.safeDecode(cutJobSchema(unit), document as CutJobDocument);
  if (!read.success) return refused(...schemaProblems(read.error.issues, document));
  const { trimmer, papers, blanks } = read.data;
  return { ok: true, job: { trimmer, papers, blanks }, unit };
}

/** `readCutJob` for a text. Text that is no JSON is reported, with the parser's own words. */
export function readCutJobText(text: string): CutJobReading {
  const parsed = parseJson(text);
  return parsed.ok ? readCutJob(parsed.document) : refused(parsed.problem);
}
