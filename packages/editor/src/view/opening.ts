import { type Problem, readSketchText, type Sketch } from '@trimwell/sketch';

/** A sketch to open, or why there is none; null where the page gives none. */
export type Opening =
  | { readonly ok: true; readonly sketch: Sketch }
  | { readonly ok: false; readonly problems: readonly Pick<Problem, 'message'>[] };

function reading(text: string): Opening {
  const read = readSketchText(text);
  return read.ok ? { ok: true, sketch: read.sketch } : { ok: false, problems: read.problems };
}

/** The sketch that stands in `host` as `<script type="application/json">`, or null. */
export function inlineOpening(host: Element): Opening | null {
  const script = host.querySelector(':scope > script[type="application/json"]');
  return script ? reading(script.textContent ?? '') : null;
}

/** The sketch at `address`; what keeps it from being there is told. Null once it is not wanted any more. */
export async function fetchOpening(address: string, signal: AbortSignal): Promise<Opening | null> {
  try {
    const answer = await fetch(address, { signal });
    if (!answer.ok) return { ok: false, problems: [{ message: `${address} answered ${answer.status}.` }] };
    return reading(await answer.text());
  } catch (error) {
    if (signal.aborted) return null;
    const why = error instanceof Error ? error.message : String(error);
    return { ok: false, problems: [{ message: `${address} could not be fetched: ${why}.` }] };
  }
}
