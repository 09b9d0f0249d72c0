import type { Sketch } from '@trimwell/sketch';
import { openPlanner } from './open-planner.js';
import type { PlanAnswer, PlanPort } from './plan-messages.js';

type Hear = (answer: PlanAnswer) => void;

/** The one planner of a page, started when a sketch first asks. Every asker hears the answers to its newest question. */
export class Planner {
  #port: PlanPort | null = null;
  #askers = 0;
  readonly #hearing = new Map<number, { question: number; readonly hear: Hear }>();

  constructor(private readonly open: () => PlanPort) {}

  /** A new asker: `ask` takes a sketch, and `leave` ends it. */
  asker(hear: Hear): { readonly ask: (sketch: Sketch) => void; readonly leave: () => void } {
    this.#askers += 1;
    const asker = this.#askers;
    const own = { question: 0, hear };
    return {
      ask: (sketch) => {
        own.question += 1;
        this.#hearing.set(asker, own);
        this.#post(asker, own.question, sketch);
      },
      leave: () => {
        if (this.#hearing.delete(asker)) this.#port?.postMessage({ asker, leave: true });
      },
    };
  }

  #post(asker: number, question: number, sketch: Sketch): void {
    try {
      this.#port ??= this.#begin();
    } catch (error) {
      const message = error instanceof Error ? error.message : String(error);
      queueMicrotask(() => this.#hear({ asker, question, kind: 'failed', message }));
      return;
    }
    this.#port.postMessage({ asker, question, sketch });
  }

  #begin(): PlanPort {
    const port = this.open();
    port.onmessage = ({ data }) => this.#hear(data);
    port.onerror = (message) => {
      // What has fallen over is started anew by the next question.
      this.#port = null;
      for (const [asker, { question }] of this.#hearing) this.#hear({ asker, question, kind: 'failed', message });
    };
    return port;
  }

  #hear(answer: PlanAnswer): void {
    const hearing = this.#hearing.get(answer.asker);
    if (hearing && hearing.question === answer.question) hearing.hear(answer);
  }
}

/** The planner that all sketches of the page share. */
export const planner = new Planner(openPlanner);
