import { write } from './write-desk.js';
import type { WriteAnswer, WriteQuestion } from './write-messages.js';

function answer(message: WriteAnswer): void {
  self.postMessage(message);
}

/** The writer's own loop: one question after the other. Whoever gives one up ends the worker. */
self.onmessage = async ({ data }: MessageEvent<WriteQuestion>) => {
  const { number } = data;
  try {
    const made = await write(data, (done, of) => answer({ number, kind: 'progress', done, of }));
    answer({ number, kind: 'made', made });
  } catch (error) {
    answer({ number, kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
};
