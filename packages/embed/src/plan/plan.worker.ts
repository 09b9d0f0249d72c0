import type { PlanLeave, PlanQuestion } from './plan-messages.js';
import { PlanTurns } from './plan-turns.js';

/** The page's one planner. Between slices control goes back to the queue of messages, so that newer questions are heard. */
const { port1, port2 } = new MessageChannel();
let wake: () => void = () => {};
port1.onmessage = () => wake();

function pause(): Promise<void> {
  return new Promise((resolve) => {
    wake = resolve;
    port2.postMessage(null);
  });
}

const turns = new PlanTurns((answer) => self.postMessage(answer), pause);

self.onmessage = ({ data }: MessageEvent<PlanQuestion | PlanLeave>) => {
  void turns.hear(data);
};
