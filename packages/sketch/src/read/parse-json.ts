import { type Problem, problemAt } from '../model/problem.js';

export type ParsedJson =
  | { readonly ok: true; readonly document: unknown }
  | { readonly ok: false; readonly problem: Problem };

/** The value of a JSON text, with or without a byte order mark; text that is none is reported in the parser's words. */
export function parseJson(text: string): ParsedJson {
  try {
    return { ok: true, document: JSON.parse(text.replace(/^\ufeff/, '')) };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return { ok: false, problem: problemAt('not-json', [], text, `JSON text (${reason})`) };
  }
}
