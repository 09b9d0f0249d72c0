import type { BatchRecipe, Sketch } from '@trimwell/sketch';
import type { Pace, PlanAnswer, PlanPort } from './plan-messages.js';

interface Question {
  readonly recipe: BatchRecipe;
  readonly pace: Pace;
  readonly sketch?: Sketch;
}

/** What the answers depend on: the recipe, and which mats would follow a piece that a near miss makes smaller. */
function questionKey(recipe: BatchRecipe, sketch: Sketch | undefined): string {
  return JSON.stringify([recipe, sketch?.pieces.map(({ id, mats }) => [id, mats])]);
}

/**
 * Asks a worker for plans. While the first plan for one question is under way, newer questions wait and only the newest
 * of them is asked next: a drag faster than the planner sees every plan that is finished, one after the other, instead
 * of none. Answers never go backwards, and each says whether it answers the newest question.
 */
export class PlanClient {
  #revision = 0;
  #newest = { key: '', pace: 'quick' as Pace };
  #underWay = false;
  #waiting: Question | null = null;

  constructor(
    private readonly port: PlanPort,
    onAnswer: (answer: PlanAnswer, newest: boolean) => void,
  ) {
    port.onmessage = ({ data }) => {
      if (data.revision !== this.#revision) return;
      const waiting = this.#waiting;
      if (data.kind === 'plan' || data.kind === 'failed') this.#underWay = false;
      onAnswer(data, waiting === null);
      if (!this.#underWay && this.#waiting) this.#post(this.#waiting);
    };
  }

  /**
   * Asks, unless the newest question is this one, or this one at the full pace; near misses are looked for in `sketch` at
   * the full pace only. True when it was taken.
   */
  ask(recipe: BatchRecipe, pace: Pace, sketch?: Sketch): boolean {
    const key = questionKey(recipe, sketch);
    if (key === this.#newest.key && (this.#newest.pace === 'full' || pace === 'quick')) return false;
    this.#newest = { key, pace };
    const question = { recipe, pace, ...(sketch && pace === 'full' ? { sketch } : {}) };
    if (this.#underWay) this.#waiting = question;
    else this.#post(question);
    return true;
  }

  /** The newest question as text: equal texts have equal answers. */
  get key(): string {
    return this.#newest.key;
  }

  /** Forgets what was asked last, so that the same question is asked anew. */
  forget(): void {
    this.#newest = { key: '', pace: 'quick' };
  }

  dispose(): void {
    this.port.onmessage = null;
    this.port.terminate();
  }

  #post(question: Question): void {
    this.#waiting = null;
    this.#underWay = true;
    this.#revision += 1;
    this.port.postMessage({ revision: this.#revision, ...question });
  }
}
