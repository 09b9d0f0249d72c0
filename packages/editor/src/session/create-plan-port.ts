import type { PlanAnswer, PlanPort, PlanQuestion } from './plan-messages.js';

/** A worker that plans, one for each session. A worker that cannot start answers every question with why. */
export function createPlanPort(): PlanPort {
  const worker = new Worker(new URL('./plan.worker.js', import.meta.url), { type: 'module', name: 'trimwell-plan' });
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
