import type { WriteAnswer, WritePort, WriteQuestion } from './write-messages.js';

/** A worker that writes files. @throws Error where a page may not start one from where this script lies. */
export function createWritePort(): WritePort {
  const worker = new Worker(new URL('./write.worker.js', import.meta.url), { type: 'module', name: 'trimwell-write' });
  let number = 0;
  const port: WritePort = {
    onmessage: null,
    postMessage: (question: WriteQuestion) => {
      number = question.number;
      worker.postMessage(question);
    },
    terminate: () => worker.terminate(),
  };
  worker.onmessage = ({ data }: MessageEvent<WriteAnswer>) => port.onmessage?.({ data });
  const dead = (message: string): void => port.onmessage?.({ data: { number, kind: 'dead', message } });
  worker.onerror = ({ message }) => dead(message || 'what writes files could not be started');
  worker.onmessageerror = () => dead('what was made could not be handed over');
  return port;
}
