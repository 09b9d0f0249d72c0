import { type Problem, problemAt, readSketchText, type SketchReading } from '@trimwell/sketch';

/** Longest file that is loaded, in bytes: as long as a text that is read. */
const MOST_BYTES = 2_000_000;

function refused(code: string, value: string, allowed: string): SketchReading {
  const problems: readonly Problem[] = [problemAt(code, [], value, allowed)];
  return { ok: false, problems };
}

/** The text of an answer, or null when it is longer than `MOST_BYTES`: it is not read any further then. */
async function boundedText(answer: Response): Promise<string | null> {
  const reader = answer.body?.getReader();
  if (!reader) return answer.text();
  const decoder = new TextDecoder();
  let text = '';
  let bytes = 0;
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
    bytes += piece.value.length;
    if (bytes > MOST_BYTES) {
      await reader.cancel();
      return null;
    }
    text += decoder.decode(piece.value, { stream: true });
  }
  return text + decoder.decode();
}

async function readAddress(address: string): Promise<SketchReading> {
  const url = URL.canParse(address, document.baseURI) ? new URL(address, document.baseURI) : null;
  if (url?.protocol !== 'https:' && url?.protocol !== 'http:')
    return refused('not-reached', address, 'an address of a file on the web');
  // What the network says of a failure is for the console, where the browser has put it already.
  const answer = await fetch(url).catch(() => null);
  if (!answer?.ok) return refused('not-reached', address, 'an address that answers');
  const text = await boundedText(answer);
  return text === null ? refused('too-large', address, `a file of at most ${MOST_BYTES} bytes`) : readSketchText(text);
}

/** Reads the sketch that `host` names: by `code`, by `src`, or else as a JSON script inside it. Never throws for what stands there. */
export async function readSource(host: HTMLElement): Promise<SketchReading> {
  const code = host.getAttribute('code');
  if (code !== null) return (await import('./code-part.js')).readShareCode(code);
  const address = host.getAttribute('src');
  if (address !== null) return readAddress(address);
  return readSketchText(host.querySelector('script[type="application/json"]')?.textContent ?? '');
}
