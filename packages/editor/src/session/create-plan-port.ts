import type { PlanAnswer, PlanPort, PlanQuestion } from './plan-messages.js';

/** A port that answers every question with why there is no plan. */
function deadPort(message: string): PlanPort {
  const port: PlanPort = {
    onmessage: null,
    postMessage: ({ revision }: PlanQuestion) =>
      queueMicrotask(() => port.onmessage?.({ data: { revision, kind: 'failed', message } })),
    terminate: () => {},
  };
  return port;
}

/** Throws where a page may not start a worker from where this script lies. */
function startWorker(): Worker {
  return new Worker(new URL('./plan.worker.js', import.meta.url), { type: 'module', name: 'trimwell-plan' });
}

/** A worker that plans, one for each session. A worker that cannot start answers every question with why. */
export function createPlanPort(): PlanPort {
  let worker: Worker;
  try {
    worker = startWorker();
  } catch (error) {
    return deadPort(`the planner could not be started: ${error instanceof Error ? error.message : String(error)}`);
  }
  let revision = 0;
  const port: PlanPort = {
    onmessage: null,
    postMessage: (question: PlanQuestion) => {
      revision = question.revision;
      worker.postMessage(question);
    },
    terminate: () => worker.terminate(),
  };
  worker.onmessage = ({ data }: MessageEvent<PlanAnswer>) => port.onmessage?.({ data });
  worker.onerror = ({ message }) => {
    port.onmessage?.({ data: { revision, kind: 'failed', message: message || 'the planner could not be started' } });
  };
  return port;
}
