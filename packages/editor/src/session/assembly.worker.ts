import type { AssemblyAnswer, AssemblyQuestion } from './assembly-messages.js';
import { assemblySight } from './assembly-sight.js';

function answer(message: AssemblyAnswer): void {
  self.postMessage(message);
}

/** One question after the other; whoever asks waits with the next one. */
self.onmessage = ({ data }: MessageEvent<AssemblyQuestion>) => {
  const { number } = data;
  try {
    answer({ number, kind: 'made', sight: assemblySight(data) });
  } catch (error) {
    answer({ number, kind: 'failed', message: error instanceof Error ? error.message : String(error) });
  }
};
