import type { AssemblyAnswer, AssemblyPort, AssemblyQuestion } from './assembly-messages.js';

/** A worker that looks at the card as a whole. @throws Error where a page may not start one from where this script lies. */
export function createAssemblyPort(): AssemblyPort {
  const worker = new Worker(new URL('./assembly.worker.js', import.meta.url), {
    type: 'module',
    name: 'trimwell-assembly',
  });
  let number = 0;
  const port: AssemblyPort = {
    onmessage: null,
    postMessage: (question: AssemblyQuestion) => {
      number = question.number;
      worker.postMessage(question);
    },
    terminate: () => worker.terminate(),
  };
  worker.onmessage = ({ data }: MessageEvent<AssemblyAnswer>) => port.onmessage?.({ data });
  worker.onerror = ({ message }) =>
    port.onmessage?.({
      data: { number, kind: 'failed', message: message || 'what looks at the card could not be started' },
    });
  return port;
}
