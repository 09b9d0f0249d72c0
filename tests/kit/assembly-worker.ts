import { planBatch } from '@trimwell/sketch';
import type { AssemblyAnswer, AssemblyQuestion } from '../../packages/editor/src/session/assembly-messages.js';
import { assemblySight } from '../../packages/editor/src/session/assembly-sight.js';
import type { PlanPort } from '../../packages/editor/src/session/plan-messages.js';

/** Stands in for a browser's worker where there is none: looks at the card in the same thread, a task later. */
export class AssemblyWorker {
  onmessage: ((event: { readonly data: AssemblyAnswer }) => void) | null = null;
  onerror: ((event: { readonly message: string }) => void) | null = null;
  #ended = false;

  postMessage(question: AssemblyQuestion): void {
    setTimeout(() => {
      if (!this.#ended)
        this.onmessage?.({ data: { number: question.number, kind: 'made', sight: assemblySight(question) } });
    });
  }

  terminate(): void {
    this.#ended = true;
  }
}

/** A planner that answers every question, a task later. */
export function planningPort(): PlanPort {
  const port: PlanPort = {
    onmessage: null,
    postMessage: ({ revision, recipe }) => {
      setTimeout(() =>
        port.onmessage?.({
          data: { revision, kind: 'plan', batch: planBatch(recipe, Number(recipe.cards)), done: true },
        }),
      );
    },
    terminate: () => {},
  };
  return port;
}
