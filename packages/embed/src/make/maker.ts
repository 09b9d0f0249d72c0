import { OwnScript } from '../state/own-script.js';
import type { MadeFile, MakeAnswer, MakePort, MakeQuestion } from './make-messages.js';

/** Starts what makes files. @throws Error where the page does not allow it. */
export function openMaker(): MakePort {
  // Bundlers look for exactly this form, and what it names is opened under the page's own rules.
  const Worker = OwnScript;
  const worker = new Worker(new URL('./make.worker.js', import.meta.url), {
    type: 'module',
    name: 'trimwell-make',
  }).open();
  const port: MakePort = { onmessage: null, onerror: null, postMessage: (question) => worker.postMessage(question) };
  worker.onmessage = ({ data }: MessageEvent<MakeAnswer>) => port.onmessage?.({ data });
  worker.onerror = ({ message }) => port.onerror?.(message || 'it could not be started');
  return port;
}

interface Waiting {
  readonly made: (file: MadeFile) => void;
  readonly failed: (error: Error) => void;
}

/** Makes files in one worker for the page, started when the first is wished for. */
export class Maker {
  #port: MakePort | null = null;
  #number = 0;
  readonly #waiting = new Map<number, Waiting>();

  constructor(private readonly open: () => MakePort) {}

  /** The promise fails with an `Error` in words for the reader. */
  make(question: Omit<MakeQuestion, 'number'>): Promise<MadeFile> {
    this.#number += 1;
    const number = this.#number;
    return new Promise((made, failed) => {
      this.#port ??= this.#begin();
      this.#waiting.set(number, { made, failed });
      this.#port.postMessage({ number, ...question });
    });
  }

  #begin(): MakePort {
    const port = this.open();
    port.onmessage = ({ data }) => {
      const waiting = this.#waiting.get(data.number);
      this.#waiting.delete(data.number);
      if ('file' in data) waiting?.made(data.file);
      else waiting?.failed(new Error(data.failed));
    };
    port.onerror = (message) => {
      this.#port = null;
      for (const { failed } of this.#waiting.values()) failed(new Error(message));
      this.#waiting.clear();
    };
    return port;
  }
}

/** What makes files for all sketches of the page. */
export const maker = new Maker(openMaker);
