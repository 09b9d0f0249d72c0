import { type Problem, problemAt } from '../model/problem.js';

/** Deepest nesting of a sketch is 6; twice that leaves room and still stops a hostile document at once. */
const DEEPEST = 12;
/** Most values a document may hold: 200 pieces of 30 values each, with room. */
const MOST_VALUES = 60_000;
const FORBIDDEN_KEYS: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);

/**
 * Looks over an unknown value before the schema does: depth, number of values, keys that reach prototypes, numbers that
 * JSON cannot hold. Returns the first problem only, in time linear in what it accepts.
 */
export function scanDocument(document: unknown): Problem | null {
  let values = 0;
  const waiting: { readonly value: unknown; readonly path: readonly PropertyKey[] }[] = [{ value: document, path: [] }];
  for (let next = waiting.pop(); next; next = waiting.pop()) {
    const { value, path } = next;
    values += 1;
    if (values > MOST_VALUES)
      return problemAt('too-large', [], document, `a document of at most ${MOST_VALUES} values`);
    if (path.length > DEEPEST)
      return problemAt('too-deep', path.slice(0, 3), value, `nesting of at most ${DEEPEST} levels`);
    if (typeof value === 'number' && !Number.isFinite(value)) {
      return problemAt('not-a-number', path, value, 'a finite number');
    }
    if (typeof value !== 'object' || value === null) continue;
    if (Array.isArray(value)) {
      if (value.length > MOST_VALUES) return problemAt('too-large', path, value, `lists of at most ${MOST_VALUES}`);
      value.forEach((item, index) => {
        waiting.push({ value: item, path: [...path, index] });
      });
      continue;
    }
    for (const key of Object.keys(value)) {
      if (FORBIDDEN_KEYS.has(key)) return problemAt('forbidden-key', [...path, key], key, 'the keys of a sketch');
      waiting.push({ value: Reflect.get(value, key), path: [...path, key] });
    }
  }
  return null;
}

/**
 * The same for a text that is still to be taken apart: a parser spends a second on what one look refuses. Brackets and
 * commas within quoted text do not count. Depth and number only; whether it is JSON is for the parser to say.
 */
export function scanText(text: string): Problem | null {
  let depth = 0;
  let opened = 0;
  let commas = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at += 1) {
    const letter = text[at];
    if (quoted && letter === '\\') at += 1;
    else if (letter === '"') quoted = !quoted;
    else if (quoted) continue;
    else if (letter === '[' || letter === '{') {
      depth += 1;
      opened += 1;
    } else if (letter === ']' || letter === '}') depth -= 1;
    else if (letter === ',') commas += 1;
    // The document itself is one level more than the longest path within it.
    if (depth > DEEPEST + 1) return problemAt('too-deep', [], text, `nesting of at most ${DEEPEST} levels`);
    // Every list, every object and what follows every comma is a value.
    if (Math.max(opened, commas) > MOST_VALUES)
      return problemAt('too-large', [], text, `a document of at most ${MOST_VALUES} values`);
  }
  return null;
}
