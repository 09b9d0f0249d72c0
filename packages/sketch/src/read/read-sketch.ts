import * as z from 'zod/mini';
import { findBroken } from '../model/invariants.js';
import { type Problem, problemAt } from '../model/problem.js';
import { type Edit, editSchema, type Sketch, sketchSchema } from '../model/sketch.js';
import { migrate } from './migrate.js';
import { parseJson } from './parse-json.js';
import { scanDocument, scanText } from './scan-document.js';
import { schemaProblems } from './schema-problems.js';

/** Longest text of a document: an ample sketch is a tenth of it. */
const LONGEST_DOCUMENT = 2_000_000;

export type SketchReading =
  | { readonly ok: true; readonly sketch: Sketch }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Thrown by those who cannot go on without a sketch; `problems` says what is wrong with each place. */
export class SketchError extends Error {
  override readonly name = 'SketchError';
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map((problem) => problem.message).join('\n'));
  }
}

function refused(...problems: Problem[]): SketchReading {
  return { ok: false, problems };
}

/**
 * The one door into the program: an unknown value (as from `JSON.parse`) is looked over, migrated and validated. A
 * refused document comes back with the path, the value and what is allowed for up to 24 problems.
 */
export function readSketch(document: unknown): SketchReading {
  const hostile = scanDocument(document);
  if (hostile) return refused(hostile);
  const migrated = migrate(document);
  if (!migrated.ok) return refused(migrated.problem);
  const unit = migrated.document['unit'] === 'mm' ? 'mm' : 'in';
  const read = z.safeDecode(sketchSchema(unit), migrated.document as z.input<ReturnType<typeof sketchSchema>>);
  if (!read.success) return refused(...schemaProblems(read.error.issues, migrated.document));
  const broken = findBroken(read.data);
  return broken.length > 0 ? refused(...broken.slice(0, 24)) : { ok: true, sketch: read.data };
}

/** `readSketch` for the text of a file. Text that is no JSON is reported, with the parser's own words. */
export function readSketchText(text: string): SketchReading {
  if (text.length > LONGEST_DOCUMENT) {
    return refused(problemAt('too-large', [], text, `a document of at most ${LONGEST_DOCUMENT} characters`));
  }
  const hostile = scanText(text);
  if (hostile) return refused(hostile);
  const parsed = parseJson(text);
  return parsed.ok ? readSketch(parsed.document) : refused(parsed.problem);
}

/** `readSketch` or an exception. @throws SketchError */
export function expectSketch(document: unknown): Sketch {
  const reading = readSketch(document);
  if (!reading.ok) throw new SketchError(reading.problems);
  return reading.sketch;
}

/** Reads one edit, as `readSketch` reads a sketch; bare numbers are in `unit`. */
export function readEdit(
  document: unknown,
  unit: Sketch['unit'],
): { readonly ok: true; readonly edit: Edit } | { readonly ok: false; readonly problems: readonly Problem[] } {
  const hostile = scanDocument(document);
  if (hostile) return { ok: false, problems: [hostile] };
  const read = z.safeDecode(editSchema(unit), document as z.input<ReturnType<typeof editSchema>>);
  return read.success
    ? { ok: true, edit: read.data }
    : { ok: false, problems: schemaProblems(read.error.issues, document) };
}
