import type { CutPlan } from '@trimwell/geometry';
import { PLAN_PARTS, type PlanParts, planSketch } from './plan-batch.js';
import type { PlanAnswer, PlanLeave, PlanQuestion } from './plan-messages.js';

/** Plans that are remembered: a page of twenty sketches of ten papers fits easily. */
const MOST_REMEMBERED = 400;

interface Task {
  readonly question: PlanQuestion;
  readonly plans: ReturnType<typeof planSketch>;
}

/**
 * Plans for all sketches of a page, a slice for each in turn, so that a hard one does not hold up the others; of one
 * asker only the newest question is worked on. `pause` comes back when messages that wait have been read.
 */
export class PlanTurns {
  readonly #tasks = new Map<number, Task>();
  readonly #known = new Map<string, CutPlan>();
  #running = false;

  constructor(
    private readonly answer: (answer: PlanAnswer) => void,
    private readonly pause: () => Promise<void>,
    private readonly parts: PlanParts = PLAN_PARTS,
  ) {}

  /** Takes a question or a leave. The promise ends when there is nothing left to do. */
  async hear(message: PlanQuestion | PlanLeave): Promise<void> {
    this.#tasks.delete(message.asker);
    if ('leave' in message) return;
    this.#tasks.set(message.asker, {
      question: message,
      plans: planSketch(message.sketch, this.#known, this.parts),
    });
    if (this.#running) return;
    this.#running = true;
    while (this.#tasks.size > 0) {
      for (const [asker, task] of [...this.#tasks]) {
        await this.#step(asker, task);
        await this.pause();
      }
    }
    this.#running = false;
  }

  async #step(asker: number, task: Task): Promise<void> {
    if (this.#tasks.get(asker) !== task) return;
    const { question } = task.question;
    const drop = (): void => {
      if (this.#tasks.get(asker) === task) this.#tasks.delete(asker);
    };
    try {
      const { value, done } = await task.plans.next();
      if (done) drop();
      else if (value && this.#tasks.get(asker) === task) this.answer({ asker, question, kind: 'plan', ...value });
    } catch (error) {
      drop();
      this.answer({ asker, question, kind: 'failed', message: error instanceof Error ? error.message : String(error) });
    }
    this.#forgetOldest();
  }

  #forgetOldest(): void {
    for (const key of this.#known.keys()) {
      if (this.#known.size <= MOST_REMEMBERED) return;
      this.#known.delete(key);
    }
  }
}
