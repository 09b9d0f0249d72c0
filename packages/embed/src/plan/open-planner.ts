import { OwnScript } from '../state/own-script.js';
import type { PlanAnswer, PlanPort } from './plan-messages.js';

/** Starts the page's planner. @throws Error where the page does not allow it. */
export function openPlanner(): PlanPort {
  // Bundlers look for exactly this form, and what it names is opened under the page's own rules.
  const Worker = OwnScript;
  const worker = new Worker(new URL('./plan.worker.js', import.meta.url), {
    type: 'module',
    name: 'trimwell-plan',
  }).open();
  const port: PlanPort = {
    onmessage: null,
    onerror: null,
    postMessage: (question) => worker.postMessage(question),
  };
  worker.onmessage = ({ data }: MessageEvent<PlanAnswer>) => port.onmessage?.({ data });
  worker.onerror = ({ message }) => port.onerror?.(message || 'it could not be started');
  return port;
}
