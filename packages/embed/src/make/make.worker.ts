import { makeFile } from './make-file.js';
import type { MakeAnswer, MakeQuestion } from './make-messages.js';

function answer(message: MakeAnswer): void {
  self.postMessage(message);
}

/** Makes one file after the other. */
self.onmessage = async ({ data }: MessageEvent<MakeQuestion>) => {
  const { number } = data;
  try {
    answer({ number, file: await makeFile(data) });
  } catch (error) {
    answer({ number, failed: error instanceof Error ? error.message : String(error) });
  }
};
