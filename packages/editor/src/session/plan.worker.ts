import { PlanDesk } from './plan-desk.js';
import type { PlanAnswer, PlanQuestion } from './plan-messages.js';

/**
 * The worker's own loop: the newest question is the only one worked on. Its first plan is always finished and sent, so
 * that a steady stream of questions (a drag) cannot starve the answers; after that, control goes back to the queue of
 * messages between slices, and a newer question takes over.
 */
const desk = new PlanDesk();
const { port1: wake, port2: alarm } = new MessageChannel();
let current: Generator<void, void> | null = null;

function answer(message: PlanAnswer): void {
  self.postMessage(message);
}

function workOn(): void {
  if (current && !current.next().done) alarm.postMessage(null);
  else current = null;
}

function failure(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

wake.onmessage = () => {
  workOn();
};

self.onmessage = ({ data }: MessageEvent<PlanQuestion>) => {
  const idle = current === null;
  current = guarded(data);
  if (idle) workOn();
};

function* guarded(question: PlanQuestion): Generator<void, void> {
  try {
    yield* desk.answer(question, answer);
  } catch (error) {
    answer({ revision: question.revision, kind: 'failed', message: failure(error) });
  }
}
