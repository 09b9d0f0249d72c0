/** Something in a document that cannot be accepted: where it is, what was found, what would be accepted. */
export interface Problem {
  /** Short and stable, for programs: `not-a-length`, `unknown-key`, `missing-reference`, … */
  readonly code: string;
  /** Where, in the document's own terms: `pieces[3].width`; empty for the document as a whole. */
  readonly path: string;
  /** What was found there, shortened for showing. */
  readonly value: string;
  /** What would be accepted. */
  readonly allowed: string;
  /** The whole as one sentence. */
  readonly message: string;
}

/** Longest stretch of a found value that a message repeats. */
const SHOWN = 60;

/** `value` in a few characters, whatever it is; never throws. */
export function showValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (typeof value === 'number') return String(value);
  if (typeof value === 'object' && value !== null)
    return Array.isArray(value) ? `a list of ${value.length}` : 'an object';
  const text = JSON.stringify(value) ?? typeof value;
  return text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text;
}

/** A key as it is shown: a document may bring one of any length. */
function keyText(key: PropertyKey): string {
  const text = String(key);
  return text.length > SHOWN ? `${text.slice(0, SHOWN)}…` : text;
}

/** `["pieces", 3, "width"]` as `pieces[3].width`; very long keys are shortened. */
export function pathText(path: readonly PropertyKey[]): string {
  return path.reduce<string>((text, step) => {
    if (typeof step === 'number') return `${text}[${step}]`;
    return text === '' ? keyText(step) : `${text}.${keyText(step)}`;
  }, '');
}

/** A problem from its parts, with its sentence. */
export function problemAt(code: string, path: readonly PropertyKey[], value: unknown, allowed: string): Problem {
  const where = pathText(path);
  const shown = showValue(value);
  const place = where === '' ? 'The document' : where;
  return { code, path: where, value: shown, allowed, message: `${place} is ${shown}; allowed: ${allowed}.` };
}
